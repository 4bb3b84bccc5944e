import { asc, eq } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { bedPlan, design } from '../schema/beds.ts';

/** Beds that are to be built, the earliest wanted first. */
export function bedPlans(db: FarmDb) {
  return db
    .select({ plan: bedPlan, design })
    .from(bedPlan)
    .innerJoin(design, eq(design.id, bedPlan.designId))
    .orderBy(asc(bedPlan.wantedDate), asc(bedPlan.id))
    .all();
}

export function addBedPlan(db: FarmDb, row: typeof bedPlan.$inferInsert): void {
  db.insert(bedPlan).values(row).run();
}

export function removeBedPlan(db: FarmDb, bedPlanId: string): void {
  db.delete(bedPlan).where(eq(bedPlan.id, bedPlanId)).run();
}

/** Takes beds that were built off the plans of their design, the earliest first. Answers how many were taken off. */
export function takeOffBedPlans(db: FarmDb, designId: string, built: number): number {
  let left = built;
  for (const { plan } of bedPlans(db)) {
    if (plan.designId !== designId || left === 0) continue;
    const taken = Math.min(left, plan.count);
    left -= taken;
    if (taken === plan.count) removeBedPlan(db, plan.id);
    else
      db.update(bedPlan)
        .set({ count: plan.count - taken })
        .where(eq(bedPlan.id, plan.id))
        .run();
  }
  return built - left;
}
