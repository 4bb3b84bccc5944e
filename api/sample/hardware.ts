import type { MaterialRow } from '../library/read-materials.ts';

const INVENTED = 'Invented for the sample farm';

type Piece = Pick<MaterialRow, 'id' | 'name' | 'kind' | 'baseUnit'> & Partial<MaterialRow>;

const pieces: readonly Piece[] = [
  { id: 'hw-board', name: 'Larch board 38 x 140 mm', kind: 'hardware', baseUnit: 'm', life_years: 8 },
  { id: 'hw-post', name: 'Corner post, larch', kind: 'hardware', baseUnit: 'count', life_years: 8 },
  { id: 'hw-screw', name: 'Deck screw, coated', kind: 'hardware', baseUnit: 'count', life_years: 10 },
  { id: 'hw-bag-40', name: 'Fabric bag, 40 gal nominal', kind: 'hardware', baseUnit: 'count', life_years: 4 },
  { id: 'hw-basin-36', name: 'Shallow basin, 36 in round', kind: 'hardware', baseUnit: 'count', life_years: 3 },
  { id: 'hw-trough', name: 'Oval trough, 0.6 x 1.5 m, galvanised', kind: 'hardware', baseUnit: 'count', life_years: 12 },
  { id: 'hw-overflow', name: 'Overflow fitting and fill pipe', kind: 'hardware', baseUnit: 'count', life_years: 6 },
  { id: 'hw-liner', name: 'Food-contact liner', kind: 'hardware', baseUnit: 'm2', life_years: 6 },
  { id: 'hw-barrier', name: 'Weed barrier, woven', kind: 'hardware', baseUnit: 'm2', life_years: 5 },
  { id: 'hw-netting', name: 'Trellis netting', kind: 'hardware', baseUnit: 'm2', life_years: 3 },
  { id: 'hw-cover', name: 'Row cover, light', kind: 'cover', baseUnit: 'm2', life_years: 2 },
  {
    id: 'hw-tube-34',
    name: 'Tube, 3/4 in, 19 mm inside',
    kind: 'tubing',
    baseUnit: 'm',
    life_years: 6,
    insideDiameter_m: 0.01905,
  },
  {
    id: 'hw-tube-12',
    name: 'Tube, 1/2 in, 0.600 in inside',
    kind: 'tubing',
    baseUnit: 'm',
    life_years: 6,
    insideDiameter_m: 0.01524,
  },
  { id: 'hw-tee-34', name: 'Barbed tee, 3/4 in', kind: 'fitting', baseUnit: 'count', life_years: 6, boreDiameter_m: 0.0155 },
  { id: 'hw-valve', name: 'Inline valve, 1/2 in', kind: 'fitting', baseUnit: 'count', life_years: 6, boreDiameter_m: 0.0127 },
  { id: 'hw-clamp', name: 'Tube clamp', kind: 'fitting', baseUnit: 'count', life_years: 4 },
  {
    id: 'hw-drip',
    name: 'Drip line, emitters every 0.3 m',
    kind: 'tubing',
    baseUnit: 'm',
    life_years: 5,
    insideDiameter_m: 0.0136,
  },
  { id: 'hw-pump-25', name: 'Submersible pump, 25 W', kind: 'pump', baseUnit: 'count', life_years: 4, power_W: 25 },
  { id: 'hw-timer', name: 'Battery timer', kind: 'power', baseUnit: 'count', life_years: 5, power_W: 1 },
  { id: 'hw-battery', name: 'Battery, lithium iron phosphate, 500 Wh', kind: 'power', baseUnit: 'count', life_years: 8 },
  { id: 'hw-tank', name: 'Tank, 1000 L, food grade', kind: 'hardware', baseUnit: 'count', life_years: 10 },
  { id: 'tray-50', name: 'Cell tray, 50 cells', kind: 'tray', baseUnit: 'count', life_years: 4, cells: 50 },
  { id: 'tray-128', name: 'Cell tray, 128 cells', kind: 'tray', baseUnit: 'count', life_years: 4, cells: 128 },
  { id: 'pack-box', name: 'Share box, waxed card', kind: 'packing', baseUnit: 'count' },
  { id: 'pack-bag', name: 'Produce bag', kind: 'packing', baseUnit: 'count' },
];

/** Parts and supplies of the invented farm, with lives as trade sense (common practice, no source). */
export const sampleHardware: readonly MaterialRow[] = pieces.map((piece) => ({ ...piece, source: INVENTED }));

/** Invented prices in cents for one base unit, before packages. */
export const unitPrices_minor: Readonly<Record<string, number>> = {
  'hw-board': 640,
  'hw-post': 450,
  'hw-screw': 12,
  'hw-bag-40': 1450,
  'hw-basin-36': 1900,
  'hw-trough': 13_900,
  'hw-overflow': 950,
  'hw-liner': 420,
  'hw-barrier': 95,
  'hw-netting': 110,
  'hw-cover': 85,
  'hw-tube-34': 165,
  'hw-tube-12': 98,
  'hw-tee-34': 145,
  'hw-valve': 320,
  'hw-clamp': 60,
  'hw-drip': 70,
  'hw-pump-25': 3900,
  'hw-timer': 4200,
  'hw-battery': 32_000,
  'hw-tank': 14_500,
  'tray-50': 310,
  'tray-128': 330,
  'pack-box': 95,
  'pack-bag': 6,
};
