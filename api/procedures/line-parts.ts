import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { addLinePart, endLinePart, linePartOfId, partsOfLine, removeLinePart } from '../../db/repositories/line-parts.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { removeMovesOfPart } from '../../db/repositories/stock.ts';
import { partDue } from '../../planner/beds/part-life.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { explainYearlyCost, yearlyCost_minor } from '../../planner/costs/yearly-cost.ts';
import { refuse } from '../../planner/errors.ts';
import { calendarDate } from '../beds/entry.ts';
import { lastingLinePart } from '../costs/line-part-costs.ts';
import { Refusal } from '../errors.ts';
import { type Taken, takeFromStock } from '../orders/take-from-stock.ts';
import { change, read } from '../procedure.ts';
import { loadLine } from '../water-line/load-line.ts';

const lineId = z.string().min(1);
const removalReason = z.string().trim().min(1, 'Say why it came out.').max(200);
const entry = {
  amount: z.number('Enter an amount.').positive('An amount must be more than zero.'),
  life_years: z.number('Enter a life.').positive('A life must be more than zero.').max(100, 'At most 100 years.'),
  price_minor: z.int().nonnegative('A price cannot be negative.').nullable().default(null),
};

/** Parts of a water line that wear: in since when, for how long, and replaced when. */
export const lineParts = {
  worn: read({
    input: z.object({ lineId }),
    run({ db }, { lineId: id }) {
      const farm = farmOfFile(db);
      return partsOfLine(db, id).map((part) => ({
        ...part,
        dueDate: partDue(part.installedDate as IsoDate, part.life_years),
        year_minor: yearlyCost_minor(yearlyOf(part), farm?.partsMethod ?? 'straight-line', farm?.interest_share_per_year ?? 0),
      }));
    },
  }),
  explainPart: read({
    input: z.object({ linePartId: z.string() }),
    run({ db }, { linePartId }) {
      const part = linePartOfId(db, linePartId);
      const farm = farmOfFile(db);
      if (part === undefined || farm === undefined) throw new Refusal({ code: 'not-found', what: 'part' });
      return explainYearlyCost(yearlyOf(part), farm.partsMethod, farm.interest_share_per_year);
    },
  }),
  addPart: change({
    note: ({ lineId: line, materialId }, { db }) =>
      `Enter ${nameOf(db, 'material', materialId)} as a part of ${nameOf(db, 'line', line)}`,
    input: z.object({ lineId, materialId: z.string().min(1, 'Choose a material.'), installedDate: calendarDate, ...entry }),
    run({ db }, { lineId: id, price_minor, ...part }) {
      const { name } = loadLine(db, id).record.line;
      const linePartId = newId<string>();
      const taking = { ...part, bedId: null, reason: `Into ${name}`, partId: linePartId };
      const [taken] = takeFromStock(db, [taking], part.installedDate);
      addLinePart(db, {
        id: linePartId,
        lineId: id,
        ...pricedAs(price_minor, taken),
        ...part,
      });
      return { linePartId, fromStock: taken?.fromStock ?? 0 };
    },
  }),
  replacePart: change({
    note: ({ linePartId }, { db }) =>
      `Replace ${nameOf(db, 'linePart', linePartId)} of line ${nameOf(db, 'lineOfPart', linePartId)}`,
    input: z.object({
      linePartId: z.string(),
      date: calendarDate,
      reason: z.string().trim().min(1, 'Say why it was replaced.').max(200),
      ...entry,
    }),
    run({ db }, { linePartId, date, reason, price_minor, ...part }) {
      const { lineId: id, materialId } = endPart(db, linePartId, date, reason);
      const { name } = loadLine(db, id).record.line;
      const newPartId = newId<string>();
      const taking = { materialId, amount: part.amount, bedId: null, reason: `Into ${name}: ${reason}`, partId: newPartId };
      const [taken] = takeFromStock(db, [taking], date);
      addLinePart(db, {
        id: newPartId,
        lineId: id,
        materialId,
        installedDate: date,
        ...pricedAs(price_minor, taken),
        ...part,
      });
      return { linePartId: newPartId };
    },
  }),
  /** Ends a part that came out of the line and was not replaced. What it cost while it was in stays. */
  endPart: change({
    note: ({ linePartId }, { db }) =>
      `Take ${nameOf(db, 'linePart', linePartId)} out of line ${nameOf(db, 'lineOfPart', linePartId)}`,
    input: z.object({ linePartId: z.string(), date: calendarDate, reason: removalReason }),
    run({ db }, { linePartId, date, reason }) {
      endPart(db, linePartId, date, reason);
      return { linePartId };
    },
  }),
  /** Takes an entry back that was made in error; what it took out of stock lies there again. */
  removePart: change({
    note: ({ linePartId }, { db }) =>
      `Take back the entry of ${nameOf(db, 'linePart', linePartId)} in line ${nameOf(db, 'lineOfPart', linePartId)}`,
    input: z.object({ linePartId: z.string() }),
    run({ db }, { linePartId }) {
      removeMovesOfPart(db, linePartId);
      removeLinePart(db, linePartId);
      return { linePartId };
    },
  }),
};

const yearlyOf = (part: { readonly price_minor: number; readonly life_years: number; readonly installedDate: string }) =>
  lastingLinePart({ ...part, from: part.installedDate, until: null });

/** What a part cost: as the grower says, else what it was taken at, as far as a price is known. */
const pricedAs = (price_minor: number | null, taken: Taken | undefined) =>
  price_minor === null
    ? { price_minor: (taken?.stock_minor ?? 0) + (taken?.priced_minor ?? 0), unpricedAmount: taken?.unpriced ?? 0 }
    : { price_minor, unpricedAmount: 0 };

/** Ends a part that is in its line. @throws Refusal when it is not; InputError on a day before it went in */
function endPart(db: FarmDb, linePartId: string, date: string, reason: string) {
  const part = linePartOfId(db, linePartId);
  if (part === undefined || part.removedDate !== null) throw new Refusal({ code: 'not-found', what: 'part' });
  if (date < part.installedDate)
    refuse('date', 'too-early', `It was put in on ${part.installedDate}: it cannot come out before.`);
  endLinePart(db, linePartId, date, reason);
  return part;
}
