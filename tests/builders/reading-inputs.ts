import { callerFactory } from '../../api/procedure.ts';
import { router } from '../../api/router.ts';
import type { TestProgram } from './a-farm.ts';

/** The season being planned, and the last one that has books, of an invented farm. */
export const PLANNED = 'season-2027';
export const WORKED = 'season-2026';

/** Reading procedures that have no input on a farm at rest, each with its reason. */
export const withoutInput: Readonly<Record<string, string>> = {
  'files.preview': 'opens another file',
  'jobs.get': 'needs a job',
  'orders.explainLine': 'needs a shopping list that was searched for',
  'proposals.figuresWith': 'needs a kept proposal',
  'proposals.view': 'needs a kept proposal',
};

type Schema = { readonly safeParse: (value: unknown) => { readonly success: boolean } };
type Procedure = { readonly _def: { readonly type: string; readonly inputs: readonly Schema[] } };
const procedures = router._def.procedures as unknown as Readonly<Record<string, Procedure>>;

/** The reading procedures that should be in {@link readingsOf}. */
export const readingNames: readonly string[] = Object.entries(procedures).flatMap(([name, { _def }]) =>
  _def.type === 'query' && withoutInput[name] === undefined ? [name] : [],
);

export type Reading = { readonly name: string; readonly read: () => Promise<unknown> };

/** Every reading procedure of the program with an input that a page would send. */
export function readingsOf(t: TestProgram): readonly Reading[] {
  const one = (sql: string): string => t.farm.sqlite.prepare<[], string>(sql).pluck().get() ?? '';
  const bedIds = t.farm.sqlite.prepare<[], string>('SELECT id FROM bed WHERE retired_date IS NULL ORDER BY code').pluck().all();
  const bedId = bedIds[0] ?? '';
  const cropId = one('SELECT crop_id FROM demand ORDER BY id');
  const plantingId = one(`SELECT id FROM planting WHERE season_id = '${PLANNED}' ORDER BY id`);
  const pickedId = one(`SELECT planting_id FROM harvest JOIN planting p ON p.id = planting_id WHERE p.season_id = '${WORKED}'`);
  const pickedCropId = one(`SELECT crop_id FROM planting WHERE id = '${pickedId}'`);
  const yieldKnownId = one(`SELECT crop_id FROM crop_value WHERE name = 'yield_typical_per_m2' ORDER BY crop_id`);
  const materialId = one('SELECT material_id FROM stock_move ORDER BY id');
  const compostId = one(`SELECT id FROM material WHERE name LIKE '%compost%' ORDER BY name`);
  const year = { from: '2026-01-01', to: '2026-12-31' };
  const plan = { seasonId: PLANNED };
  const done = { seasonId: WORKED };
  const inputs: Readonly<Record<string, unknown>> = {
    'beds.cards': { bedIds: bedIds.slice(0, 1000), what: 'wanted' },
    'beds.checkGeoJson': { text: '{"type":"FeatureCollection","features":[]}', firstCode: 'Z-01' },
    'beds.dismantleYield': { bedId, lossShare: 0.1 },
    'beds.one': { bedId },
    'compost.planTea': {
      date: '2026-07-01',
      compostBatchId: null,
      name: 'Tea',
      bedIds: bedIds.slice(0, 200),
      drench_L_per_m2: 0.5,
      waterParts: 4,
      compost_kg_per_L: 0.05,
      tank_L: 200,
      startedAt: '2026-07-01T08:00',
      brew_h: 24,
    },
    'compost.mix': {
      parts: [{ materialId: compostId, amount_kg: 100 }],
      goalCarbonToNitrogen: 30,
      goalMoistureShare: 0.55,
      secondId: null,
      thirdId: null,
    },
    'costs.explain': { ...done, by: 'bed', id: bedId },
    'costs.explainLinePart': { ...done, linePartId: one('SELECT id FROM line_part ORDER BY id') },
    'costs.lineParts': done,
    'costs.map': done,
    'costs.overheads': done,
    'costs.seasonSums': done,
    'costs.plan': done,
    'costs.stand': { ...done, cropId: pickedCropId },
    'costs.view': { ...done, by: 'bed' },
    'crops.one': { cropId, varietyId: null },
    'demand.area': { cropId: yieldKnownId, demand: 20, loss_share: 0.1, seasonId: PLANNED },
    'designs.one': { designId: one('SELECT id FROM design ORDER BY name') },
    'farm.rememberedUnder': { prefix: 'table.' },
    'farm.remembered': { name: 'season.rules' },
    'files.folder': { folder: t.folder },
    'feeding.explainBudget': { ...plan, bedId, nutrient: 'N' },
    'harvest.choices': { date: '2026-07-09' },
    'harvest.explainYield': { ...done, plantingId: pickedId },
    'harvest.log': year,
    'harvest.lots': { date: '2026-09-01' },
    'harvest.yields': done,
    'labour.log': year,
    'plantings.one': { plantingId },
    'plantings.preview': {
      ...plan,
      entry: {
        cropId,
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
      },
      spans: bedIds.slice(0, 5).map((id) => ({ bedId: id, fromShare: 0, toShare: 1 })),
      succession: { interval_days: 14, notAfter: '2027-08-30', by: 'interval' },
    },
    'plantings.whatFits': { ...plan, bedId, fromShare: 0, toShare: 1, from: '2027-04-01', to: '2027-09-30' },
    'records.exemption': { limit_minor: 2_500_000 },
    'records.lotsLike': { part: '2' },
    'records.traceBack': { code: one('SELECT code FROM harvest_lot ORDER BY code') },
    'records.traceForward': { kind: 'bed', id: bedId },
    'sales.log': year,
    'sales.standing': { date: '2026-07-09' },
    'soilTests.lookIntoFile': { csv: 'bed,date,ph\nA-01,2026-10-20,6.4\n' },
    'soilTests.one': { testId: one('SELECT id FROM soil_test ORDER BY id') },
    'stock.explain': { materialId, unit: one(`SELECT base_unit FROM material WHERE id = '${materialId}'`) },
    'stock.plantingsNear': { date: '2026-07-09' },
    'stock.moves': { materialId },
    'suppliers.lookIntoOffers': { csv: 'supplier,material,package,price\n' },
    'suppliers.offer': { offerId: one('SELECT id FROM offer ORDER BY id') },
    'waterDemand.explainDay': {
      seasonId: PLANNED,
      year: null,
      bedId,
      date: one('SELECT max(date) FROM weather_day WHERE tmax_C IS NOT NULL'),
    },
    'waterDemand.explainLeaching': { ecw_dS_per_m: 0.8, ece_dS_per_m: 2 },
    'waterDemand.intervals': { seasonId: PLANNED, month: 7 },
    'waterDemand.trace': { seasonId: PLANNED, year: null, bedId, watering: 'as-planned' },
    'waterLines.explainPart': { linePartId: one('SELECT id FROM line_part ORDER BY id') },
    'waterLines.need': { lineId: one('SELECT id FROM water_line ORDER BY name'), month: 7 },
    'week.list': { monday: '2026-07-06', weeks: 1 },
  };
  const usual: readonly unknown[] = [
    undefined,
    {},
    plan,
    { seasonId: PLANNED, year: null },
    { bedId },
    { plantingId },
    { lineId: one('SELECT id FROM water_line ORDER BY name') },
    { cropId },
    { materialId },
    { seasonId: PLANNED, bedId },
  ];
  const strangers = Object.keys(inputs).filter((name) => !(name in router._def.procedures));
  if (strangers.length > 0) throw new Error(`There are no such procedures: ${strangers.join(', ')}.`);
  const caller = callerFactory(router)(t.door) as unknown as Readonly<
    Record<string, Readonly<Record<string, (input: unknown) => Promise<unknown>>>>
  >;
  return readingNames.flatMap((name): readonly Reading[] => {
    const [group = '', leaf = ''] = name.split('.');
    const call = caller[group]?.[leaf];
    if (call === undefined) throw new Error(`There is no procedure ${name}.`);
    const fits = (value: unknown) => procedures[name]?._def.inputs[0]?.safeParse(value).success === true;
    const input = name in inputs ? inputs[name] : usual.find(fits);
    return fits(input) ? [{ name, read: () => call(input) }] : [];
  });
}
