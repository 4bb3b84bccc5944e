import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { addBedPlan, bedPlans as plansOfFarm, removeBedPlan } from '../../db/repositories/bed-plans.ts';
import { designOfId } from '../../db/repositories/designs.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { calendarDate } from '../beds/entry.ts';
import { Refusal } from '../errors.ts';
import { change, nothing, read } from '../procedure.ts';

/** Beds that are to be built: their parts, fill and mulch are among the needs of Orders until they are. */
export const bedPlans = {
  plans: read({
    input: nothing,
    run: ({ db }) =>
      plansOfFarm(db).map(({ plan, design }) => ({
        bedPlanId: plan.id,
        designId: plan.designId,
        design: design.name,
        count: plan.count,
        wantedDate: plan.wantedDate,
        note: plan.note,
      })),
  }),
  addPlan: change({
    note: ({ count }) => (count === 1 ? 'Plan to build one bed' : `Plan to build ${count} beds`),
    input: z.object({
      designId: z.string().min(1, 'Choose a design.'),
      count: z.int('Write how many beds.').min(1, 'Plan at least one bed.').max(2000, 'At most 2000 beds at once.'),
      wantedDate: calendarDate,
      note: z.string().trim().max(200).default(''),
    }),
    run({ db }, input) {
      if (designOfId(db, input.designId) === undefined) throw new Refusal({ code: 'not-found', what: 'design' });
      const bedPlanId = newId<string>();
      addBedPlan(db, { ...input, id: bedPlanId });
      return { bedPlanId };
    },
  }),
  removePlan: change({
    note: ({ bedPlanId }, { db }) => `Plan no more beds of ${nameOf(db, 'bedPlan', bedPlanId)}`,
    input: z.object({ bedPlanId: z.string() }),
    run({ db }, { bedPlanId }) {
      removeBedPlan(db, bedPlanId);
      return { bedPlanId };
    },
  }),
};
