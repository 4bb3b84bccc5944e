import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { IsoDate } from '../../planner/calendar.ts';
import { resources, type TestProgram } from './a-farm.ts';
import { PLANNED, WORKED } from './reading-inputs.ts';

/** A real call of a changing procedure: what is done before it, what it is given, and the name its step of undo must have. */
export type ChangeCase = {
  readonly name: string;
  readonly note: string;
  /** Works out the input, making first what the call wants to find. */
  readonly input: () => Promise<unknown>;
};

const DAY = '2026-11-25' as IsoDate;
const line = { lineId: 'line-bags' };
const season = { seasonId: PLANNED };
const station = {
  name: 'Shed roof',
  latitude_deg: 47.6,
  longitude_deg: -122.3,
  elevation_m: 35,
  windHeight_m: 2,
  source: 'own readings (invented)',
};
const weatherText = 'date,tmax_C,tmin_C,rain_mm\n2024-06-10,20,9,0\n2024-06-12,21,10,1.5\n';
const task = {
  key: 'harvest:x',
  taskId: null,
  kind: 'harvest',
  title: 'Harvest the radish',
  due: DAY,
  plantingId: null,
  bedId: null,
} as const;
const grow = {
  cropId: 'carrot',
  varietyId: null,
  method: 'direct',
  anchor: { at: 'in-bed', date: '2027-05-03' },
  datesBy: 'days',
  window_days: null,
  layout: 'square',
  inRow_m: 0.3,
  row_m: 0.3,
  margin_m: null,
  seedsPerHole: 1,
  cellsPerTray: null,
} as const;
const whole = (bedId: string) => ({ bedId, fromShare: 0, toShare: 1 });
const sheet = {
  date: '2026-10-01',
  sample: 'Sheet of the east end',
  kind: 'soil',
  method: 'mehlich-3',
  depth_m: 0.15,
  texture: 'loam',
  ph: 6.2,
  bufferPh: null,
  bufferMethod: null,
  organicMatterShare: 0.05,
  cec_meq_per_100g: 9,
  ec_dS_per_m: null,
  lead_mg_per_kg: null,
  values: [{ nutrient: 'P', value: 40, unit: 'ppm' }],
  bedIds: ['bed-a-1'],
} as const;
const pump = {
  name: 'Small pump',
  materialId: null,
  curveKind: 'three-points',
  power_W: 25,
  inletHeight_m: -0.4,
  count: 1,
  points: [
    { flow_L_per_h: 0, head_m: 2.2 },
    { flow_L_per_h: 950, head_m: 1.3 },
    { flow_L_per_h: 1514, head_m: 0 },
  ],
} as const;
const square = [
  [-122.3, 47.6],
  [-122.29995, 47.6],
  [-122.29995, 47.60001],
  [-122.3, 47.60001],
  [-122.3, 47.6],
];
const geoJson = JSON.stringify({
  type: 'FeatureCollection',
  features: [
    { type: 'Feature', geometry: { type: 'Polygon', coordinates: [square] }, properties: { kind: 'bed', code: 'G-01' } },
  ],
});

/** Every changing procedure of the program with a call that a page would make on the invented farm. */
export function changesOfProgram(t: TestProgram): readonly ChangeCase[] {
  const { api } = t;
  /** Asked anew each time, since the farm may have been closed and opened between two calls. */
  const sqlite = () => t.program.farm(null).sqlite;
  const one = (sql: string): string => sqlite().prepare<[], string>(sql).pluck().get() ?? '';
  const number = (sql: string): number => sqlite().prepare<[], number>(sql).pluck().get() ?? 0;
  const revisionOf = (table: string, id: string): number => number(`SELECT revision FROM "${table}" WHERE id = '${id}'`);
  const found = <T>(what: T | undefined): T => {
    if (what === undefined) throw new Error('The invented farm lacks what this call wants to find.');
    return what;
  };
  const planting = () => one(`SELECT id FROM planting WHERE season_id = '${PLANNED}' AND crop_id = 'carrot' ORDER BY id`);
  const unsold = async (): Promise<string> => {
    const plantingId = one(`SELECT planting_id FROM harvest ORDER BY date DESC`);
    const unit = one(`SELECT unit FROM harvest WHERE planting_id = '${plantingId}'`);
    const date = one(`SELECT max(date) FROM harvest WHERE planting_id = '${plantingId}'`);
    return (await api.harvest.add({ date, plantingId, amount: 2, unit, confirmed: true })).harvestId;
  };
  const bought = async () => {
    await api.orders.addNeed({ ...season, materialId: 'mix-raised-bed', amount: 1500, wantedDate: '2027-03-01' });
    return [{ offerId: 'offer-1', packages: 2 }];
  };
  const listed = async () => {
    await api.orders.keepList({ ...season, bought: await bought() });
    return one('SELECT id FROM shopping_line');
  };
  const ordered = async () => {
    const shoppingLineId = await listed();
    await api.orders.tick({ shoppingLineId, ticked: true });
    const { purchaseId } = await api.orders.order({ ...season, supplierId: 'supplier-soil', date: DAY });
    return { purchaseId, lineId: one(`SELECT id FROM purchase_line WHERE purchase_id = '${purchaseId}'`) };
  };
  const proposed = async (): Promise<string> => {
    const wish = { ...season, goal: { aim: 'most-margin', weight: 'clearly' }, effort: 'quick', seed: 1 } as const;
    const { jobId } = await api.proposals.propose(wish);
    for (;;) {
      const job = await api.jobs.get({ jobId });
      if (job.state === 'done') break;
      if (job.state === 'failed') throw new Error(job.message);
      await new Promise((later) => setTimeout(later, 25));
    }
    return (await api.proposals.keep({ jobId, ...wish })).proposalId;
  };
  const heap = {
    name: 'By the gate',
    materialId: 'soil-own-loose',
    shape: 'cone',
    length_m: 2,
    width_m: 2,
    height_m: 1,
  } as const;
  const cases: ChangeCase[] = [];
  const of = (group: string, leaf: string, note: string, input: () => unknown): void => {
    cases.push({ name: `${group}.${leaf}`, note, input: async () => input() });
  };

  of('applications', 'done', 'Record a dose as given', async () => {
    await api.feeding.accept({ ...season, doses: [{ bedId: 'bed-a-1', materialId: 'feather-meal', dose_kg: 0.5 }] });
    return { applicationBedIds: [found((await api.applications.planned(season))[0]).applicationBedId], date: DAY, who: 'AN' };
  });
  of('applications', 'enter', 'Enter Feather meal on 2 beds', () => ({
    materialId: 'feather-meal',
    bedIds: ['bed-a-1', 'bed-a-2'],
    rate_kg_per_m2: 0.1,
    date: DAY,
  }));
  of('applications', 'removePlanned', 'Take a dose off its card', async () => {
    await api.feeding.accept({ ...season, doses: [{ bedId: 'bed-a-1', materialId: 'feather-meal', dose_kg: 0.5 }] });
    return { applicationBedIds: [found((await api.applications.planned(season))[0]).applicationBedId] };
  });

  const build = {
    block: { blockId: 'block-a', newBlock: { code: '', name: '' } },
    firstCode: 'N-01',
    count: 10,
    perRow: 5,
    endPath_m: 0.5,
    sidePath_m: 0.5,
    x_m: 60,
    y_m: 60,
    turn_deg: 0,
    builtDate: DAY,
  };
  of('beds', 'build', 'Build 10 beds from N-01', () => ({ ...build, designId: 'design-frame' }));
  of('beds', 'buildFirst', 'Add design First frame and build 10 beds from N-01', async () => {
    const { values, layers, parts } = await api.designs.one({ designId: 'design-frame' });
    return { ...build, values: { ...values, name: 'First frame' }, layers, parts };
  });
  of('beds', 'duplicate', 'Duplicate 2 beds', () => ({ bedIds: ['bed-a-1', 'bed-a-2'], dx_m: 0, dy_m: -8, builtDate: DAY }));
  of('beds', 'importGeoJson', 'Import beds from a GeoJSON file', () => ({
    text: geoJson,
    firstCode: 'G-01',
    designId: 'design-strip',
    block: build.block,
    builtDate: DAY,
  }));
  of('beds', 'setMany', 'Change 2 beds', () => ({
    edits: ['bed-a-1', 'bed-a-2'].map((bedId) => ({
      bedId,
      revision: revisionOf('bed', bedId),
      values: { sun: 'shade', notes: 'it’s "low"\n—' },
    })),
  }));
  of('beds', 'move', 'Move 2 beds', () => ({
    places: ['bed-a-1', 'bed-a-2'].map((bedId, at) => ({ bedId, x_m: 12 + 3 * at, y_m: 7.25, turn_deg: 30 })),
  }));
  of('beds', 'order', 'Put 3 beds in order along the tubing', () => ({ bedIds: ['bed-b-3', 'bed-b-1', 'bed-b-2'] }));
  of('beds', 'split', 'Split bed A-01 into 2 shares', () => ({
    bedId: 'bed-a-1',
    shares: [
      { name: 'west', to: 0.4 },
      { name: 'east', to: 1 },
    ],
  }));
  of('beds', 'setRecipe', 'Change the fill recipe of bed A-01', () => ({
    bedId: 'bed-a-1',
    layers: [{ materialId: 'soil-own-loose', amountKind: 'rest', amount: null, settlingShare: null }],
  }));
  of('beds', 'measure', 'Measure the fill of bed A-01', () => ({ bedIds: ['bed-a-1'], date: DAY, drop_m: 0.03, note: '' }));
  of('beds', 'recordFill', 'Record filling bed A-01', async () => {
    await api.beds.measure({ bedIds: ['bed-a-1'], date: DAY, drop_m: 0.06, note: '' });
    return { bedIds: ['bed-a-1'], date: DAY };
  });
  of('beds', 'replacePart', 'Replace Larch board 38 x 140 mm of bed A-01', () => ({
    partId: 'bed-a-1-part-0',
    date: DAY,
    reason: 'rotten',
    amount: 14.4,
    price_minor: null,
    life_years: 8,
  }));
  of('beds', 'retire', 'Retire 2 beds', () => ({ bedIds: ['bed-a-1', 'bed-a-2'], date: DAY, because: 'sunk' }));
  of('beds', 'restore', 'Take bed A-01 into use again', async () => {
    await api.beds.retire({ bedIds: ['bed-a-1'], date: DAY, because: 'sunk' });
    return { bedId: 'bed-a-1' };
  });
  of('beds', 'dismantle', 'Take down bed E-01', async () => {
    const bedId = one(`SELECT id FROM bed WHERE code = 'E-01'`);
    const { lines } = await api.beds.dismantleYield({ bedId, lossShare: 0.1 });
    return { bedId, date: DAY, because: 'sunk in', lines: [...lines] };
  });
  of('beds', 'addPlan', 'Plan to build 6 beds', () => ({ designId: 'design-frame', count: 6, wantedDate: '2027-03-01' }));
  of('beds', 'removePlan', 'Plan no more beds of Framed bed 1.2 x 2.4 m', async () => {
    await api.beds.addPlan({ designId: 'design-frame', count: 6, wantedDate: '2027-03-01' });
    return { bedPlanId: one('SELECT id FROM bed_plan') };
  });

  const compostId = 'grass-clippings-loose';
  const code = () => one(`SELECT code FROM compost_batch WHERE id = 'compost-2026'`);
  of('compost', 'start', `Start a compost heap on ${DAY}`, () => ({
    startedDate: DAY,
    method: 'turned-windrow',
    parts: [{ materialId: compostId, amount_kg: 100 }],
  }));
  of('compost', 'finish', `End the curing of compost ${code()}`, () => ({
    batchId: 'compost-2026',
    revision: revisionOf('compost_batch', 'compost-2026'),
    curedDate: DAY,
    made_L: 700,
  }));
  of('compost', 'addReading', `Log a reading of compost ${code()}`, () => ({
    batchId: 'compost-2026',
    date: DAY,
    temperature_C: 58,
    turned: true,
  }));
  of('compost', 'removeReading', `Take away a reading of compost ${code()}`, () => ({
    readingId: one(`SELECT id FROM compost_reading WHERE batch_id = 'compost-2026'`),
  }));
  const brew = {
    bedIds: ['bed-a-1', 'bed-a-2'],
    drench_L_per_m2: 0.5,
    waterParts: 4,
    compost_kg_per_L: 0.05,
    tank_L: 200,
    startedAt: '2026-11-25T08:00',
    brew_h: 24,
    compostBatchId: null,
  };
  of('compost', 'brewTea', 'Brew tea for 2 beds', () => brew);
  of('compost', 'teaApplied', 'Record tea T-2026-2 as applied', async () => ({
    teaId: (await api.compost.brewTea(brew)).batchId,
    appliedDate: '2026-11-26',
  }));

  of('costs', 'addOverhead', 'Add the cost Well permit', () => ({
    ...season,
    name: 'Well permit',
    date: DAY,
    amount_minor: 12_000,
    shareKey: 'area',
  }));
  const ofNoSupplier = `FROM material WHERE kind = 'mulch' AND id NOT IN (SELECT material_id FROM offer) ORDER BY id`;
  of('costs', 'priceUnknown', `Enter the price of ${one(`SELECT name ${ofNoSupplier}`)}`, async () => {
    const materialId = one(`SELECT id ${ofNoSupplier}`);
    const lineId = one('SELECT id FROM water_line ORDER BY id');
    await api.waterLines.addPart({ lineId, materialId, amount: 2, installedDate: '2026-03-01', life_years: 5 });
    return { materialId, price_minor: 250 };
  });
  of('costs', 'removeOverhead', 'Take away the cost Insurance', () => ({ overheadId: 'overhead-2026-insurance' }));

  of('crops', 'setFact', 'Set your own figure of Carrot', () => ({
    cropId: 'carrot',
    varietyId: null,
    name: 'yield_typical_per_m2',
    number: 4.2,
    words: null,
    source: 'own records',
  }));
  const learnt = () => one(`SELECT crop_id FROM planting WHERE season_id = '${WORKED}' AND state = 'cleared' ORDER BY crop_id`);
  of(
    'crops',
    'takeLearned',
    `Take figures of ${one(`SELECT name FROM crop WHERE id = '${learnt()}'`)} from your records`,
    () => ({
      cropId: learnt(),
    }),
  );
  of('crops', 'add', 'Add crop Sea kale', () => ({
    name: 'Sea kale',
    family: 'Brassicaceae',
    group: 'perennial',
    botanicalName: 'Crambe maritima',
  }));
  of('crops', 'set', 'Change crop Carrot', () => ({
    cropId: 'carrot',
    revision: revisionOf('crop', 'carrot'),
    values: { notes: 'hoe early' },
  }));
  of('crops', 'addVariety', 'Add variety Long red', () => ({ cropId: 'carrot', name: 'Long red' }));
  of('crops', 'setVariety', 'Change variety Long red', async () => {
    const { varietyId } = await api.crops.addVariety({ cropId: 'carrot', name: 'Long red' });
    return { varietyId, revision: 1, values: { notes: 'keeps' } };
  });

  of('demand', 'add', 'Add a demand for Carrot', () => ({
    ...season,
    entry: {
      outletId: 'outlet-stall',
      cropId: 'carrot',
      kind: 'market',
      fromDate: '2027-07-01',
      toDate: '2027-08-01',
      amountPerWeek: 5,
      unit: 'kg',
      price_minor: 300,
      penalty_minor: 0,
    },
  }));
  const demands = () => sqlite().prepare<[], string>('SELECT id FROM demand ORDER BY id LIMIT 2').pluck().all();
  of('demand', 'set', 'Change 2 demands', () => ({
    edits: demands().map((demandId) => ({ demandId, values: { amountPerWeek: 7.5 } })),
  }));
  of('demand', 'remove', 'Take 2 demands away', () => ({ demandIds: demands() }));
  of('demand', 'addOutlet', 'Add outlet Ferry landing', () => ({ name: 'Ferry landing', kind: 'stall' }));

  of('designs', 'add', 'Add design Frame, low', async () => {
    const { values, layers, parts } = await api.designs.one({ designId: 'design-frame' });
    return { values: { ...values, name: 'Frame, low' }, layers, parts };
  });
  of('designs', 'set', 'Change design Framed bed 1.2 x 2.4 m', async () => {
    const { designId, revision, values, layers, parts } = await api.designs.one({ designId: 'design-frame' });
    return { designId, revision, values: { ...values, depth_m: 0.4, fillDepth_m: 0.35 }, layers, parts, stay: ['bed-a-1'] };
  });
  of('designs', 'retire', 'Retire design Framed bed 1.2 x 2.4 m', () => ({
    designId: 'design-frame',
    revision: revisionOf('design', 'design-frame'),
    retired: true,
  }));

  of('farm', 'set', 'Change the farm’s settings', async () => ({
    values: { name: 'Another name', elevation_m: 36 },
    revision: (await api.farm.get()).revision,
  }));

  of('feeding', 'setPlan', 'Change the feeding plan of season 2027', () => ({
    ...season,
    needBy: 'removal',
    tolerance_share: 0.2,
    materialIds: ['feather-meal'],
    scoop_L: 0.5,
    splits: 2,
    splitWeeks: 3,
    firstDate: null,
    targetPh: 6.4,
    limeMaterialId: 'lime-pelleted',
    sulfurMaterialId: null,
    organicOnly: true,
    waterNitrateN_mg_per_L: null,
    water_L_per_m2: null,
  }));
  of('feeding', 'planPh', 'Plan lime or sulfur for one bed', async () => ({
    ...season,
    bedIds: [found((await api.feeding.ph({})).find((row) => row.act !== 'none' && row.materialId !== null)).bedId],
    date: '2027-02-01',
  }));
  of('feeding', 'accept', 'Put 2 doses on the cards', () => ({
    ...season,
    doses: ['bed-a-1', 'bed-a-2'].map((bedId) => ({ bedId, materialId: 'feather-meal', dose_kg: 0.5 })),
  }));

  const picked = () => one('SELECT planting_id FROM harvest ORDER BY date DESC');
  const pickedUnit = () => one(`SELECT unit FROM harvest WHERE planting_id = '${picked()}'`);
  const pickedCrop = one(`SELECT c.name FROM planting p JOIN crop c ON c.id = p.crop_id WHERE p.id = '${picked()}'`);
  of('harvest', 'add', `Log a harvest of ${pickedCrop}: 1.5 ${pickedUnit()}`, () => ({
    date: one(`SELECT max(date) FROM harvest WHERE planting_id = '${picked()}'`),
    plantingId: picked(),
    amount: 1.5,
    unit: pickedUnit(),
    labour_min: 12,
    confirmed: true,
  }));
  of('harvest', 'setMany', 'Change a harvest', async () => ({
    edits: [{ harvestId: await unsold(), revision: 1, values: { amount: 4, labour_min: 30 } }],
    confirmed: true,
  }));
  of('harvest', 'remove', 'Take a harvest away', async () => ({ harvestIds: [await unsold()] }));
  of('harvest', 'importAll', 'Import a file of harvests', () => {
    const date = one(`SELECT max(date) FROM harvest WHERE planting_id = '${picked()}'`);
    const bed = one(
      `SELECT b.code FROM planting_bed pb JOIN bed b ON b.id = pb.bed_id WHERE pb.planting_id = '${picked()}' ORDER BY b.code`,
    );
    return {
      text: `date,bed,crop,amount,unit,grade,minutes,note\n${date},${bed},"${pickedCrop}",2.5,${pickedUnit()},first,10,\n`,
    };
  });
  of('harvest', 'learn', 'Learn the yield of one crop from harvests', () => ({
    seasonId: WORKED,
    cropIds: [
      one(`SELECT crop_id FROM planting WHERE id = (SELECT planting_id FROM harvest h WHERE h.date LIKE '2026%' ORDER BY id)`),
    ],
  }));
  of('harvest', 'setUnit', 'Set the weight of one crate', () => ({ cropId: null, unit: 'crate', net_kg: 9 }));
  of('harvest', 'removeUnit', 'Take away the unit of sale crate', async () => {
    await api.harvest.setUnit({ cropId: null, unit: 'crate', net_kg: 9 });
    return { saleUnitId: one('SELECT id FROM sale_unit') };
  });

  of('labour', 'add', 'Log 30 minutes: weeding', () => ({ date: DAY, task: 'weeding', labour_min: 30, bedId: 'bed-a-1' }));
  of('labour', 'remove', 'Take 2 entries of hours away', () => ({
    labourIds: sqlite().prepare<[], string>('SELECT id FROM labour_entry ORDER BY id LIMIT 2').pluck().all(),
  }));
  of('labour', 'standard', 'Fill in standard times of season 2026', async () => {
    // one planting whose weeding nobody logged, so that there is something to fill in
    const plantingId = one(`SELECT planting_id FROM labour_entry WHERE planting_id LIKE 'planting-2026%' ORDER BY id`);
    const labourIds = sqlite()
      .prepare<[string], string>('SELECT id FROM labour_entry WHERE planting_id = ?')
      .pluck()
      .all(plantingId);
    await api.labour.remove({ labourIds });
    return { seasonId: WORKED };
  });

  of('materials', 'setMany', 'Change material Feather meal', () => ({
    edits: [
      { materialId: 'feather-meal', revision: revisionOf('material', 'feather-meal'), values: { notes: 'dusty', nShare: 0.12 } },
    ],
  }));
  of('materials', 'add', 'Add material Kelp wash', () => ({ name: 'Kelp wash', kind: 'fertiliser', baseUnit: 'L' }));

  const need = { ...season, materialId: 'hw-board', amount: 12, reason: 'cold frame', wantedDate: '2027-03-01' };
  of('orders', 'addNeed', 'Add a need of Larch board 38 x 140 mm', () => need);
  of('orders', 'removeNeed', 'Take away the need of Larch board 38 x 140 mm', () => api.orders.addNeed(need));
  of('orders', 'setNeeds', 'Change 2 needs', async () => ({
    ...season,
    choices: (await api.orders.needs(season)).needs
      .slice(0, 2)
      .map(({ key, materialId }) => ({ key, materialId, amount: 3, supplierId: null, left: true })),
  }));
  of('orders', 'setNeedAmount', 'Need another amount of Compost, yard trimmings', async () => {
    const { key, materialId } = found((await api.orders.needs(season)).needs.find((each) => each.materialId === 'compost-yard'));
    return { ...season, key, materialId, amount: 3, reason: 'half of it lies ready' };
  });
  of('orders', 'keepList', 'Take over a shopping list of one line', async () => ({ ...season, bought: await bought() }));
  const firstOffer = one(`SELECT name FROM offer WHERE id = 'offer-1'`);
  of('orders', 'setPackages', `Change the packages of ${firstOffer}`, async () => ({
    lines: [{ shoppingLineId: await listed(), packages: 3 }],
  }));
  of('orders', 'tick', `Tick off ${firstOffer}`, async () => ({ shoppingLineId: await listed(), ticked: true }));
  const soilYard = 'Tidewrack Soil Yard (invented)';
  of('orders', 'order', `Order from ${soilYard}`, async () => {
    await api.orders.tick({ shoppingLineId: await listed(), ticked: true });
    return { ...season, supplierId: 'supplier-soil', date: DAY };
  });
  of('orders', 'receive', `Receive one line from ${soilYard}`, async () => {
    const { purchaseId, lineId } = await ordered();
    return { purchaseId, date: DAY, lines: [{ lineId, packages: 2, lot: 'L-1' }] };
  });
  of('orders', 'sendBack', `Send goods back to ${soilYard}`, async () => {
    const { purchaseId, lineId } = await ordered();
    await api.orders.receive({ purchaseId, date: DAY, lines: [{ lineId, packages: 2 }] });
    return { purchaseId, lineId, packages: 1, date: DAY, reason: 'wet' };
  });
  of('orders', 'callOff', `Call off what has not come from ${soilYard}`, async () => {
    const { purchaseId } = await ordered();
    return { purchaseId, date: DAY };
  });
  of('orders', 'setBudgets', 'Set the budget of soil and amendments', () => ({
    ...season,
    budgets: [{ category: 'soil and amendments', month: 3, amount_minor: 4000 }],
  }));

  of('plantings', 'add', 'Add a succession of Carrot', () => ({
    ...season,
    entry: grow,
    spans: ['bed-a-1', 'bed-a-2'].map(whole),
    succession: { interval_days: 14, notAfter: '2027-06-30', by: 'interval' },
  }));
  of('plantings', 'move', 'Move the planting of Carrot', () => ({
    moves: [
      { plantingId: planting(), revision: revisionOf('planting', planting()), how: 'move', days: 7, spans: [whole('bed-a-3')] },
    ],
  }));
  of('plantings', 'copy', 'Copy the planting of Carrot', () => ({ plantingId: planting(), days: 21 }));
  of('plantings', 'set', 'Change the planting of Carrot', () => ({
    plantingId: planting(),
    revision: revisionOf('planting', planting()),
    values: { notes: 'thin to 3 cm', pinned: true },
  }));
  of('plantings', 'record', 'Record what happened with Carrot', () => ({
    plantingId: planting(),
    revision: revisionOf('planting', planting()),
    actual: { sownActual: '2026-11-20', plantsActual: 90 },
  }));
  of('plantings', 'remove', 'Take away the planting of Carrot', () => ({ plantingIds: [planting()] }));

  of('seasons', 'add', 'Add season 2028', () => ({ name: '2028', startDate: '2028-01-01', endDate: '2028-12-31' }));
  of('seasons', 'set', 'Change season 2027', () => ({
    ...season,
    revision: revisionOf('season', PLANNED),
    values: { benchArea_m2: 20, state: 'running' },
  }));
  of('seasons', 'copy', 'Plan season 2028 as a copy', () => ({
    fromSeasonId: PLANNED,
    name: '2028',
    years: 1,
    keepBeds: true,
    useLearned: false,
  }));

  of('proposals', 'accept', 'Accept a proposal for one bed', async () => {
    const proposalId = await proposed();
    const view = await api.proposals.view({ proposalId });
    const { bedId } = JSON.parse(/\{[^{}]*"bedId":"[^"]+"[^{}]*\}/.exec(JSON.stringify(view))?.[0] ?? '{}') as { bedId: string };
    return { proposalId, bedIds: [bedId] };
  });

  const record = { kind: 'wash-water', date: DAY, place: 'pack shed', who: 'AN', observed: 'free chlorine 75 mg/L' } as const;
  of('records', 'append', `Write a record of wash water on ${DAY}`, () => record);
  of('records', 'review', 'Mark a record as reviewed by JM', async () => ({
    logId: (await api.records.append(record)).logId,
    reviewedBy: 'JM',
  }));

  const stall = one(`SELECT name FROM outlet WHERE id = 'outlet-stall'`);
  of('sales', 'add', `Enter a sale of one lot to ${stall}`, async () => {
    const harvestId = await unsold();
    const { lotId, plantingId, unit } = found(
      sqlite()
        .prepare<[string], { lotId: string; plantingId: string; unit: string }>(
          'SELECT lot_id AS lotId, planting_id AS plantingId, unit FROM harvest WHERE id = ?',
        )
        .get(harvestId),
    );
    return { date: DAY, outletId: 'outlet-stall', lines: [{ lotId, plantingId, amount: 1, unit, price_minor: 300 }] };
  });
  of('sales', 'removeLines', 'Take 2 sale lines away', () => ({
    saleLineIds: sqlite().prepare<[], string>('SELECT id FROM sale_line ORDER BY id LIMIT 2').pluck().all(),
  }));
  of('sales', 'setPrices', 'Change 2 sale prices', () => ({
    edits: sqlite()
      .prepare<[], string>('SELECT id FROM price ORDER BY id LIMIT 2')
      .pluck()
      .all()
      .map((priceId) => ({ priceId, price_minor: 999 })),
  }));
  of('sales', 'addPrice', `Add a price of Carrot at ${stall}`, () => ({
    outletId: 'outlet-stall',
    cropId: 'carrot',
    unit: 'crate',
    price_minor: 2500,
    fromDate: DAY,
  }));

  of('soilTests', 'add', 'Enter the soil test Sheet of the east end', () => ({
    ...sheet,
    values: [...sheet.values],
    bedIds: [...sheet.bedIds],
  }));
  of('soilTests', 'save', 'Change the soil test Sheet of the east end', () => ({
    testId: 'test-2026-block-a',
    revision: revisionOf('soil_test', 'test-2026-block-a'),
    test: { ...sheet, values: [...sheet.values], bedIds: [...sheet.bedIds] },
  }));
  of('soilTests', 'remove', 'Take a soil test away', () => ({ testIds: ['test-2026-block-a'] }));
  of('soilTests', 'importFile', 'Import a file of soil tests', () => ({
    csv: 'date,sample,beds,method,pH,P ppm,K (lb/acre)\n2026-10-01,one,A-01,mehlich-3,6.2,40,220\n',
  }));

  of('stockpiles', 'add', 'Measure heap By the gate', () => heap);
  of('stockpiles', 'remove', 'Strike out heap By the gate', async () => {
    await api.stockpiles.add(heap);
    return { stockpileId: one('SELECT id FROM stockpile') };
  });
  const ownSoil = one(`SELECT name FROM material WHERE id = 'soil-own-loose'`);
  of('stockpiles', 'countAsStock', `Count the heaps of ${ownSoil} as stock`, async () => {
    await api.stockpiles.add(heap);
    return { materialId: 'soil-own-loose' };
  });

  of('stock', 'count', 'Count the stock of 2 materials', () => ({
    date: DAY,
    who: 'AN',
    counts: [
      { materialId: 'feather-meal', counted: 3 },
      { materialId: 'hw-board', counted: 41, unitCost_minor: 600 },
    ],
  }));
  of('stock', 'use', 'Take Feather meal from stock', () => ({
    materialId: 'feather-meal',
    date: DAY,
    amount: 0.5,
    flagged: true,
  }));
  of('stock', 'addLot', 'Add lot F-7 of Feather meal', () => ({
    materialId: 'feather-meal',
    code: 'F-7',
    expiresDate: '2028-01-01',
  }));
  const instead = { materialId: 'feather-meal', insteadId: 'soybean-meal' };
  of('stock', 'addStandIn', 'Allow Soybean meal in place of Feather meal', () => ({ ...instead, ratio: 1.7 }));
  of('stock', 'removeStandIn', 'Allow no more Soybean meal in place of Feather meal', async () => {
    await api.stock.addStandIn({ ...instead, ratio: 1.7 });
    return instead;
  });

  of('suppliers', 'add', 'Add supplier Kelp Point Feed (invented)', () => ({ name: 'Kelp Point Feed (invented)', lead_days: 3 }));
  of('suppliers', 'setMany', `Change supplier ${soilYard}`, () => ({
    edits: [
      { supplierId: 'supplier-soil', revision: revisionOf('supplier', 'supplier-soil'), values: { deliveryFee_minor: 7000 } },
    ],
  }));
  of('suppliers', 'addOffer', 'Add offer Boards, bundle of 10', () => ({
    name: 'Boards, bundle of 10',
    supplierId: 'supplier-soil',
    materialId: 'hw-board',
    packageAmount: 10,
    price_minor: 6000,
  }));
  of('suppliers', 'setOffers', `Change offer ${firstOffer}`, () => ({
    edits: [{ offerId: 'offer-1', revision: revisionOf('offer', 'offer-1'), values: { price_minor: 6100 } }],
  }));
  of('suppliers', 'setBreaks', `Change the price breaks of ${firstOffer}`, () => ({
    offerId: 'offer-1',
    breaks: [{ fromPackages: 4, price_minor: 5500 }],
  }));
  of('suppliers', 'importOffers', 'Import a price list', () => ({
    csv: `supplier,material,package,holds,price\n${soilYard},Feather meal,"Feather meal, sack",25 kg,41.50\n`,
  }));

  of('waterDemand', 'setChoices', 'Change the water choices', () => ({
    wallFactor: 0.3,
    exposure: 1,
    shadeShare: 0.3,
    confidence: 0.9,
    standing_days: 2,
    run_h_per_day: 4,
    ecw_dS_per_m: null,
    saltYieldShare: 0.9,
  }));
  const saltTest = { date: DAY, point: 'tank', ecw_dS_per_m: 0.6, laboratory: '' };
  of('waterDemand', 'addSaltTest', `Enter the water test of ${DAY}`, () => saltTest);
  of('waterDemand', 'removeSaltTest', 'Take a water test away', async () => {
    await api.waterDemand.addSaltTest(saltTest);
    return { testId: one('SELECT id FROM water_test') };
  });

  const aStation = async (fill: boolean) =>
    (await api.weather.importFile({ text: weatherText, stationId: null, station, fill, skipFaults: false })).stationId;
  of('weather', 'importFile', 'Import the weather of Shed roof', () => ({
    text: readFileSync(join(resources, 'weather', 'coast-47n-2012-2015.csv'), 'utf8'),
    stationId: null,
    station,
    fill: false,
    skipFaults: false,
  }));
  of('weather', 'choose', 'Choose weather station Shed roof', async () => ({ stationId: await aStation(false) }));
  of('weather', 'changeStation', 'Change weather station Coast near 47.6 N, 2012-2015', () => ({
    ...station,
    stationId: 'station-coast',
  }));
  of('weather', 'fill', 'Fill the gaps in the weather of Shed roof', async () => ({ stationId: await aStation(false) }));
  of('weather', 'remove', 'Take away weather station Coast near 47.6 N, 2012-2015', () => ({ stationId: 'station-coast' }));

  const lineRevision = () => revisionOf('water_line', line.lineId);
  const outletId = 'outlet-B-01';
  of('waterLines', 'create', 'Draw the water line North line', () => ({
    name: 'North line',
    supply: { supply: 'reservoir', reservoir_L: 500 },
    pump: { ...pump, points: [...pump.points] },
    layout: {
      bedIds: [],
      rows: 2,
      bedsInRow: 4,
      spacing_m: 1.2,
      rowSpacing_m: 1.5,
      arrangement: 'snake',
      mainDiameter_m: 0.0127,
      lateralDiameter_m: 0.0127,
      lateral_m: 0.3,
      teeBore_m: 0.0095,
      outlet_m: 0.3,
      riser_m: 2,
    },
  }));
  of('waterLines', 'remove', 'Take away the water line Bag line', () => line);
  of('waterLines', 'setSupply', 'Change the supply of Bag line', () => ({
    ...line,
    values: { reservoir_L: 900 },
    revision: lineRevision(),
  }));
  of('waterLines', 'setPump', 'Change the pump of Bag line', () => ({ ...line, pump: { ...pump, points: [...pump.points] } }));
  of('waterLines', 'setNodes', 'Change a place of Bag line', () => ({
    ...line,
    edits: [{ id: 'node-split', values: { x_m: 23, y_m: 6 } }],
    relength: true,
  }));
  of('waterLines', 'setRuns', 'Change a run of Bag line', () => ({
    ...line,
    edits: [{ id: 'run-node-source-node-split', values: { length_m: 2.5 } }],
  }));
  of('waterLines', 'setOutlets', 'Change an outlet of Bag line', () => ({
    ...line,
    edits: [{ id: outletId, values: { wantShare: 2, outlet_m: 0.5 } }],
  }));
  of('waterLines', 'addBranch', 'Add a branch to Bag line', () => ({
    ...line,
    fromNodeId: 'node-split',
    to: 'outlet',
    bedId: null,
    x_m: 24,
    y_m: 7,
    insideDiameter_m: 0.0127,
    outlet_m: 0.3,
  }));
  of('waterLines', 'removePlace', 'Take away a branch of Bag line', () => ({ ...line, nodeId: 'node-end-B-01' }));
  of('waterLines', 'setValves', 'Set the valves of Bag line by the card', () => line);
  of('waterLines', 'openValves', 'Open all valves of Bag line', async () => {
    await api.waterLines.setValves(line);
    return line;
  });
  of('waterLines', 'measured', 'Enter a measured flow of Bag line', () => ({
    ...line,
    date: DAY,
    flows: [{ outletId, flow_L_per_h: 20 }],
  }));
  const reading = { ...line, outletId, turns: 1.5, flow_L_per_h: 18, date: DAY };
  of('waterLines', 'addReading', 'Enter a valve reading of Bag line', () => reading);
  of('waterLines', 'removeReading', 'Take a valve reading away', async () => {
    await api.waterLines.addReading(reading);
    return { readingId: one('SELECT id FROM valve_reading') };
  });
  of('waterLines', 'setPower', 'Change the power of Bag line', () => ({
    ...line,
    power: {
      kind: 'battery',
      battery: 'lithium-iron-phosphate',
      capacity_Wh: 600,
      usableShare: 0.8,
      inverterShare: 1,
      selfDischarge_share_per_month: 0.03,
      controller_W: 1,
      idle_W: 0,
      idleOff_h: null,
      panel_W: 40,
      panelLossShare: 0.3,
      peakSun_h: 5,
      limit_W: null,
    },
  }));
  of('waterLines', 'setTimers', 'Change the timer of Bag line', () => ({
    ...line,
    timers: [{ month: 7, every_days: 1, start: '05:00', run_min: 20, zone: 1 }],
  }));
  of('waterLines', 'proposeTimers', 'Set the timer of Bag line by the beds’ need', () => ({ ...line, start: '04:15' }));
  of('waterLines', 'sharesByNeed', 'Share the water of Bag line by need', () => ({ ...line, month: 7 }));
  of('waterLines', 'equalShares', 'Share the water of Bag line equally', async () => {
    await api.waterLines.setOutlets({ ...line, edits: [{ id: outletId, values: { wantShare: 2 } }] });
    return line;
  });
  of('waterLines', 'orderParts', 'Put the parts of Bag line into Orders', () => line);
  of('waterLines', 'planRefills', 'Put the refills of Bag line onto This week', async () => {
    await api.waterLines.setTimers({ ...line, timers: [{ month: 12, every_days: 1, start: '06:00', run_min: 10, zone: 1 }] });
    return line;
  });
  of('waterLines', 'takeOption', 'Rebuild Bag line', () => ({ ...line, kind: 'second-pump', mainDiameter_m: null }));
  const part = { amount: 1, life_years: 4, price_minor: 3900 };
  const pumpName = one(`SELECT name FROM material WHERE id = 'hw-pump-25'`);
  of('waterLines', 'addPart', `Enter ${pumpName} as a part of Bag line`, () => ({
    ...line,
    materialId: 'hw-pump-25',
    installedDate: DAY,
    ...part,
  }));
  const linePartId = 'line-part-line-bags-hw-pump-25';
  of('waterLines', 'replacePart', `Replace ${pumpName} of line Bag line`, () => ({
    linePartId,
    date: DAY,
    reason: 'seized',
    ...part,
  }));
  of('waterLines', 'endPart', `Take ${pumpName} out of line Bag line`, () => ({ linePartId, date: DAY, reason: 'not needed' }));
  of('waterLines', 'removePart', `Take back the entry of ${pumpName} in line Bag line`, () => ({ linePartId }));

  of('week', 'done', 'Mark as done: Harvest the radish', () => ({ tasks: [task], date: DAY }));
  of('week', 'skip', 'Skip the task Harvest the radish', () => ({ tasks: [task] }));
  of('week', 'open', 'Open again: Harvest the radish', async () => {
    await api.week.done({ tasks: [task], date: DAY });
    return { task };
  });
  of('week', 'move', 'Move 2 tasks to 2026-12-01', () => ({ tasks: [task, { ...task, key: 'harvest:y' }], to: '2026-12-01' }));
  const own = { title: 'Mend the gate', due: DAY, bedId: null, note: '' };
  of('week', 'add', 'Add the task Mend the gate', () => own);
  of('week', 'remove', 'Take away the task Mend the gate', async () => {
    await api.week.add(own);
    return { taskId: one('SELECT id FROM task') };
  });
  return cases;
}
