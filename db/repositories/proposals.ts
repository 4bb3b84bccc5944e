import { and, desc, eq } from 'drizzle-orm';
import type { FarmDb } from '../file/open-farm.ts';
import { proposal } from '../schema/plantings.ts';

export type ProposalRecord = typeof proposal.$inferSelect;

/** Proposals kept for a season, the latest first. */
export function proposalsOfSeason(db: FarmDb, seasonId: string): readonly ProposalRecord[] {
  return db
    .select()
    .from(proposal)
    .where(eq(proposal.seasonId, seasonId))
    .orderBy(desc(proposal.madeAt), desc(proposal.id))
    .all();
}

export function proposalOfId(db: FarmDb, proposalId: string): ProposalRecord | undefined {
  return db.select().from(proposal).where(eq(proposal.id, proposalId)).get();
}

export function addProposal(db: FarmDb, row: typeof proposal.$inferInsert): void {
  db.insert(proposal).values(row).run();
}

export function removeProposal(db: FarmDb, seasonId: string, proposalId: string): boolean {
  return (
    db
      .delete(proposal)
      .where(and(eq(proposal.id, proposalId), eq(proposal.seasonId, seasonId)))
      .run().changes === 1
  );
}
