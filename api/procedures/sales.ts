import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { lotBalances } from '../../db/repositories/harvests.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import {
  addPrices,
  addSale,
  outletsOfFarm,
  priceFor,
  priceList,
  removeSaleLines,
  saleLog,
  salesOnDay,
  setPrice,
  soldBetween,
  standingOrders,
} from '../../db/repositories/sales.ts';
import { addDays, type IsoDate, isIsoDate, mondayOf } from '../../planner/calendar.ts';
import { lotFaults } from '../../planner/costs/harvest-check.ts';
import { type Fault, InputError } from '../../planner/errors.ts';
import { roundMoney } from '../../planner/money.ts';
import { change, nothing, read } from '../procedure.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-07-09.');
const MOST_LINES = 5000;

const line = z.object({
  lotId: z.string().nullable(),
  plantingId: z.string().nullable(),
  amount: z.number('Enter an amount.').refine((value) => value !== 0, 'An amount is more than nothing; a refund is below zero.'),
  unit: z.string().trim().min(1, 'Choose a unit.').max(60),
  price_minor: z.int('Money is kept in whole minor units.').nonnegative('A price cannot be negative.').nullable(),
  grade: z.string().default('first'),
  outcome: z.enum(['sold', 'unsold', 'spoiled', 'given']).default('sold'),
});

export const sales = {
  log: read({
    input: z.object({ from: isoDate, to: isoDate }),
    run: ({ db }, { from, to }) => saleLog(db, from, to, MOST_LINES),
  }),
  outlets: read({ input: nothing, run: ({ db }) => outletsOfFarm(db).filter((each) => !each.retired) }),
  add: change({
    note: ({ outletId, lines }, { db }) =>
      lines.length === 1
        ? `Enter a sale of one lot to ${nameOf(db, 'outlet', outletId)}`
        : `Enter a sale of ${lines.length} lots to ${nameOf(db, 'outlet', outletId)}`,
    input: z.object({
      date: isoDate,
      outletId: z.string().min(1, 'Choose an outlet.'),
      buyer: z.string().max(200).default(''),
      documentNumber: z.string().max(60).default(''),
      note: z.string().max(500).default(''),
      lines: z.array(line).min(1, 'A sale needs a line.').max(500),
    }),
    run({ db }, input) {
      const lotIds = [...new Set(input.lines.flatMap((each) => (each.lotId === null ? [] : [each.lotId])))];
      const lots = new Map(lotBalances(db, { lotIds }).map((lot) => [lot.lotId, lot]));
      const taken = new Map<string, number>();
      const faults: Fault[] = [];
      const rows = input.lines.map((each, at) => {
        const lot = each.lotId === null ? undefined : lots.get(each.lotId);
        if (each.lotId !== null && lot === undefined)
          faults.push({ path: `lines.${at}.lotId`, code: 'not-found', message: 'This lot is not there.' });
        if (lot !== undefined && lot.unit !== each.unit)
          faults.push({ path: `lines.${at}.unit`, code: 'other-unit', message: `Lot ${lot.code} was harvested in ${lot.unit}.` });
        if (lot !== undefined && lot.unit === each.unit) {
          const left = lot.harvested - lot.gone - (taken.get(lot.lotId) ?? 0);
          faults.push(...lotFaults(`lines.${at}.amount`, lot.code, each.amount, left, lot.unit));
          taken.set(lot.lotId, (taken.get(lot.lotId) ?? 0) + each.amount);
          if (input.date < lot.date)
            faults.push({
              path: 'date',
              code: 'too-early',
              message: `Lot ${lot.code} was harvested on ${lot.date}: it cannot be sold before.`,
            });
        }
        const listed =
          lot === undefined
            ? null
            : priceFor(db, {
                outletId: input.outletId,
                cropId: lot.cropId,
                unit: each.unit,
                grade: each.grade,
                date: input.date,
              });
        const price_minor = each.price_minor ?? listed ?? 0;
        if (each.price_minor === null && listed === null && each.outcome === 'sold')
          faults.push({
            path: `lines.${at}.price_minor`,
            code: 'missing',
            message: 'This outlet has no price for it: enter one.',
          });
        return {
          id: newId<string>(),
          lotId: each.lotId,
          plantingId: each.plantingId ?? lot?.plantingId ?? null,
          amount: each.amount,
          unit: each.unit,
          price_minor,
          paid_minor: each.outcome === 'sold' ? roundMoney(each.amount * price_minor) : 0,
          outcome: each.outcome,
        };
      });
      if (faults.length > 0) throw new InputError(faults);
      const saleId = newId<string>();
      const documentNumber = input.documentNumber || `S-${input.date.replaceAll('-', '')}-${salesOnDay(db, input.date) + 1}`;
      const { lines: _, ...head } = input;
      addSale(
        db,
        { ...head, documentNumber, id: saleId },
        rows.map((row) => ({ ...row, saleId })),
      );
      return { saleId, paid_minor: rows.reduce((sum, row) => sum + row.paid_minor, 0) };
    },
  }),
  removeLines: change({
    note: ({ saleLineIds }) =>
      saleLineIds.length === 1 ? 'Take a sale line away' : `Take ${saleLineIds.length} sale lines away`,
    input: z.object({ saleLineIds: z.array(z.string()).min(1).max(5000) }),
    run({ db }, { saleLineIds }) {
      removeSaleLines(db, saleLineIds);
      return { removed: saleLineIds.length };
    },
  }),
  prices: read({ input: nothing, run: ({ db }) => priceList(db) }),
  setPrices: change({
    note: ({ edits }) => (edits.length === 1 ? 'Change a sale price' : `Change ${edits.length} sale prices`),
    input: z.object({
      edits: z
        .array(z.object({ priceId: z.string(), price_minor: z.int().nonnegative('A price cannot be negative.') }))
        .min(1)
        .max(5000),
    }),
    run({ db }, { edits }) {
      for (const { priceId, price_minor } of edits) setPrice(db, priceId, price_minor);
      return { changed: edits.length };
    },
  }),
  addPrice: change({
    note: ({ cropId, outletId }, { db }) => `Add a price of ${nameOf(db, 'crop', cropId)} at ${nameOf(db, 'outlet', outletId)}`,
    input: z.object({
      outletId: z.string().min(1, 'Choose an outlet.'),
      cropId: z.string().min(1, 'Choose a crop.'),
      unit: z.string().trim().min(1, 'Name the unit.').max(60),
      grade: z.string().trim().min(1).max(40).default('first'),
      price_minor: z.int().nonnegative('A price cannot be negative.'),
      fromDate: isoDate,
    }),
    run({ db }, input) {
      const same = priceList(db).some(
        (each) =>
          each.outletId === input.outletId &&
          each.cropId === input.cropId &&
          each.unit === input.unit &&
          each.grade === input.grade &&
          each.fromDate === input.fromDate,
      );
      if (same)
        throw new InputError([
          { path: 'fromDate', code: 'twice', message: 'This outlet has a price for it from that day: change it in the list.' },
        ]);
      const priceId = newId<string>();
      addPrices(db, [{ ...input, id: priceId }]);
      return { priceId };
    },
  }),
  /** Standing orders of the week, with what of each was sold already and the lots that could fill the rest. */
  standing: read({
    input: z.object({ date: isoDate }),
    run({ db }, { date }) {
      const monday = mondayOf(date as IsoDate);
      const lots = lotBalances(db, { since: addDays(date as IsoDate, -21) }).filter((lot) => lot.date <= date);
      const sold = soldBetween(db, monday, addDays(monday, 6));
      return standingOrders(db, date).map((order) => {
        const fitting = lots.filter((lot) => lot.cropId === order.cropId && lot.unit === order.unit && lot.harvested > lot.gone);
        const filled =
          sold.find((each) => each.outletId === order.outletId && each.cropId === order.cropId && each.unit === order.unit)
            ?.amount ?? 0;
        return {
          ...order,
          filled,
          open: Math.max(0, order.amountPerWeek - filled),
          onHand: fitting.reduce((sum, lot) => sum + lot.harvested - lot.gone, 0),
          lots: fitting.map((lot) => ({ ...lot, left: lot.harvested - lot.gone })),
        };
      });
    },
  }),
};
