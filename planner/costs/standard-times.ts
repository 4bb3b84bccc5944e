/** How long a task usually takes: minutes for each m2 of ground, and for each kg (or unit) harvested. */
export type StandardTime = {
  readonly task: string;
  readonly min_per_m2: number;
  readonly min_per_unit: number;
  readonly own: boolean;
};

/** Where the farm has logged nothing of a task. Common practice, no source: small beds worked by hand. */
const usual: readonly StandardTime[] = [
  { task: 'sow', min_per_m2: 6, min_per_unit: 0, own: false },
  { task: 'set out', min_per_m2: 7, min_per_unit: 0, own: false },
  { task: 'weed', min_per_m2: 4, min_per_unit: 0, own: false },
  { task: 'harvest', min_per_m2: 0, min_per_unit: 3, own: false },
  { task: 'clear', min_per_m2: 3, min_per_unit: 0, own: false },
];

export type LoggedTime = {
  readonly task: string;
  readonly labour_min: number;
  readonly area_m2: number;
  readonly harvested: number;
};

/**
 * The farm's own standard times: the median over its plantings, by ground, and for the harvest by amount. Tasks that were never logged
 * take the usual ones.
 * Common practice, no source.
 */
export function standardTimes(logged: readonly LoggedTime[]): readonly StandardTime[] {
  const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
  return usual.map((known) => {
    const own = logged.filter((each) => each.task === known.task);
    const rates =
      known.task === 'harvest'
        ? own.flatMap((each) => (each.harvested > 0 ? [each.labour_min / each.harvested] : []))
        : own.flatMap((each) => (each.area_m2 > 0 ? [each.labour_min / each.area_m2] : []));
    if (rates.length === 0) return known;
    return known.task === 'harvest'
      ? { ...known, min_per_unit: median(rates), own: true }
      : { ...known, min_per_m2: median(rates), own: true };
  });
}

/** Tasks of a planting that nobody logged, with their standard time. A direct sowing is not set out, and the other way round. */
export function missingTimes(
  planting: { readonly direct: boolean; readonly area_m2: number; readonly harvested: number; readonly cleared: boolean },
  logged: ReadonlySet<string>,
  times: readonly StandardTime[],
): readonly { readonly task: string; readonly labour_min: number }[] {
  return times.flatMap((time) => {
    if (logged.has(time.task)) return [];
    if (time.task === (planting.direct ? 'set out' : 'sow')) return [];
    if (time.task === 'clear' && !planting.cleared) return [];
    const minutes = time.min_per_m2 * planting.area_m2 + time.min_per_unit * planting.harvested;
    return minutes > 0 ? [{ task: time.task, labour_min: Math.max(1, Math.round(minutes)) }] : [];
  });
}
