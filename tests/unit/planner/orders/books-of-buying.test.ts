import { describe, expect, test } from 'vitest';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { billOf, explainBill } from '../../../../planner/orders/bill.ts';
import { mostPackages, mostUseful } from '../../../../planner/orders/demand-on-materials.ts';
import { exactBasket } from '../../../../planner/orders/exact-basket.ts';
import { cautionsOfMaterial, type HandledMaterial } from '../../../../planner/orders/handling-cautions.ts';
import { explainOrderLine } from '../../../../planner/orders/line-working.ts';
import { loadPlan } from '../../../../planner/orders/loads.ts';
import { mulchVolume_L } from '../../../../planner/orders/mulch-volume.ts';
import { type FarmNeed, pooledNeeds, purchaseNeeds, supplierTerms } from '../../../../planner/orders/needs.ts';
import {
  type PurchaseOffer,
  type PurchaseProblem,
  priceAt_minor,
  requireProblem,
} from '../../../../planner/orders/purchase-problem.ts';
import { landedCost, type ReceiptLine, sentBack } from '../../../../planner/orders/receipt.ts';
import { byFirstIn, byMovingAverage, explainUnitCost, type StockMovement } from '../../../../planner/orders/stock-ledger.ts';
import { refusal } from '../../../builders/faults-of.ts';
import { linesOf } from '../../../builders/working-lines.ts';

const offer: PurchaseOffer = {
  id: 'compost',
  supplierId: 'north',
  materialId: 'compost',
  packageAmount: 10,
  steps: [
    { fromPackages: 1, price_minor: 700 },
    { fromPackages: 3, price_minor: 620 },
  ],
  trip: { packages: 2, fee_minor: 500 },
};
const north = { id: 'north', deliveryFee_minor: 1500, freeFrom_minor: 2500, minimumOrder_minor: 0, taxShare: 0.0825 };
const south = { id: 'south', deliveryFee_minor: 1500, freeFrom_minor: null, minimumOrder_minor: 1000, taxShare: 0 };
const seed = {
  id: 'seed',
  supplierId: 'north',
  materialId: 'seed',
  packageAmount: 1,
  steps: [{ fromPackages: 2, price_minor: 350 }],
};
const straw = {
  id: 'straw',
  supplierId: 'south',
  materialId: 'straw',
  packageAmount: 1,
  steps: [{ fromPackages: 1, price_minor: 900 }],
};
const problem: PurchaseProblem = {
  needs: [],
  stock: [],
  offers: [offer, seed, straw],
  suppliers: [north, south],
  mostSuppliers: null,
};
const bought = [
  { offerId: 'compost', packages: 3 },
  { offerId: 'seed', packages: 2 },
  { offerId: 'straw', packages: 1 },
];

describe('a bill', () => {
  test('has each line at the price of its number, loads, delivery until it is free, tax, and what is missing to the minimum', () => {
    // north: 3 x 620 + 2 x 350 is 2,560, free from 2,500; two loads of compost; 8.25 % of the goods
    expect(billOf(problem, bought)).toEqual({
      suppliers: [
        {
          supplierId: 'north',
          lines: [
            { offerId: 'compost', packages: 3, price_minor: 620, loads_minor: 1000, total_minor: 2860 },
            { offerId: 'seed', packages: 2, price_minor: 350, loads_minor: 0, total_minor: 700 },
          ],
          goods_minor: 2560,
          delivery_minor: 1000,
          tax_minor: 211,
          total_minor: 3771,
          underMinimum_minor: 0,
        },
        {
          supplierId: 'south',
          lines: [{ offerId: 'straw', packages: 1, price_minor: 900, loads_minor: 0, total_minor: 900 }],
          goods_minor: 900,
          delivery_minor: 1500,
          tax_minor: 0,
          total_minor: 2400,
          underMinimum_minor: 100,
        },
      ],
      total_minor: 6171,
    });
    expect(billOf(problem, [{ offerId: 'seed', packages: 1 }]).total_minor).toBe(350 + 1500 + 29);
    expect(billOf(problem, [{ offerId: 'seed', packages: 0 }]).suppliers).toEqual([]);
  });

  test('just at the free threshold brings no fee', () => {
    const free = { ...problem, suppliers: [{ ...north, freeFrom_minor: 700, taxShare: 0 }] };
    expect(billOf(free, [{ offerId: 'seed', packages: 2 }]).total_minor).toBe(700);
  });

  test('opens into goods, delivery and tax, and a line for each supplier', () => {
    const working = explainBill(problem, bought);
    expect(linesOf(working)).toEqual({
      symbols: { goods: '3460 minor', delivery: '2500 minor', tax: '211 minor' },
      steps: ['3771 minor', '2400 minor'],
      result: '6171 minor',
    });
    expect(working.steps.map(({ text, figures }) => [text, figures])).toEqual([
      ['north', '2560 + 1000 + 211'],
      ['south', '900 + 1500 + 0'],
    ]);
  });
});

describe('packages of an offer worth looking at', () => {
  const most = (change: Partial<PurchaseOffer>, fee: number, useful = 35) =>
    mostPackages(
      { ...problem, suppliers: [{ ...north, deliveryFee_minor: fee, minimumOrder_minor: 0 }] },
      { ...offer, trip: undefined, ...change } as PurchaseOffer,
      useful,
    );
  const at = (...steps: readonly (readonly [number, number])[]) => ({
    steps: steps.map(([fromPackages, price_minor]) => ({ fromPackages, price_minor })),
  });

  test('cover the need, and reach a price step that costs no more in all', () => {
    // 35 in tens is four packages of 100; five of 80 cost as much, five of 90 cost more
    expect(most(at([1, 100]), 0)).toBe(4);
    expect(most(at([1, 100], [5, 80]), 0)).toBe(5);
    expect(most(at([1, 100], [5, 90]), 0)).toBe(4);
    expect(most(at([6, 100]), 0)).toBe(6);
  });

  test('and go on to free delivery or the minimum order, never beyond what there is', () => {
    expect(most(at([1, 100]), 150)).toBe(6);
    expect(most({ ...at([1, 100]), availablePackages: 5 }, 150)).toBe(5);
    expect(
      mostPackages({ ...problem, suppliers: [{ ...south, deliveryFee_minor: 0 }] }, { ...straw, supplierId: 'south' }, 1),
    ).toBe(3);
  });

  test('of each material all needs together count, stand-ins by their ratio', () => {
    const needs = [
      {
        id: 'a',
        amount: 4,
        materials: [
          { materialId: 'compost', ratio: 1 },
          { materialId: 'straw', ratio: 2 },
        ],
      },
      { id: 'b', amount: 3, materials: [{ materialId: 'compost', ratio: 1 }] },
    ];
    expect([...mostUseful({ ...problem, needs })]).toEqual([
      ['compost', 7],
      ['straw', 8],
    ]);
  });

  test('the price is that of the last step reached, none below the first', () => {
    expect([0, 1, 2, 3, 9].map((packages) => priceAt_minor(offer, packages))).toEqual([null, 700, 700, 620, 620]);
  });
});

describe('the basket of every try', () => {
  const needs = (amount: number) => [{ id: 'n', amount, materials: [{ materialId: 'a', ratio: 1 }] }];
  const plain = { deliveryFee_minor: 0, freeFrom_minor: null, minimumOrder_minor: 0, taxShare: 0 };
  const packs = (...of: readonly (readonly [number, number])[]): PurchaseProblem => ({
    needs: needs(8),
    stock: [],
    offers: of.map(([packageAmount, price_minor]) => ({
      id: `${packageAmount}`,
      supplierId: 's',
      materialId: 'a',
      packageAmount,
      steps: [{ fromPackages: 1, price_minor }],
    })),
    suppliers: [{ ...plain, id: 's' }],
    mostSuppliers: null,
  });

  test('of equal cost leaves less over, then takes fewer packages of the earlier offers', () => {
    expect(exactBasket(packs([10, 500], [8, 500]))).toEqual({
      state: 'found',
      bought: [{ offerId: '8', packages: 1 }],
      total_minor: 500,
    });
    expect(exactBasket(packs([4, 250], [8, 500]))).toMatchObject({ bought: [{ offerId: '8', packages: 1 }] });
  });

  test('counts stock first, and says when the offers cannot do', () => {
    expect(exactBasket({ ...packs([4, 250]), stock: [{ materialId: 'a', amount: 5 }] })).toMatchObject({ total_minor: 250 });
    const few = packs([4, 250]);
    expect(exactBasket({ ...few, offers: few.offers.map((each) => ({ ...each, availablePackages: 1 })) }).state).toBe(
      'no-solution',
    );
  });

  test('keeps to the suppliers a need takes, and to their minimum order', () => {
    const two = packs([8, 500], [9, 700]);
    const apart = {
      ...two,
      offers: two.offers.map((each, at) => ({ ...each, supplierId: at === 0 ? 's' : 't' })),
      suppliers: ['s', 't'].map((id) => ({ ...plain, id })),
    };
    expect(exactBasket(apart)).toMatchObject({ total_minor: 500 });
    expect(exactBasket({ ...apart, needs: needs(8).map((need) => ({ ...need, supplierIds: ['t'] })) })).toMatchObject({
      total_minor: 700,
    });
    const least = apart.suppliers.map((each) => (each.id === 's' ? { ...each, minimumOrder_minor: 900 } : each));
    expect(exactBasket({ ...apart, suppliers: least })).toMatchObject({ total_minor: 700 });
  });

  test('takes few needs and stand-ins of the same strength only', () => {
    expect(
      refusal(() => exactBasket({ ...packs([8, 1]), needs: Array.from({ length: 17 }, () => needs(1)[0] ?? never()) })),
    ).toBe('needs too-large');
    const mixed = {
      id: 'n',
      amount: 1,
      materials: [
        { materialId: 'a', ratio: 1 },
        { materialId: 'b', ratio: 2 },
      ],
    };
    expect(refusal(() => exactBasket({ ...packs([8, 1]), needs: [mixed] }))).toBe('needs.0.materials ratio');
    expect(
      refusal(() => exactBasket({ ...packs([8, 1]), needs: Array.from({ length: 16 }, () => needs(0)[0] ?? never()) })),
    ).toBe('taken');
  });
});

function never(): never {
  throw new Error('a list of one has a first');
}

describe('a purchase that cannot be meant is refused at its place', () => {
  const need = { id: 'n', amount: 1, materials: [{ materialId: 'a', ratio: 1 }] };
  const withOffer = (change: Partial<PurchaseOffer>) => ({ ...problem, offers: [{ ...straw, ...change }] });
  const step = (fromPackages: number, price_minor = 1) => ({ fromPackages, price_minor });
  test.each<readonly [string, PurchaseProblem]>([
    ['needs.0.amount too-small', { ...problem, needs: [{ ...need, amount: -1 }] }],
    ['needs.0.amount too-small', { ...problem, needs: [{ ...need, amount: Number.POSITIVE_INFINITY }] }],
    ['needs.0.ratio not-positive', { ...problem, needs: [{ ...need, materials: [{ materialId: 'a', ratio: 0 }] }] }],
    ['offers.0.packageAmount not-positive', withOffer({ packageAmount: 0 })],
    ['offers.0.supplierId not-found', withOffer({ supplierId: 'nobody' })],
    ['offers.0.steps empty', withOffer({ steps: [] })],
    ['offers.0.steps.0.fromPackages not-whole', withOffer({ steps: [step(0)] })],
    ['offers.0.steps.0.fromPackages not-whole', withOffer({ steps: [step(1.5)] })],
    ['offers.0.steps.1.fromPackages not-in-order', withOffer({ steps: [step(2), step(2)] })],
    ['offers.0.steps.0.price_minor too-small', withOffer({ steps: [step(1, -1)] })],
    ['offers.0.steps.0.price_minor too-small', withOffer({ steps: [step(1, 1.5)] })],
    ['suppliers.0.deliveryFee_minor too-small', { ...problem, offers: [], suppliers: [{ ...north, deliveryFee_minor: -1 }] }],
    ['suppliers.0.taxShare too-large', { ...problem, offers: [], suppliers: [{ ...north, taxShare: 1.1 }] }],
    ['suppliers.0.taxShare too-large', { ...problem, offers: [], suppliers: [{ ...north, taxShare: -0.1 }] }],
    ['mostSuppliers too-small', { ...problem, mostSuppliers: 0 }],
    ['mostSuppliers too-small', { ...problem, mostSuppliers: 1.5 }],
  ])('%s', (said, bad) => {
    expect(refusal(() => requireProblem(bad))).toBe(said);
  });
  test('and its ends are taken: a need of nothing, a free gift, a tax of all, one supplier', () => {
    const ends = { ...withOffer({ steps: [step(1, 0)] }), needs: [{ ...need, amount: 0 }], mostSuppliers: 1 };
    expect(refusal(() => requireProblem({ ...ends, suppliers: [north, { ...south, taxShare: 1, deliveryFee_minor: 0 }] }))).toBe(
      'taken',
    );
  });
});

describe('needs as the search takes them', () => {
  const need = (key: string, materialId: string): FarmNeed => ({
    key,
    source: 'mulch',
    materialId,
    amount: 5,
    reason: key,
    wanted: '2027-03-01' as IsoDate,
  });
  const input = {
    needs: [need('a', 'straw')],
    choices: new Map(),
    standIns: [{ materialId: 'straw', insteadId: 'hay', ratio: 1.5 }],
    leads: ['straw', 'hay'].flatMap((materialId) => [
      { supplierId: 'near', materialId, lead_days: 9 },
      { supplierId: 'far', materialId, lead_days: 10 },
    ]),
    today: '2027-02-20' as IsoDate,
    mustBeInTime: true,
  };

  test('allow the stand-ins of their own material', () => {
    expect(purchaseNeeds({ ...input, needs: [need('a', 'straw'), need('b', 'mix')] }).map((each) => each.materials)).toEqual([
      [
        { materialId: 'straw', ratio: 1 },
        { materialId: 'hay', ratio: 1.5 },
      ],
      [{ materialId: 'mix', ratio: 1 }],
    ]);
  });

  test('name suppliers only where some are too late', () => {
    // nine days are left: far comes a day late
    expect(purchaseNeeds(input)[0]?.supplierIds).toEqual(['near']);
    expect(purchaseNeeds({ ...input, today: '2027-02-19' as IsoDate })[0]).not.toHaveProperty('supplierIds');
    expect(purchaseNeeds({ ...input, mustBeInTime: false })[0]).not.toHaveProperty('supplierIds');
  });

  test('are pooled only where material, stand-ins and suppliers are the same', () => {
    const materials = [{ materialId: 'a', ratio: 1 }];
    const { pooled, members } = pooledNeeds([
      { id: '1', amount: 2, materials },
      { id: '2', amount: 3, materials },
      { id: '3', amount: 4, materials, supplierIds: ['s'] },
      { id: '4', amount: 5, materials: [{ materialId: 'b', ratio: 1 }] },
    ]);
    expect(pooled.map(({ amount, materials: of, supplierIds }) => [amount, of[0]?.materialId, supplierIds])).toEqual([
      [5, 'a', undefined],
      [4, 'a', ['s']],
      [5, 'b', undefined],
    ]);
    expect(pooled.map((each) => members.get(each.id)?.map((one) => one.id))).toEqual([['1', '2'], ['3'], ['4']]);
  });

  test('ask no delivery fee of a supplier one picks up from', () => {
    const terms = {
      id: 's',
      deliveryFee_minor: 900,
      freeDeliveryFrom_minor: 5000,
      minimumOrder_minor: 100,
      tax_share: 0.1,
      pickUp: false,
    };
    expect(supplierTerms(terms)).toEqual({
      id: 's',
      deliveryFee_minor: 900,
      freeFrom_minor: 5000,
      minimumOrder_minor: 100,
      taxShare: 0.1,
    });
    expect(supplierTerms({ ...terms, pickUp: true }).deliveryFee_minor).toBe(0);
  });
});

describe('the working of a line', () => {
  const input = {
    material: 'Compost',
    package: 'bag',
    unit: 'L',
    needs: Array.from({ length: 14 }, (_, at) => ({ reason: `bed ${at + 1}`, amount: 10 + at })),
    onHand: 31,
    onTheWay: 0,
    otherPackages: 40,
    packageAmount: 40,
    packages: 5,
    price_minor: 600,
  };
  test('shows a dozen needs, the rest in one, stock, other packages and the steps to the cost', () => {
    // 10 + 11 + … + 23 is 231; less 31 and 40 are 160, four bags of 40
    const shown = linesOf(explainOrderLine(input));
    expect(Object.keys(shown.symbols)).toHaveLength(12 + 4);
    expect(shown.symbols).toMatchObject({
      'need 1': '10 L',
      'need 12': '21 L',
      '…': '45 L',
      'on hand': '31 L',
      'other packages': '40 L',
      package: '40 L',
    });
    expect(shown.steps).toEqual(['231 L', '160 L', '4', '3000 minor']);
    expect(shown.result).toBe('5');
    expect(explainOrderLine(input).symbols[12]?.name).toBe('2 more needs');
    expect(explainOrderLine(input).symbols[0]?.name).toBe('bed 1');
  });
  test('with few needs has no line for the rest, and a stock below nothing is none', () => {
    const shown = linesOf(explainOrderLine({ ...input, needs: input.needs.slice(0, 2), onHand: -5, otherPackages: 0 }));
    expect(Object.keys(shown.symbols)).toEqual(['need 1', 'need 2', 'on hand', 'other packages', 'package']);
    expect(shown.symbols['on hand']).toBe('0 L');
    expect(shown.steps[1]).toBe('21 L');
  });
});

describe('the stock ledger', () => {
  const into = (amount: number, value_minor: number, lot?: string): StockMovement => ({
    kind: 'in',
    amount,
    value_minor,
    ...(lot === undefined ? {} : { lot }),
  });
  const out = (amount: number, flagged = false): StockMovement => ({ kind: 'out', amount, ...(flagged ? { flagged } : {}) });

  test('by the moving average: the value over the quantity after each purchase', () => {
    const found = byMovingAverage([into(10, 1000), out(4), into(6, 1200), out(6)]);
    expect(found).toEqual({ values_minor: [1000, 400, 1200, 900], left: 6, leftValue_minor: 900, unitCost_minor: 150 });
    expect(linesOf(explainUnitCost([into(10, 1000), out(4), into(6, 1200), out(6)], 'kg'))).toEqual({
      symbols: { in: '16 kg', left: '6 kg', value: '900 minor' },
      steps: [],
      result: '150 minor',
    });
  });

  test('used before it was entered costs what the last cost, and is made good by what comes', () => {
    const empty = [into(10, 1000), out(4), into(6, 1200), out(12)];
    expect(byMovingAverage(empty)).toMatchObject({ left: 0, leftValue_minor: 0, unitCost_minor: 150 });
    expect(byMovingAverage([...empty, out(2, true)])).toMatchObject({ left: -2, leftValue_minor: -300 });
    expect(byMovingAverage([...empty, out(2, true), into(5, 1000)])).toMatchObject({ left: 3, leftValue_minor: 700 });
    const oldest = byFirstIn([...empty, out(2, true), into(5, 1000), out(1)]);
    // 2 at 200 were owed; of the new 5 at 200 they are 2, so one more costs 200 and two are left
    expect(oldest).toMatchObject({ left: 2, leftValue_minor: 400, unitCost_minor: 200 });
    expect(oldest.values_minor).toEqual([1000, 400, 1200, 1800, 400, 1000, 200]);
  });

  test('first in, first out, takes old lots before new, whatever lot they are of', () => {
    const found = byFirstIn([into(10, 1000, 'a'), into(10, 3000, 'b'), out(15)]);
    expect(found.values_minor[2]).toBe(1000 + 1500);
    expect(found).toMatchObject({ left: 5, leftValue_minor: 1500, unitCost_minor: 300 });
    expect(byFirstIn([into(10, 1000), out(10)]).unitCost_minor).toBe(100);
  });

  test('a billionth of what was ever there is arithmetic, not stock', () => {
    for (const value of [byMovingAverage, byFirstIn]) {
      expect(value([into(1e6, 5e7), out(1e6 - 1e-5)])).toMatchObject({ left: 0, leftValue_minor: 0 });
      expect(refusal(() => value([into(1e6, 5e7), out(1e6 + 1e-4)]))).toBe('taken');
      expect(refusal(() => value([into(1e6, 5e7), out(1e6 + 1)]))).toBe('movements.1.amount more-than-stock');
      expect(value([into(1e6, 5e7), out(1e6 - 1)]).left).toBe(1);
    }
  });

  test('of nothing, or of a value below nothing, is refused at its movement', () => {
    expect(refusal(() => byMovingAverage([into(1, 1), out(0)]))).toBe('movements.1.amount not-positive');
    expect(refusal(() => byFirstIn([into(1, -1)]))).toBe('movements.0.value_minor too-small');
  });
});

describe('a delivery', () => {
  const line: ReceiptLine = { lineId: 'a', ordered: 10, received: 4, returned: 1, packageAmount: 50, price_minor: 100, now: 2 };
  test('shares its charges by value, evenly where all was a gift', () => {
    const gift = { ...line, price_minor: 0 };
    expect(landedCost([gift, { ...gift, lineId: 'b' }], 300).map((each) => each.value_minor)).toEqual([150, 150]);
    expect(landedCost([line, { ...gift, lineId: 'b' }], 300)).toEqual([
      { lineId: 'a', amount: 100, value_minor: 500 },
      { lineId: 'b', amount: 100, value_minor: 0 },
    ]);
    expect(landedCost([line, { ...line, lineId: 'none', now: 0 }], 0).map((each) => each.lineId)).toEqual(['a']);
  });
  test('up to what is still open is taken; more, less than nothing, or nothing at all is refused', () => {
    expect(refusal(() => landedCost([{ ...line, now: 7 }], 0))).toBe('taken');
    expect(refusal(() => landedCost([{ ...line, now: 7.1 }], 0))).toBe('lines.0.packages more-than-ordered');
    expect(refusal(() => landedCost([line, { ...line, now: -1 }], 0))).toBe('lines.1.packages more-than-ordered');
    expect(refusal(() => landedCost([{ ...line, now: 0 }], 0))).toBe('lines empty');
    expect(refusal(() => sentBack({ ...line, now: 3 }))).toBe('taken');
    expect(refusal(() => sentBack({ ...line, now: 3.1 }))).toBe('packages more-than-received');
    expect(refusal(() => sentBack({ ...line, now: 0 }))).toBe('packages more-than-received');
  });
});

test('journeys go by weight or volume, whichever asks for more; a vehicle that holds nothing is refused', () => {
  const freight = [{ weight_kg: 1300, volume_L: 4000 }];
  expect(loadPlan(freight, { carries_kg: 650, holds_L: 1500 })).toMatchObject({ trips: 3, by: 'volume' });
  expect(loadPlan(freight, { carries_kg: 650, holds_L: null })).toMatchObject({ trips: 2, by: 'weight' });
  expect(loadPlan(freight, { carries_kg: null, holds_L: 1500 })).toMatchObject({ trips: 3, by: 'volume' });
  expect(loadPlan([], { carries_kg: 650, holds_L: 1500 }).trips).toBe(0);
  expect(refusal(() => loadPlan(freight, { carries_kg: 0, holds_L: null }))).toBe('carries_kg too-small kg');
  expect(refusal(() => loadPlan(freight, { carries_kg: null, holds_L: 0 }))).toBe('holds_L too-small L');
  expect(refusal(() => mulchVolume_L(-1, 0.1))).toBe('area_m2 too-small m2');
  expect(refusal(() => mulchVolume_L(1, 1.1))).toBe('depth_m too-large m');
});

test('a caution is known by the kind of a material or by its name', () => {
  const of = (change: Partial<HandledMaterial>) =>
    cautionsOfMaterial({ name: 'x', kind: 'other', dusty: false, animalOrigin: 'none', registrationNumber: null, ...change });
  expect(of({})).toEqual([]);
  expect(of({ kind: 'liming' })).toEqual(['lime-sulfur-ash']);
  expect(of({ name: 'Garden lime' })).toEqual(['lime-sulfur-ash']);
  expect(of({ dusty: true })).toEqual(['dust-perlite-silica']);
  expect(of({ dusty: true, kind: 'liming' })).toEqual(['lime-sulfur-ash']);
  expect(of({ name: 'Cedar board' })).toEqual([]);
  expect(of({ name: 'Cedar board', kind: 'hardware' })).toEqual(['treated-wood-tyres-pallets']);
  expect(of({ kind: 'hardware' })).toEqual([]);
  expect(of({ kind: 'tubing' })).toEqual(['heat-gun-vinyl-solvents']);
  expect([of({ kind: 'pump' }), of({ kind: 'power' })]).toEqual([['electricity-near-water'], ['electricity-near-water']]);
  expect(of({ name: 'Lithium pack' })).toEqual(['power-pack-heat']);
  expect(of({ animalOrigin: 'raw' })).toEqual(['raw-manure']);
  expect([of({ registrationNumber: '' }), of({ registrationNumber: 'R-1' })]).toEqual([[], ['pesticide-label']]);
});
