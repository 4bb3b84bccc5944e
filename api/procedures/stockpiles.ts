import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import {
  addStockMoves,
  addStockpile,
  removeStockpile,
  stockBalances,
  stockpilesOfFarm,
} from '../../db/repositories/bed-history.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { heapVolume_m3 } from '../../planner/soil/stockpile.ts';
import { convert } from '../../planner/units/convert.ts';
import { heapOfStockpile } from '../beds/stockpile-heap.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';

const size = z.number('A size is needed here.').positive('A size must be more than zero.').max(200, 'At most 200 m.');

export const stockpiles = {
  /** Heaps of soil and fill, with their loose volume by shape. */
  list: read({
    input: nothing,
    run: ({ db }) =>
      stockpilesOfFarm(db).map((row) => ({ ...row, loose_L: convert(heapVolume_m3(heapOfStockpile(row)), 'm3', 'L') })),
  }),
  add: change({
    note: ({ name }) => `Measure heap ${name}`,
    input: z.object({
      name: z.string().trim().min(1, 'A heap needs a name.').max(80),
      materialId: z.string().min(1, 'Choose a material.'),
      shape: z.enum(['cone', 'half-ellipsoid', 'windrow']),
      length_m: size,
      width_m: size,
      height_m: size,
    }),
    run({ db, today }, heap) {
      heapVolume_m3(heapOfStockpile(heap));
      const id = newId();
      addStockpile(db, { id, measuredDate: today, ...heap });
      return { stockpileId: id };
    },
  }),
  remove: change({
    note: ({ stockpileId }, { db }) => `Strike out heap ${nameOf(db, 'heap', stockpileId)}`,
    input: z.object({ stockpileId: z.string() }),
    run({ db }, { stockpileId }) {
      removeStockpile(db, stockpileId);
      return { stockpileId };
    },
  }),
  /** Sets the stock of a material to what its heaps hold, as a correction with its reason. */
  countAsStock: change({
    note: ({ materialId }, { db }) => `Count the heaps of ${nameOf(db, 'material', materialId)} as stock`,
    input: z.object({ materialId: z.string() }),
    run({ db, today }, { materialId }) {
      const heaps = stockpilesOfFarm(db).filter((row) => row.materialId === materialId);
      if (heaps.length === 0) throw new Refusal({ code: 'not-found', what: 'heap' });
      const measured_L = heaps.reduce((sum, row) => sum + convert(heapVolume_m3(heapOfStockpile(row)), 'm3', 'L'), 0);
      const amount = measured_L - (stockBalances(db).get(materialId) ?? 0);
      addStockMoves(db, [
        {
          id: newId(),
          materialId,
          date: today,
          kind: 'correction',
          amount,
          reason: `Measured: ${heaps.map((row) => row.name).join(', ')}`,
        },
      ]);
      return { corrected_L: amount };
    },
  }),
};
