import type { planting, plantingBed } from '../../db/schema/plantings.ts';
import { addDays, dateOfYearDay, type IsoDate } from '../../planner/calendar.ts';
import { type CropChoice, cropChoices } from './crop-choices.ts';
import type { SampleFacts } from './crop-facts.ts';
import type { BedRow } from './designs.ts';
import type { Random } from './random.ts';

export type PlantingRow = typeof planting.$inferInsert;
export type PlantingBedRow = typeof plantingBed.$inferInsert;
export type MadePlanting = {
  readonly row: PlantingRow;
  readonly bed: PlantingBedRow;
  readonly area_m2: number;
  readonly choice: CropChoice;
};

export type SeasonPlan = {
  readonly seasonId: string;
  readonly year: number;
  /** A past season has happened; a coming one is only planned. */
  readonly past: boolean;
  readonly beds: readonly { readonly bed: BedRow; readonly area_m2: number }[];
  readonly facts: ReadonlyMap<string, SampleFacts>;
  /** Families grown in a bed in earlier years, newest first. */
  readonly history: Map<string, string[]>;
  readonly random: Random;
};

/** A quarter of the exact lattice is left out, so that the rough count never says more than fits. */
const ROUGH_FIT = 0.7;
const ROTATION_YEARS = 2;

const overlaps = (a: MadePlanting, inBed: IsoDate): boolean => (a.row.clearDate as string) > inBed;

function datesOf(choice: CropChoice, plan: SeasonPlan) {
  const { random, year } = plan;
  const inBed = dateOfYearDay(year, choice.inBedDay + random.whole(-choice.spread_days, choice.spread_days));
  const first = addDays(inBed, choice.maturity_days + random.whole(-3, 5));
  const last = addDays(first, choice.window_days + random.whole(-3, 6));
  return { inBed, first, last, clear: addDays(last, random.whole(2, 5)) };
}

function makePlanting(
  choice: CropChoice,
  plan: SeasonPlan,
  at: { readonly bed: BedRow; readonly area_m2: number },
  number: number,
): MadePlanting {
  const { random, past, facts } = plan;
  const fact = facts.get(choice.cropId);
  if (fact === undefined) throw new Error(`The crop library has no ${choice.cropId}.`);
  const { inBed, first, last, clear } = datesOf(choice, plan);
  const id = `planting-${plan.year}-${at.bed.id.slice(4)}-${number}`;
  const plants = Math.max(1, Math.floor((ROUGH_FIT * at.area_m2) / (fact.inRow_m * fact.row_m)));
  const typical = (choice.yieldPerM2 ?? fact.yieldPerM2 ?? 1) * at.area_m2;
  const two = (amount: number) => Number(amount.toPrecision(3));
  const late = past ? random.whole(-2, 4) : 0;
  const row: PlantingRow = {
    id,
    seasonId: plan.seasonId,
    cropId: choice.cropId,
    number,
    method: choice.method,
    sowDate:
      choice.method === 'transplant'
        ? addDays(inBed, -7 * Math.round(fact.weeksIndoors))
        : choice.method === 'direct'
          ? inBed
          : null,
    inBedDate: inBed,
    firstHarvestDate: first,
    lastHarvestDate: last,
    clearDate: clear,
    layout: 'square',
    inRow_m: fact.inRow_m,
    row_m: fact.row_m,
    plants,
    yieldUnit: choice.unit,
    yieldLow: two(typical * 0.6),
    yieldTypical: two(typical),
    yieldHigh: two(typical * 1.4),
    price_minor: choice.price_minor,
    state: past ? 'cleared' : 'planned',
    inBedActual: past ? addDays(inBed, Math.max(0, late)) : null,
    firstHarvestActual: past ? addDays(first, late) : null,
    lastHarvestActual: past ? last : null,
    clearedActual: past ? clear : null,
    plantsActual: past ? Math.max(1, Math.round(plants * random.between(0.88, 1))) : null,
  };
  return {
    row,
    bed: { id: `${id}-bed`, plantingId: id, bedId: at.bed.id, fromShare: 0, toShare: 1, plants },
    area_m2: at.area_m2,
    choice,
  };
}

/** One season's plantings, bed by bed: families that stood there in the last years are passed over; no two overlap. */
export function plantSeason(plan: SeasonPlan): MadePlanting[] {
  const { random, facts, history } = plan;
  const made: MadePlanting[] = [];
  for (const at of plan.beds) {
    const recent = (history.get(at.bed.id) ?? []).slice(0, ROTATION_YEARS * 3);
    const used = new Set(recent);
    const choose = (slot: CropChoice['slot']): CropChoice | null => {
      const open = cropChoices.filter(
        (choice) =>
          choice.slot === slot &&
          !used.has(facts.get(choice.cropId)?.family ?? '') &&
          (at.bed.trellis === true || facts.get(choice.cropId)?.needsTrellis !== true),
      );
      return open.length === 0 ? null : random.pick(open);
    };
    const slots: CropChoice['slot'][] = random.next() < 0.55 ? ['spring', 'summer'] : ['long', 'autumn'];
    const here: MadePlanting[] = [];
    for (const slot of slots) {
      if (slot === 'autumn' && random.next() < 0.25) continue;
      const choice = choose(slot);
      if (choice === null) continue;
      const next = makePlanting(choice, plan, at, here.length + 1);
      const before = here.at(-1);
      if (before !== undefined && overlaps(before, next.row.inBedDate as IsoDate)) continue;
      used.add(facts.get(choice.cropId)?.family ?? '');
      here.push(next);
    }
    made.push(...here);
    history.set(at.bed.id, [...here.map(({ choice }) => facts.get(choice.cropId)?.family ?? ''), ...recent]);
  }
  return made;
}
