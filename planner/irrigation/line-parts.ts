import type { LinePlan } from './line-plan.ts';

/** What to buy for a line: a kind of part, its size, how much. Tube in metres, all else by the piece. */
export type LinePart = {
  readonly what: 'tube' | 'tee' | 'adapter' | 'valve' | 'clamp' | 'bulkhead' | 'strainer' | 'vent' | 'plug' | 'pump';
  /** Inside diameter of the tube the part sits on; null where it has none. */
  readonly size_m: number | null;
  /** The narrower side of an adapter or reducing tee. */
  readonly toSize_m: number | null;
  readonly materialId: string | null;
  readonly amount: number;
  readonly unit: 'm' | 'count';
  readonly why: string;
};

/**
 * Parts of a line from its drawing: tube by bore, a tee where the tube divides, an adapter where bores change, a valve at
 * each bed, a clamp at each end of each run, one bulkhead, strainer and (for a pumped reservoir) vent.
 * Common practice, no source.
 */
export function lineParts(plan: LinePlan): readonly LinePart[] {
  const parts = new Map<string, LinePart>();
  const add = (part: LinePart) => {
    const key = `${part.what} ${part.size_m} ${part.toSize_m} ${part.materialId}`;
    parts.set(key, { ...part, amount: (parts.get(key)?.amount ?? 0) + part.amount });
  };
  const piece = (what: LinePart['what'], size_m: number | null, why: string, toSize_m: number | null = null) =>
    add({ what, size_m, toSize_m, materialId: null, amount: 1, unit: 'count', why });
  const feeding = new Map(plan.runs.map((run) => [run.toNodeId, run]));
  const leaving = new Map<string, (typeof plan.runs)[number][]>();
  for (const run of plan.runs) leaving.set(run.fromNodeId, [...(leaving.get(run.fromNodeId) ?? []), run]);
  const withOutlet = new Set(plan.outlets.map((outlet) => outlet.nodeId));

  for (const run of plan.runs) {
    add({
      what: 'tube',
      size_m: run.insideDiameter_m,
      toSize_m: null,
      materialId: run.materialId,
      amount: run.length_m,
      unit: 'm',
      why: 'all runs of this bore',
    });
    add({
      what: 'clamp',
      size_m: run.insideDiameter_m,
      toSize_m: null,
      materialId: null,
      amount: 2,
      unit: 'count',
      why: 'one at each end of each run',
    });
  }
  for (const node of plan.nodes) {
    const into = feeding.get(node.id);
    const out = leaving.get(node.id) ?? [];
    if (into === undefined) continue;
    const narrowest = out.reduce((least, run) => Math.min(least, run.insideDiameter_m), into.insideDiameter_m);
    const changes = out.some((run) => run.insideDiameter_m !== into.insideDiameter_m);
    if (out.length >= 2) piece('tee', into.insideDiameter_m, 'where the tube divides', changes ? narrowest : null);
    else if (out.length === 1 && changes) piece('adapter', into.insideDiameter_m, 'where bores change', narrowest);
    else if (out.length === 0 && !withOutlet.has(node.id)) piece('plug', into.insideDiameter_m, 'ends without an outlet');
  }
  for (const outlet of plan.outlets) if (outlet.kind !== 'hand') piece('valve', outlet.bore_m, 'one at each bed');
  const first = plan.runs.find((run) => !feeding.has(run.fromNodeId))?.insideDiameter_m ?? null;
  if (plan.supply.supply === 'reservoir') {
    piece('bulkhead', first, 'where the tube leaves the reservoir');
    piece('strainer', first, 'before the pump or the first valve');
    if (plan.pump !== null) piece('vent', first, 'against siphoning, above the highest water');
  }
  if (plan.pump !== null)
    add({
      what: 'pump',
      size_m: null,
      toSize_m: null,
      materialId: null,
      amount: plan.pump.count,
      unit: 'count',
      why: 'as entered',
    });
  return [...parts.values()];
}
