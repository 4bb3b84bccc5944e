import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { addProposal, proposalsOfSeason, removeProposal } from '../../db/repositories/proposals.ts';
import { dateOfDay } from '../../planner/calendar.ts';
import { aims, weights } from '../../planner/season/optimise/goals.ts';
import { movesOfEffort } from '../../planner/season/optimise/optimise.ts';
import { planKey } from '../../planner/season/proposal/compare-plans.ts';
import { ruledOut } from '../../planner/season/proposal/ruled-out.ts';
import { mondayOfWeek } from '../../planner/season/proposal/week-grid.ts';
import { Refusal } from '../errors.ts';
import type { CompareData } from '../jobs/season/compare.ts';
import type { ProposeData, ProposeResult, ProposeSoFar } from '../jobs/season/propose.ts';
import { act, change, ctxOf, job, read } from '../procedure.ts';
import { acceptProposal } from '../proposal/accept-proposal.ts';
import { figureRows } from '../proposal/figure-rows.ts';
import { keptProposal, movesOf, planWithBeds, presentFigures } from '../proposal/kept-proposal.ts';
import { builtSeason, frameOfSeason, loadFarmSeason } from '../proposal/load-farm-season.ts';
import { ownFigures, rememberFigures } from '../proposal/own-figures.ts';
import { variantEntry, variantsOf } from '../proposal/variants.ts';

const seasonId = z.string().min(1, 'Choose a season.').max(80);
const proposalId = z.string().max(80);
const bedIds = z.array(z.string().max(80)).max(5000);
const goal = z.object({ aim: z.enum(aims), weight: z.enum(weights) });
const efforts = ['quick', 'good', 'thorough'] as const;

/** The plan counts as good enough within this share of the best possible. */
const GAP_GOAL = 0.005;
const PROGRAM = 'proposal 1';

export const proposals = {
  /** What a proposal would count with, and the proposals kept. */
  overview: read({
    input: z.object({ seasonId: seasonId.nullable() }),
    run(ctx, { seasonId }) {
      const given = loadFarmSeason(ctx, seasonId);
      const frame = frameOfSeason(ctx, seasonId);
      const { id, name } = given.loaded.season;
      return {
        seasonId: id,
        seasonName: name,
        own: given.own,
        crops: figureRows(given, frame),
        leftOut: [
          ...given.leftOut,
          ...frame.leftOut.map((each) => ({ ...each, name: given.loaded.shelf.crop(each.cropId).name })),
        ],
        notes: given.notes,
        wage_minor_per_h: given.farm.wage_minor_per_h,
        labour_h_per_week: Number.isFinite(given.farm.labour_h_per_week) ? given.farm.labour_h_per_week : null,
        lines: given.farm.zoneNames.map((name, zone) => {
          const most = given.farm.water_L_per_week[zone] ?? Infinity;
          return { name, most_L_per_week: Number.isFinite(most) ? most : null };
        }),
        beds: given.farm.beds.map(({ id, code, block, area_m2 }) => ({ bedId: id, code, block, area_m2 })),
        free: given.farm.plantings.filter(({ isFree }) => isFree).length,
        standing: given.farm.plantings.filter(({ isFree }) => !isFree).length,
        kept: proposalsOfSeason(ctx.db, id).map(({ id, madeAt, goal, effort, seed, result }) => ({
          proposalId: id,
          madeAt,
          goal,
          effort,
          seed,
          margin_minor: (result as ProposeResult).figures.margin_minor,
        })),
      };
    },
  }),

  /** The present plan in the figures of a proposal. */
  present: read({
    input: z.object({ seasonId: seasonId.nullable() }),
    run(ctx, { seasonId }) {
      const given = loadFarmSeason(ctx, seasonId);
      return presentFigures(given.farm, frameOfSeason(ctx, seasonId), given.farm.plantings);
    },
  }),

  setFigures: act({
    input: ownFigures,
    run(door, figures) {
      rememberFigures(ctxOf(door).farm, figures);
      return { kept: true };
    },
  }),

  propose: job({
    kind: 'season-proposal',
    input: z.object({ seasonId, goal, effort: z.enum(efforts), seed: z.int().min(0).max(1_000_000) }),
    gather(ctx, { seasonId, goal, effort, seed }): ProposeData {
      const { farm } = loadFarmSeason(ctx, seasonId);
      const built = builtSeason(ctx, seasonId);
      return { instance: built.instance, key: planKey(farm, built), goal, seed, moves: movesOfEffort[effort], gapGoal: GAP_GOAL };
    },
  }),

  compare: job({
    kind: 'season-variants',
    input: z.object({ seasonId, variants: z.array(variantEntry).min(1).max(12), seed: z.int().min(0).max(1_000_000) }),
    gather(ctx, { seasonId, variants, seed }): CompareData {
      const { farm } = loadFarmSeason(ctx, seasonId);
      const built = builtSeason(ctx, seasonId);
      return { instance: built.instance, seed, variants: variantsOf(farm, built, variants) };
    },
  }),

  /** Keeps what a job proposed, with what made it. No edit of the plan, so no step of undo. */
  keep: act({
    input: z.object({ jobId: z.string().max(40), seasonId, goal, effort: z.enum(efforts), seed: z.int() }),
    run(door, { jobId, seasonId, goal, effort, seed }) {
      const ctx = ctxOf(door);
      const { kind, state, result } = ctx.jobs.get(jobId);
      if (kind !== 'season-proposal' || (state !== 'done' && state !== 'stopped'))
        throw new Refusal({ code: 'not-found', what: 'finished proposal' });
      const proposed = planOfJob(result);
      if (proposed === null)
        throw new Refusal({ code: 'not-found', what: 'proposal' }, 'The search was stopped before it had a plan to keep.');
      const given = loadFarmSeason(ctx, seasonId);
      const { farm, loaded } = given;
      const { grid } = frameOfSeason(ctx, seasonId);
      const id = newId<string>();
      ctx.farm.unrecorded(() =>
        addProposal(ctx.db, {
          id,
          seasonId: loaded.season.id,
          madeAt: ctx.now,
          goal: `${goal.aim} ${goal.weight}`,
          seed,
          effort,
          program: PROGRAM,
          result: {
            ...proposed,
            weeks: Array.from({ length: grid.weeks }, (_, week) => dateOfDay(mondayOfWeek(grid, week))),
            zoneNames: farm.zoneNames,
            crops: farm.crops.map(({ needs, unit }) => ({ cropId: needs.cropId, name: needs.cropName, unit })),
          },
        }),
      );
      return { proposalId: id };
    },
  }),

  /** A kept proposal against the plan as it is now. */
  view: read({
    input: z.object({ proposalId }),
    run(ctx, { proposalId }) {
      const { record, result } = keptProposal(ctx.db, proposalId);
      const { farm } = loadFarmSeason(ctx, record.seasonId);
      const frame = frameOfSeason(ctx, record.seasonId);
      return {
        proposalId,
        seasonId: record.seasonId,
        madeAt: record.madeAt,
        goal: record.goal,
        effort: record.effort,
        seed: record.seed,
        result,
        moves: movesOf(farm, result.plantings),
        ruledOut: ruledOut(farm),
        /** The plan as it would be with all of it taken over now. */
        whole: presentFigures(farm, frame, planWithBeds(farm, result.plantings, new Set(farm.beds.map(({ id }) => id)))),
        present: presentFigures(farm, frame, farm.plantings),
      };
    },
  }),

  /** The plan's figures if the proposal were taken over on these beds alone. */
  figuresWith: read({
    input: z.object({ proposalId, bedIds }),
    run(ctx, { proposalId, bedIds }) {
      const { record, result } = keptProposal(ctx.db, proposalId);
      const { farm } = loadFarmSeason(ctx, record.seasonId);
      return presentFigures(farm, frameOfSeason(ctx, record.seasonId), planWithBeds(farm, result.plantings, new Set(bedIds)));
    },
  }),

  accept: change({
    note: ({ bedIds }) => (bedIds.length === 1 ? 'Accept a proposal for one bed' : `Accept a proposal for ${bedIds.length} beds`),
    input: z.object({ proposalId, bedIds: bedIds.min(1, 'Choose at least one bed.') }),
    run(ctx, { proposalId, bedIds }) {
      const { record, result } = keptProposal(ctx.db, proposalId);
      return acceptProposal(ctx, loadFarmSeason(ctx, record.seasonId), result.plantings, new Set(bedIds));
    },
  }),

  forget: act({
    input: z.object({ seasonId, proposalId }),
    run(door, { seasonId, proposalId }) {
      const ctx = ctxOf(door);
      if (!ctx.farm.unrecorded(() => removeProposal(ctx.db, seasonId, proposalId)))
        throw new Refusal({ code: 'not-found', what: 'proposal' });
      return { proposalId };
    },
  }),
} as const;

/** A finished job's plan; of one that had to be ended, the last plan it handed over. */
function planOfJob(result: unknown): ProposeResult | null {
  if (typeof result !== 'object' || result === null) return null;
  if ('plantings' in result) return result as ProposeResult;
  return 'latest' in result ? (result as ProposeSoFar).latest : null;
}
