import type { IsoDate } from '../calendar.ts';
import type { Fault } from '../errors.ts';

/** What is known of a planting when a harvest of it is entered. */
export type HarvestFacts = {
  readonly name: string;
  readonly inBed: IsoDate;
  readonly cleared: IsoDate | null;
  /** The unit its yield is planned in: counted in this unit a harvest needs no weight. */
  readonly yieldUnit: string;
  /** The largest single harvest of the crop in this unit so far; empty where there was none. */
  readonly record: number | null;
  /** All that the planting is expected to give, in its yield unit. */
  readonly expected: number | null;
};

export type HarvestEntry = {
  readonly date: IsoDate;
  readonly amount: number;
  readonly unit: string;
  readonly net_kg: number | null;
  readonly culls_kg: number;
  readonly labour_min: number | null;
  /** The grower was asked about an unusual entry and said yes. */
  readonly confirmed: boolean;
};

/** Above this many times the record, ask. */
const ASK_ABOVE_RECORDS = 10;

/**
 * What is wrong with a harvest entry, each fault at its field. An entry that is only unlikely gets the code `confirm`: asked once,
 * it may be entered.
 *
 * Common practice, no source.
 */
export function harvestFaults(entry: HarvestEntry, facts: HarvestFacts, today: IsoDate): readonly Fault[] {
  const faults: Fault[] = [];
  const say = (path: string, code: string, message: string) => faults.push({ path, code, message });
  if (!(entry.amount > 0)) say('amount', 'not-positive', 'A harvest is more than nothing.');
  if (entry.date < facts.inBed)
    say('date', 'too-early', `${facts.name} went into the bed on ${facts.inBed}: nothing can be harvested before.`);
  if (entry.date > today) say('date', 'too-late', 'This day has not come yet.');
  if (entry.net_kg === null && entry.unit !== facts.yieldUnit)
    say(
      'unit',
      'no-weight',
      `The weight of one ${entry.unit} is not known for this crop. Enter what one weighs, or another unit.`,
    );
  if (!(entry.culls_kg >= 0)) say('culls_kg', 'too-small', 'Culls cannot be negative.');
  if (entry.labour_min !== null && !(entry.labour_min >= 0)) say('labour_min', 'too-small', 'Time cannot be negative.');
  if (!entry.confirmed && faults.length === 0) {
    if (facts.record !== null && entry.amount > ASK_ABOVE_RECORDS * facts.record)
      say(
        'amount',
        'confirm',
        `${entry.amount} ${entry.unit} is more than ten times the largest harvest so far (${facts.record}). Is it right?`,
      );
    else if (
      facts.record === null &&
      facts.expected !== null &&
      entry.unit === facts.yieldUnit &&
      entry.amount > ASK_ABOVE_RECORDS * facts.expected
    )
      say(
        'amount',
        'confirm',
        `${entry.amount} ${entry.unit} is more than ten times what the planting should give in all. Is it right?`,
      );
    else if (facts.cleared !== null && entry.date > facts.cleared)
      say('date', 'confirm', `${facts.name} was cleared on ${facts.cleared}. Was it harvested after?`);
  }
  return faults;
}

/** What is left of a lot: harvested less what was sold, given or thrown away. Amounts in the lot's own unit. */
export function leftOfLot(harvested: number, gone: readonly number[]): number {
  return harvested - gone.reduce((sum, each) => sum + each, 0);
}

/** Faults of a line that takes more from a lot than is left; a refund (below zero) always goes. */
export function lotFaults(path: string, code: string, amount: number, left: number, unit: string): readonly Fault[] {
  if (amount <= left + 1e-9) return [];
  const rest = Number(Math.max(0, left).toPrecision(6));
  return [{ path, code: 'more-than-lot', message: `Lot ${code} has ${rest} ${unit} left; ${amount} is more than that.` }];
}
