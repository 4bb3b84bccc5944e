import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { addLinePart, endLinePart, linePartOfId, partsOfLine, removeLinePart } from '../../db/repositories/line-parts.ts';
import { partDue } from '../../planner/beds/part-life.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { refuse } from '../../planner/errors.ts';
import { calendarDate } from '../beds/entry.ts';
import { Refusal } from '../errors.ts';
import { takeFromStock } from '../orders/take-from-stock.ts';
import { change, read } from '../procedure.ts';
import { loadLine } from '../water-line/load-line.ts';

const lineId = z.string().min(1);
const entry = {
  amount: z.number('Enter an amount.').positive('An amount must be more than zero.'),
  life_years: z.number('Enter a life.').positive('A life must be more than zero.').max(100, 'At most 100 years.'),
  price_minor: z.int().nonnegative('A price cannot be negative.').nullable().default(null),
};

/** Parts of a water line that wear: in since when, for how long, and replaced when. */
export const lineParts = {
  worn: read({
    input: z.object({ lineId }),
    run: ({ db }, { lineId: id }) =>
      partsOfLine(db, id).map((part) => ({ ...part, dueDate: partDue(part.installedDate as IsoDate, part.life_years) })),
  }),
  addPart: change({
    note: 'Enter a part of a water line',
    input: z.object({ lineId, materialId: z.string().min(1, 'Choose a material.'), installedDate: calendarDate, ...entry }),
    run({ db }, { lineId: id, price_minor, ...part }) {
      const { name } = loadLine(db, id).record.line;
      const [taken] = takeFromStock(db, [{ ...part, bedId: null, reason: `Into ${name}` }], part.installedDate);
      const linePartId = newId<string>();
      addLinePart(db, {
        id: linePartId,
        lineId: id,
        price_minor: price_minor ?? (taken?.stock_minor ?? 0) + (taken?.priced_minor ?? 0),
        ...part,
      });
      return { linePartId, fromStock: taken?.fromStock ?? 0 };
    },
  }),
  replacePart: change({
    note: 'Replace a part of a water line',
    input: z.object({
      linePartId: z.string(),
      date: calendarDate,
      reason: z.string().trim().min(1, 'Say why it was replaced.').max(200),
      ...entry,
    }),
    run({ db }, { linePartId, date, reason, price_minor, ...part }) {
      const old = linePartOfId(db, linePartId);
      if (old === undefined || old.removedDate !== null) throw new Refusal({ code: 'not-found', what: 'part' });
      if (date < old.installedDate)
        refuse('date', 'too-early', `It was put in on ${old.installedDate}: it cannot come out before.`);
      endLinePart(db, linePartId, date, reason);
      const { lineId: id, materialId } = old;
      const { name } = loadLine(db, id).record.line;
      const taking = { materialId, amount: part.amount, bedId: null, reason: `Into ${name}: ${reason}` };
      const [taken] = takeFromStock(db, [taking], date);
      const newPartId = newId<string>();
      addLinePart(db, {
        id: newPartId,
        lineId: id,
        materialId,
        installedDate: date,
        price_minor: price_minor ?? (taken?.stock_minor ?? 0) + (taken?.priced_minor ?? 0),
        ...part,
      });
      return { linePartId: newPartId };
    },
  }),
  /** Takes a part out of the list that is no longer in the line and was not replaced, or was entered in error. */
  removePart: change({
    note: 'Take a part off a water line',
    input: z.object({ linePartId: z.string() }),
    run({ db }, { linePartId }) {
      removeLinePart(db, linePartId);
      return { linePartId };
    },
  }),
};
