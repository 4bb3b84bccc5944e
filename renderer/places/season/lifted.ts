import { addDays, type IsoDate } from '../../../planner/calendar.ts';
import { checkPlan } from '../../../planner/season/check-plan.ts';
import type { Finding, Plan, PlanPlanting, PlanSpan } from '../../../planner/season/plan.ts';

/** A planting taken up from the board, by hand or by key, before it is put down again. */
export type Lifted = {
  readonly plantingId: string;
  readonly how: 'move' | 'start' | 'end';
  readonly days: number;
  /** The bed it is held over; the one it came from while it has not left it. */
  readonly bedId: string | null;
  readonly fromBedId: string | null;
  readonly asCopy: boolean;
};

/** Where it would stand: the piece it was held by goes to the new bed, its other pieces stay. */
export function liftedSpans(planting: PlanPlanting, lifted: Lifted): readonly PlanSpan[] {
  if (lifted.bedId === null || lifted.bedId === lifted.fromBedId) return planting.spans;
  const to = lifted.bedId;
  if (planting.spans.length === 0)
    return [{ bedId: to, fromShare: 0, toShare: 1, plants: planting.spans[0]?.plants ?? 0, mostPlants: null }];
  return planting.spans.map((span) => (span.bedId === lifted.fromBedId ? { ...span, bedId: to, mostPlants: null } : span));
}

/** The planting as it would be; null when the pull has turned it inside out. */
export function liftedPlanting(planting: PlanPlanting, lifted: Lifted): PlanPlanting | null {
  const { days, how } = lifted;
  const by = (date: IsoDate): IsoDate => addDays(date, days);
  const spans = liftedSpans(planting, lifted);
  const sow = planting.sow === null ? null : by(planting.sow);
  if (how === 'move')
    return {
      ...planting,
      spans,
      sow,
      inBed: by(planting.inBed),
      firstHarvest: by(planting.firstHarvest),
      lastHarvest: by(planting.lastHarvest),
      free: by(planting.free),
    };
  if (how === 'end') {
    const next = { ...planting, lastHarvest: by(planting.lastHarvest), free: by(planting.free) };
    return next.lastHarvest < next.firstHarvest ? null : next;
  }
  const next = { ...planting, sow, inBed: by(planting.inBed) };
  return next.inBed >= next.firstHarvest ? null : next;
}

/** Id under which a copy is drawn and checked before it is made. */
export const COPY_ID = 'copy';

/** The plan with the lifted planting where it is held. */
export function planWith(plantings: readonly PlanPlanting[], lifted: Lifted): readonly PlanPlanting[] {
  const planting = plantings.find((each) => each.id === lifted.plantingId);
  const next = planting === undefined ? null : liftedPlanting(planting, lifted);
  if (next === null) return plantings;
  return lifted.asCopy
    ? [...plantings, { ...next, id: COPY_ID }]
    : plantings.map((each) => (each.id === lifted.plantingId ? next : each));
}

/** What stands against the lifted planting where it is held: only the beds it touches are looked at. */
export function findingsOfLifted(plan: Plan, lifted: Lifted): readonly Finding[] {
  const id = lifted.asCopy ? COPY_ID : lifted.plantingId;
  const next = plan.plantings.find((each) => each.id === id);
  if (next === undefined) return [];
  const beds = new Set(next.spans.map((span) => span.bedId));
  const near = plan.plantings.filter((each) => each.spans.some((span) => beds.has(span.bedId)) || each.id === id);
  return checkPlan({
    beds: plan.beds.filter((bed) => beds.has(bed.id)),
    plantings: near.map((each) => onlyIn(each, beds)),
    rules: plan.rules,
  }).filter((finding) => finding.plantingId === id || finding.otherId === id);
}

/** A neighbour that also stands elsewhere is looked at only where the two may meet. */
const onlyIn = (planting: PlanPlanting, beds: ReadonlySet<string>): PlanPlanting => ({
  ...planting,
  spans: planting.spans.filter((span) => beds.has(span.bedId)),
});

const weights = { clash: 3, barred: 2, risk: 1, note: 0 } as const;

/** The weightiest finding of each planting, for its mark on the board. */
export function worstByPlanting(findings: readonly Finding[]): ReadonlyMap<string, Finding> {
  const worst = new Map<string, Finding>();
  const put = (id: string, finding: Finding) => {
    const present = worst.get(id);
    if (present === undefined || weights[finding.weight] > weights[present.weight]) worst.set(id, finding);
  };
  for (const finding of findings) {
    put(finding.plantingId, finding);
    if (finding.code === 'overlap' && finding.otherId !== null) put(finding.otherId, finding);
  }
  return worst;
}

/** Beds whose lines change while it is held: where it stood and where it is held over. */
export function bedsOfLifted(plantings: ReadonlyMap<string, PlanPlanting>, lifted: Lifted): ReadonlySet<string> {
  const beds = new Set((plantings.get(lifted.plantingId)?.spans ?? []).map((span) => span.bedId));
  if (lifted.bedId !== null) beds.add(lifted.bedId);
  return beds;
}
