import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { plantingsWithPlan } from '../../db/repositories/cost-facts.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import {
  addMaterialLot,
  addMoves,
  addStandIn,
  materialLots,
  materialsOfTheFarm,
  movesOfMaterial,
  removeStandIn,
  standIns,
  stockedMaterials,
} from '../../db/repositories/stock.ts';
import { addDays, isIsoDate } from '../../planner/calendar.ts';
import { InputError } from '../../planner/errors.ts';
import { roundMoney } from '../../planner/money.ts';
import { explainUnitCost, valueStock } from '../../planner/orders/stock-ledger.ts';
import { movementsOf, nothingCame, unpricedShareOf } from '../orders/ledger-of-material.ts';
import { change, nothing, read } from '../procedure.ts';

const isoDate = z.string().refine(isIsoDate, 'A calendar date is needed, as 2026-03-09.');
const EXPIRES_SOON_DAYS = 60;

export const stock = {
  /** What is on hand of everything that ever moved, at its average cost. */
  list: read({
    input: nothing,
    run: ({ db }) =>
      stockedMaterials(db).map((row) => {
        const value = valueStock(movementsOf(db, row.materialId), 'moving-average');
        return {
          ...row,
          onHand: row.balance,
          value_minor: value.leftValue_minor,
          unitCost_minor: value.unitCost_minor,
          below: row.balance < -1e-9,
        };
      }),
  }),
  moves: read({
    input: z.object({ materialId: z.string() }),
    run({ db }, { materialId }) {
      let balance = 0;
      return movesOfMaterial(db, materialId)
        .map((move) => {
          balance += move.amount;
          return { ...move, balance };
        })
        .toReversed();
    },
  }),
  explain: read({
    input: z.object({ materialId: z.string(), unit: z.string() }),
    run: ({ db }, { materialId, unit }) => explainUnitCost(movementsOf(db, materialId), unit),
  }),
  /** A count: the difference to the books becomes a correction with who, when and why. */
  count: change({
    note: ({ counts }, { db }) =>
      counts.length === 1
        ? `Count the stock of ${nameOf(db, 'material', counts[0]?.materialId ?? null)}`
        : `Count the stock of ${counts.length} materials`,
    input: z.object({
      date: isoDate,
      who: z.string().trim().min(1, 'Say who counted.').max(60),
      reason: z.string().trim().max(200).default('count'),
      counts: z
        .array(
          z.object({
            materialId: z.string(),
            counted: z.number().nonnegative('A count cannot be negative.'),
            unitCost_minor: z.number().nonnegative().nullable().default(null),
          }),
        )
        .min(1)
        .max(2000),
    }),
    run({ db }, { date, who, reason, counts }) {
      const balances = new Map(stockedMaterials(db).map((row) => [row.materialId, row.balance]));
      const free = materialsOfTheFarm(db);
      const rows = counts.flatMap(({ materialId, counted, unitCost_minor }) => {
        const before = balances.get(materialId);
        const amount = counted - (before ?? 0);
        if (Math.abs(amount) < 1e-9) return [];
        const unpriced =
          amount > 0 && unitCost_minor === null && !free.has(materialId) && unpricedShareOf(db, materialId, date) === 1;
        const value =
          amount > 0
            ? roundMoney(amount * (unitCost_minor ?? valueStock(movementsOf(db, materialId), 'moving-average').unitCost_minor))
            : 0;
        return [
          {
            id: newId<string>(),
            materialId,
            date,
            kind: before === undefined ? ('opening' as const) : ('correction' as const),
            amount,
            value_minor: value,
            who,
            reason: reason || 'count',
            flagged: before !== undefined,
            unpriced,
          },
        ];
      });
      addMoves(db, rows);
      return { corrected: rows.length, unpriced: rows.filter((row) => row.unpriced).length };
    },
  }),
  /** Takes something out of stock. More than is there is refused unless it is flagged as known. */
  use: change({
    note: ({ materialId }, { db }) => `Take ${nameOf(db, 'material', materialId)} from stock`,
    input: z.object({
      materialId: z.string().min(1, 'Choose a material.'),
      date: isoDate,
      amount: z.number('Enter an amount.').positive('A use is more than nothing.'),
      bedId: z.string().nullable().default(null),
      plantingId: z.string().nullable().default(null),
      lotId: z.string().nullable().default(null),
      who: z.string().max(60).default(''),
      reason: z.string().trim().max(200).default(''),
      flagged: z.boolean().default(false),
    }),
    run({ db }, { amount, flagged, ...input }) {
      const balance = stockedMaterials(db).find((row) => row.materialId === input.materialId)?.balance ?? 0;
      if (amount > balance + 1e-9 && !flagged)
        throw new InputError([
          {
            path: 'amount',
            code: 'confirm',
            message: `Only ${Number(balance.toPrecision(6))} are in the books. Take it as known and correct by a count later?`,
          },
        ]);
      const movements = movementsOf(db, input.materialId, input.date);
      const value = valueStock([...movements, { kind: 'out', amount, flagged: true }], 'moving-average').values_minor.at(-1) ?? 0;
      addMoves(db, [
        {
          ...input,
          id: newId(),
          kind: 'use',
          amount: -amount,
          value_minor: -value,
          flagged: amount > balance + 1e-9,
          unpriced: nothingCame(db, input.materialId, input.date) && !materialsOfTheFarm(db).has(input.materialId),
        },
      ]);
      return { cost_minor: value };
    },
  }),
  /** Plantings of the seasons of a day that a use may be for, by crop. */
  plantingsNear: read({
    input: z.object({ date: isoDate }),
    run: ({ db }, { date }) =>
      seasonsOfFarm(db)
        .filter((season) => season.startDate <= date && date <= season.endDate)
        .flatMap((season) => plantingsWithPlan(db, season.id))
        .map(({ plantingId, crop, number }) => ({ plantingId, crop, number }))
        .toSorted((a, b) => a.crop.localeCompare(b.crop) || a.number - b.number),
  }),
  lots: read({
    input: nothing,
    run: ({ db, today }) =>
      materialLots(db).map((lot) => ({
        ...lot,
        standing:
          lot.expiresDate === null
            ? ('no date' as const)
            : lot.expiresDate < today
              ? ('expired' as const)
              : lot.expiresDate <= addDays(today, EXPIRES_SOON_DAYS)
                ? ('soon' as const)
                : ('good' as const),
      })),
  }),
  addLot: change({
    note: ({ code, materialId }, { db }) => `Add lot ${code} of ${nameOf(db, 'material', materialId)}`,
    input: z.object({
      materialId: z.string().min(1, 'Choose a material.'),
      code: z.string().trim().min(1, 'Write the lot as it stands on the package.').max(60),
      supplierId: z.string().nullable().default(null),
      expiresDate: isoDate.nullable().default(null),
      germinationShare: z.number().min(0).max(1, 'Germination is at most 100 %.').nullable().default(null),
    }),
    run({ db }, input) {
      const lotId = newId<string>();
      addMaterialLot(db, { ...input, id: lotId });
      return { lotId };
    },
  }),
  standIns: read({ input: nothing, run: ({ db }) => standIns(db) }),
  addStandIn: change({
    note: ({ materialId, insteadId }, { db }) =>
      `Allow ${nameOf(db, 'material', insteadId)} in place of ${nameOf(db, 'material', materialId)}`,
    input: z.object({
      materialId: z.string().min(1, 'Choose a material.'),
      insteadId: z.string().min(1, 'Choose a stand-in.'),
      ratio: z.number().positive('A stand-in must do some of the work.').max(1000).default(1),
    }),
    run({ db }, input) {
      if (input.materialId === input.insteadId)
        throw new InputError([{ path: 'insteadId', code: 'same', message: 'A material cannot stand in for itself.' }]);
      removeStandIn(db, input.materialId, input.insteadId);
      addStandIn(db, { ...input, id: newId() });
      return { materialId: input.materialId };
    },
  }),
  removeStandIn: change({
    note: ({ materialId, insteadId }, { db }) =>
      `Allow no more ${nameOf(db, 'material', insteadId)} in place of ${nameOf(db, 'material', materialId)}`,
    input: z.object({ materialId: z.string(), insteadId: z.string() }),
    run({ db }, { materialId, insteadId }) {
      removeStandIn(db, materialId, insteadId);
      return { materialId };
    },
  }),
};
