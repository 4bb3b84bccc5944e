import type { offer, offerBreak, supplier } from '../../db/schema/materials.ts';
import { unitPrices_minor } from './hardware.ts';

type SupplierRow = typeof supplier.$inferInsert;
type OfferRow = typeof offer.$inferInsert;
type BreakRow = typeof offerBreak.$inferInsert;

/** Three invented suppliers. */
export const suppliers: readonly SupplierRow[] = [
  {
    id: 'supplier-soil',
    name: 'Tidewrack Soil Yard (invented)',
    deliveryFee_minor: 6500,
    freeDeliveryFrom_minor: 45_000,
    lead_days: 4,
  },
  {
    id: 'supplier-hardware',
    name: 'Mill Lane Hardware (invented)',
    deliveryFee_minor: 1200,
    freeDeliveryFrom_minor: 15_000,
    tax_share: 0.08,
    lead_days: 2,
  },
  {
    id: 'supplier-seed',
    name: 'Greyheron Seed and Growers’ Supply (invented)',
    deliveryFee_minor: 895,
    freeDeliveryFrom_minor: 10_000,
    minimumOrder_minor: 2500,
    lead_days: 9,
  },
];

type Line = readonly [
  supplierId: string,
  materialId: string,
  name: string,
  packageAmount: number,
  price_minor: number,
  weight_kg: number | null,
  breaks?: readonly (readonly [number, number])[],
];

const lines: readonly Line[] = [
  ['supplier-soil', 'mix-raised-bed', 'Raised-bed mix, cubic yard loose', 764.555, 5800, 770, [[5, 5200]]],
  ['supplier-soil', 'mix-raised-bed', 'Raised-bed mix, 2 cu ft bag', 56.634, 1050, 57],
  ['supplier-hardware', 'mix-raised-bed', 'Raised-bed mix, 1.5 cu ft bag', 42.475, 895, 43],
  ['supplier-soil', 'mix-peat-potting', 'Peat potting mix, 3 cu ft bale', 84.951, 2650, 27, [[10, 2390]]],
  ['supplier-hardware', 'mix-peat-potting', 'Peat potting mix, 2 cu ft bag', 56.634, 1890, 18],
  ['supplier-soil', 'mix-bark-potting', 'Bark mix, cubic yard loose', 764.555, 6900, 344],
  ['supplier-hardware', 'mix-bark-potting', 'Bark mix, 2 cu ft bag', 56.634, 1450, 25],
  ['supplier-soil', 'compost-yard', 'Yard compost, cubic yard loose', 764.555, 3900, 543, [[4, 3500]]],
  ['supplier-hardware', 'compost-yard', 'Yard compost, 1 cu ft bag', 28.317, 620, 20],
  ['supplier-soil', 'gravel-pea', 'Pea gravel, half cubic yard', 382.28, 3400, 619],
  ['supplier-hardware', 'gravel-pea', 'Pea gravel, 0.5 cu ft bag', 14.158, 590, 23],
  ['supplier-soil', 'wood-chips', 'Wood chips, cubic yard loose', 764.555, 2200, 230],
  ['supplier-soil', 'straw', 'Straw, bale', 250, 1150, 20],
  ['supplier-hardware', 'perlite', 'Perlite, 4 cu ft bag', 113.267, 3450, 16],
  ['supplier-seed', 'feather-meal', 'Feather meal, 5 lb', 2.268, 1490, 2.3],
  ['supplier-seed', 'feather-meal', 'Feather meal, 50 lb', 22.68, 5900, 23],
  ['supplier-soil', 'soybean-meal', 'Soybean meal, 50 lb', 22.68, 3600, 23],
  ['supplier-seed', 'blood-meal', 'Blood meal, 5 lb', 2.268, 1690, 2.3],
  ['supplier-seed', 'bone-meal-steamed', 'Bone meal, 4 lb', 1.814, 1090, 1.9],
  ['supplier-soil', 'bone-meal-steamed', 'Bone meal, 50 lb', 22.68, 5400, 23],
  ['supplier-seed', 'kelp-meal', 'Kelp meal, 4 lb', 1.814, 1290, 1.9],
  ['supplier-seed', 'potassium-sulfate', 'Sulfate of potash, 5 lb', 2.268, 1350, 2.3],
  ['supplier-soil', 'potassium-sulfate', 'Sulfate of potash, 50 lb', 22.68, 6200, 23],
  ['supplier-soil', 'langbeinite', 'Sulfate of potash-magnesia, 50 lb', 22.68, 4900, 23],
  ['supplier-soil', 'rock-phosphate', 'Rock phosphate, 50 lb', 22.68, 3900, 23],
  ['supplier-soil', 'alfalfa-meal', 'Alfalfa meal, 50 lb', 22.68, 3100, 23],
  ['supplier-soil', 'lime-pelleted', 'Pelleted limestone, 40 lb', 18.144, 890, 18.2],
  ['supplier-hardware', 'lime-pelleted', 'Pelleted limestone, 25 lb', 11.34, 790, 11.4],
  ['supplier-soil', 'lime-dolomitic', 'Dolomitic limestone, 50 lb', 22.68, 750, 23],
  ['supplier-hardware', 'sulfur-elemental', 'Elemental sulfur, 5 lb', 2.268, 1190, 2.3],
  ['supplier-soil', 'gypsum', 'Gypsum, 50 lb', 22.68, 1650, 23],
];

const packs: Readonly<Record<string, readonly (readonly [number, string, number])[]>> = {
  'hw-board': [[4.8, 'Board, 4.8 m', 1]],
  'hw-screw': [
    [100, 'Box of 100', 1],
    [500, 'Box of 500', 0.75],
  ],
  'hw-barrier': [[45, 'Roll, 0.9 x 50 m', 1]],
  'hw-netting': [[30, 'Roll, 1.5 x 20 m', 1]],
  'hw-cover': [[75, 'Roll, 1.5 x 50 m', 1]],
  'hw-liner': [[12, 'Sheet, 3 x 4 m', 1]],
  'hw-tube-34': [
    [15, 'Coil, 15 m', 1],
    [30, 'Coil, 30 m', 0.9],
  ],
  'hw-tube-12': [
    [15, 'Coil, 15 m', 1],
    [30, 'Coil, 30 m', 0.9],
    [150, 'Coil, 150 m', 0.7],
  ],
  'hw-drip': [[100, 'Coil, 100 m', 1]],
  'hw-clamp': [[10, 'Pack of 10', 1]],
  'hw-tee-34': [
    [1, 'Each', 1],
    [10, 'Pack of 10', 0.85],
  ],
  'pack-box': [[25, 'Bundle of 25', 1]],
  'pack-bag': [[500, 'Box of 500', 1]],
};

/** Mix for the cells of trays. */
const trayMixes = [
  ['Seed-starting mix, 16 qt', 15.14, 1090, 4.4],
  ['Seed-starting mix, 3 cu ft', 84.95, 3690, 24],
] as const;

/** Offers with their price breaks; all prices invented. */
export function sampleOffers(pricedDate: string): { readonly offers: OfferRow[]; readonly breaks: BreakRow[] } {
  const offers: OfferRow[] = [];
  const breaks: BreakRow[] = [];
  const add = (row: Omit<OfferRow, 'id' | 'pricedDate'>) => {
    const id = `offer-${offers.length + 1}`;
    offers.push({ ...row, id, pricedDate });
    return id;
  };
  for (const [supplierId, materialId, name, packageAmount, price_minor, packageWeight_kg, steps = []] of lines) {
    const offerId = add({ supplierId, materialId, name, packageAmount, price_minor, packageWeight_kg });
    for (const [fromPackages, stepPrice] of steps)
      breaks.push({ id: `${offerId}-break-${fromPackages}`, offerId, fromPackages, price_minor: stepPrice });
  }
  for (const [materialId, each] of Object.entries(unitPrices_minor)) {
    for (const [amount, name, factor] of packs[materialId] ?? [[1, 'Each', 1] as const]) {
      add({
        supplierId: materialId.startsWith('tray') || materialId.startsWith('pack') ? 'supplier-seed' : 'supplier-hardware',
        materialId,
        name,
        packageAmount: amount,
        price_minor: Math.round(each * amount * factor),
      });
    }
  }
  for (const [name, packageAmount, price_minor, packageWeight_kg] of trayMixes)
    add({ supplierId: 'supplier-seed', materialId: 'mix-seedling', name, packageAmount, price_minor, packageWeight_kg });
  return { offers, breaks };
}

/** What one base unit of a material costs at its dearest small package; for the history's values. */
export function unitPriceOf(offers: readonly OfferRow[], materialId: string): number {
  const prices = offers
    .filter((offer) => offer.materialId === materialId)
    .map((offer) => offer.price_minor / offer.packageAmount);
  return prices.length === 0 ? 0 : Math.min(...prices);
}
