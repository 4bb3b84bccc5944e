import { ownValue } from '../own-value.ts';
import type { StageDays } from './crop-curve.ts';
import { type CropRow, cropRow, type Printed } from './crop-rows.ts';
import { stageRowsOf } from './stage-rows.ts';

/** What the farm knows of a crop; null where it does not. */
export type CropWaterFacts = {
  readonly cropId: string;
  readonly group: string;
  readonly kcIni: number | null;
  readonly kcMid: number | null;
  readonly kcEnd: number | null;
  readonly stages_days: StageDays | null;
  readonly rootDepth_m: number | null;
  readonly height_m: number | null;
  readonly p: number | null;
  readonly saltThreshold_dS_per_m: number | null;
  readonly saltSlope_share_per_dS_per_m: number | null;
};

export type CropWater = {
  readonly kcIni: number;
  readonly kcMid: number;
  readonly kcEnd: number;
  /** Kc less what evaporates from the ground, in the middle stage. */
  readonly kcbMid: number;
  readonly stages_days: StageDays;
  readonly rootDepth_m: number;
  readonly height_m: number;
  readonly p: number;
  readonly saltThreshold_dS_per_m: number | null;
  readonly saltSlope_share_per_dS_per_m: number | null;
  /** The printed row that stands in where the farm knows nothing; null when nothing was missing. */
  readonly like: string | null;
};

/** Rows that stand in for crops without one of their own. Common practice, no source (herbs and flowers have no FAO row). */
const stands: Readonly<Record<string, string>> = {
  'swiss-chard': 'cabbage',
  kale: 'cabbage',
  collards: 'cabbage',
  'pak-choi': 'lettuce',
  'napa-cabbage': 'cabbage',
  kohlrabi: 'broccoli',
  leek: 'onion, green',
  chives: 'onion, green',
  shallot: 'onion, dry',
  celeriac: 'celery',
  fennel: 'celery',
  parsley: 'celery',
  tomatillo: 'tomato',
  okra: 'eggplant',
  rhubarb: 'artichoke',
  dahlia: 'potato',
  'bean-lima': 'bean, green',
  edamame: 'bean, green',
  sage: 'asparagus',
  thyme: 'asparagus',
};

const byGroup: Readonly<Record<string, string>> = {
  salad: 'lettuce',
  leafy: 'spinach',
  brassica: 'cabbage',
  root: 'carrot',
  allium: 'onion, dry',
  legume: 'pea, fresh',
  cucurbit: 'squash, zucchini',
  nightshade: 'tomato',
  celery: 'celery',
  corn: 'sweet corn, fresh',
  fruit: 'strawberry',
  herb: 'lettuce',
  'cut-flower': 'eggplant',
  'cover-crop': 'pea, fresh',
};

const first = (value: Printed): number => (typeof value === 'number' ? value : value[0]);
const fallback = 'lettuce';

function rowFor(facts: CropWaterFacts): CropRow {
  const name = ownValue(stands, facts.cropId) ?? ownValue(byGroup, facts.group) ?? fallback;
  const row = cropRow(name) ?? cropRow(fallback);
  if (row === undefined) throw new Error(`The table of crops has lost its row ${name}.`);
  return row;
}

/**
 * A crop's figures for water: the farm's own, then the library's, and where neither knows one, those of a printed row that
 * stands in, named beside it.
 * Source: FAO-56 Tables 11, 12, 17, 22; which row stands in is common practice, no source.
 */
export function cropWater(facts: CropWaterFacts): CropWater {
  const row = rowFor(facts);
  const wanted = [facts.kcIni, facts.kcMid, facts.kcEnd, facts.stages_days, facts.rootDepth_m, facts.p];
  const kcMid = facts.kcMid ?? first(row.kcMid);
  // one printed set a crop is enough for the shares; the length is the planting's own
  const stages = stageRowsOf(row.crop)[0]?.stages_days ?? ([20, 30, 30, 15] as const);
  return {
    kcIni: facts.kcIni ?? first(row.kcIni),
    kcMid,
    kcEnd: facts.kcEnd ?? first(row.kcEnd),
    kcbMid: Math.min(kcMid, Math.max(0, kcMid - (first(row.kcMid) - row.kcb[1]))),
    stages_days: facts.stages_days ?? stages,
    rootDepth_m: facts.rootDepth_m ?? row.roots_m[0],
    height_m: facts.height_m ?? first(row.height_m),
    p: facts.p ?? row.p,
    saltThreshold_dS_per_m: facts.saltThreshold_dS_per_m,
    saltSlope_share_per_dS_per_m: facts.saltSlope_share_per_dS_per_m,
    like: wanted.includes(null) ? row.crop : null,
  };
}
