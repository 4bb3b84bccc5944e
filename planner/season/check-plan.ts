import { dateOfDay, dayNumber, yearOf } from '../calendar.ts';
import { bedFindings } from './bed-findings.ts';
import { frostFindings } from './frost-findings.ts';
import { clashesOf, type Stay } from './occupancy.ts';
import type { Finding, Plan, PlanPlanting } from './plan.ts';
import { inSeasonRotation } from './rotation-findings.ts';

/**
 * Everything about a plan that can't be done, breaks a rule or may go wrong. The one checker for the board and for any
 * proposal: a plan is accepted when it has no finding of weight `clash` or `barred` ({@link isAccepted}).
 *
 * Rules: half-open days and shares may not overlap in a bed; dates in order and inside the season; the bed exists, is deep
 * and sunny enough and has a support; the exact layout holds the plants; the family has rested its years, also
 * within the season; frost by class. Sorted by planting, then by bed, then by code.
 * Source: rules of planting (see each part); the checker itself by definition.
 */
export function checkPlan({ beds, plantings, rules }: Plan): readonly Finding[] {
  const bedById = new Map(beds.map((bed) => [bed.id, bed]));
  const gapYears = new Map(Object.entries(rules.gapYears));
  const findings: Finding[] = [];
  const stays: Stay[] = [];
  for (const planting of plantings) {
    findings.push(...dateFindings(planting, rules.start, rules.end), ...frostFindings(planting, bedById, rules));
    for (const span of planting.spans) {
      const bed = bedById.get(span.bedId);
      findings.push(...bedFindings(planting, span, bed, gapYears));
      if (bed !== undefined) stays.push(stayOf(planting, span.bedId, span.fromShare, span.toShare));
    }
  }
  const byId = new Map(plantings.map((planting) => [planting.id, planting]));
  for (const clash of clashesOf(stays)) {
    const first = byId.get(clash.first);
    const bed = bedById.get(clash.bedId);
    findings.push({
      code: 'overlap',
      weight: 'clash',
      plantingId: clash.second,
      otherId: clash.first,
      bedId: clash.bedId,
      from: dateOfDay(clash.from_day),
      to: dateOfDay(clash.to_day),
      message: `${bed?.code ?? ''}: ${first?.crop.cropName ?? ''} stands until ${first?.free ?? ''}, ${byId.get(clash.second)?.crop.cropName ?? ''} comes on ${dateOfDay(clash.from_day)}.`,
    });
  }
  findings.push(...inSeasonRotation(plantings, bedById, rules));
  return findings.sort(inOrder);
}

/** True when nothing in the plan clashes or is barred; risks and notes are the grower's to weigh. */
export const isAccepted = (findings: readonly Finding[]): boolean =>
  findings.every((finding) => finding.weight === 'risk' || finding.weight === 'note');

/** What a planting takes of a bed, in day numbers. */
export const stayOf = (planting: PlanPlanting, bedId: string, fromShare: number, toShare: number): Stay => ({
  plantingId: planting.id,
  bedId,
  fromShare,
  toShare,
  from_day: dayNumber(planting.inBed),
  to_day: dayNumber(planting.free),
});

/** The season's year for rotation: that of the day the planting goes into the bed. */
export const plantingYear = (planting: PlanPlanting): number => yearOf(planting.inBed);

const inOrder = (a: Finding, b: Finding): number =>
  compare(a.plantingId, b.plantingId) || compare(a.bedId ?? '', b.bedId ?? '') || compare(a.code, b.code);

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function dateFindings(planting: PlanPlanting, start: string, end: string): Finding[] {
  const { inBed, firstHarvest, lastHarvest, free, sow } = planting;
  const found: Finding[] = [];
  const say = (code: Finding['code'], weight: Finding['weight'], message: string) =>
    found.push({ code, weight, plantingId: planting.id, otherId: null, bedId: null, from: inBed, to: free, message });
  if ((sow !== null && sow > inBed) || inBed > firstHarvest || firstHarvest > lastHarvest || lastHarvest > free || inBed >= free)
    say('dates-out-of-order', 'clash', 'The dates are out of order: sow, in the bed, first harvest, last harvest, free.');
  if (inBed < start || inBed >= end)
    say('outside-season', 'clash', `It goes into the bed on ${inBed}, outside the season of ${start} to ${end}.`);
  if (planting.spans.length === 0) say('unplaced', 'note', 'It has no bed yet.');
  return found;
}
