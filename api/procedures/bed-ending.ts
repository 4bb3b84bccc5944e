import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { addFills, addStockMoves, latestDrops, removePartsOfBed } from '../../db/repositories/bed-history.ts';
import { bedOfId, changeBed } from '../../db/repositories/beds.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { InputError } from '../../planner/errors.ts';
import { dismantleYield } from '../../planner/soil/dismantle.ts';
import { calendarDate } from '../beds/entry.ts';
import { requireFreeCode } from '../beds/free-code.ts';
import { loadBed } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { change, read } from '../procedure.ts';

const because = z.string().trim().min(1, 'Say why it ends.').max(200);

/** @throws InputError when it would end before it was built */
function retireOne(db: FarmDb, bedId: string, date: string, reason: string): void {
  const record = bedOfId(db, bedId);
  if (record === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
  if (date < record.bed.builtDate)
    throw new InputError([
      {
        path: 'date',
        code: 'too-early',
        message: `${record.bed.code} was built on ${record.bed.builtDate}: it cannot end before.`,
      },
    ]);
  if (!changeBed(db, bedId, record.bed.revision, { retiredDate: date, retiredBecause: reason }))
    throw new Refusal({ code: 'changed-meanwhile', what: 'bed' });
}

export const bedEnding = {
  /** Takes beds out of use; their plantings, parts and costs stay in the books. */
  retire: change({
    note: ({ bedIds }, { db }) =>
      bedIds.length === 1 ? `Retire bed ${nameOf(db, 'bed', bedIds[0] ?? null)}` : `Retire ${bedIds.length} beds`,
    input: z.object({ bedIds: z.array(z.string()).min(1).max(5000), date: calendarDate, because }),
    run({ db }, { bedIds, date, because: reason }) {
      for (const bedId of bedIds) retireOne(db, bedId, date, reason);
      return { retired: bedIds.length };
    },
  }),
  restore: change({
    note: ({ bedId }, { db }) => `Take bed ${nameOf(db, 'bed', bedId)} into use again`,
    input: z.object({ bedId: z.string() }),
    run({ db }, { bedId }) {
      const record = bedOfId(db, bedId);
      if (record === undefined) throw new Refusal({ code: 'not-found', what: 'bed' });
      requireFreeCode(db, record.bed.code);
      changeBed(db, bedId, record.bed.revision, { retiredDate: null, retiredBecause: null });
      return { bedId };
    },
  }),
  /** What is to be won from a bed that is taken down, by material. */
  dismantleYield: read({
    input: z.object({ bedId: z.string(), lossShare: z.number() }),
    run({ db }, { bedId, lossShare }) {
      const bed = loadBed(db, bedId);
      if (bed.figures === null) return { lines: [], fault: bed.fault };
      const drop_m = latestDrops(db).find((drop) => drop.bedId === bedId)?.drop_m ?? 0;
      const won = dismantleYield({
        layers: bed.recipe.map((part, at) => ({
          materialId: part.materialId,
          settled_L: bed.figures?.layers[at]?.settled_L ?? 0,
          swellShare: part.swellShare ?? 0,
        })),
        sunkShare: bed.spec.fillDepth_m === 0 ? 0 : Math.min(0.9, drop_m / bed.spec.fillDepth_m),
        lossShare,
      });
      const names = new Map(bed.recipe.map((part) => [part.materialId, part.name]));
      return {
        fault: null,
        lines: [...won].map(([materialId, loose_L]) => ({
          materialId: materialId as string,
          material: names.get(materialId) ?? '',
          loose_L,
        })),
      };
    },
  }),
  /** Takes a bed down: it is retired, its parts come out, and what was won goes to stock. */
  dismantle: change({
    note: ({ bedId }, { db }) => `Take down bed ${nameOf(db, 'bed', bedId)}`,
    input: z.object({
      bedId: z.string(),
      date: calendarDate,
      because,
      lines: z
        .array(z.object({ materialId: z.string(), loose_L: z.number().nonnegative('A volume cannot be negative.').max(1e6) }))
        .max(40),
    }),
    run({ db }, { bedId, date, because: reason, lines }) {
      retireOne(db, bedId, date, reason);
      removePartsOfBed(db, bedId, date, reason);
      const won = lines.filter((line) => line.loose_L > 0);
      const code = bedOfId(db, bedId)?.bed.code ?? '';
      addFills(
        db,
        won.map((line, position) => ({
          id: newId(),
          bedId,
          date,
          kind: 'taken-out',
          position,
          materialId: line.materialId,
          loose_L: line.loose_L,
        })),
      );
      addStockMoves(
        db,
        won.map((line) => ({
          id: newId(),
          materialId: line.materialId,
          date,
          kind: 'made',
          amount: line.loose_L,
          bedId,
          reason: `Taken out of ${code}`,
        })),
      );
      return { toStock: won.length };
    },
  }),
};
