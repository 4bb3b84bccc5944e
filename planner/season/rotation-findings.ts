import type { Finding, PlanBed, PlanPlanting, PlanRules, PlanSpan } from './plan.ts';
import { gapOfFamily_years } from './rotation.ts';

/**
 * A family that comes twice into the same piece of a bed in one season: the years between are 0, so any gap above 0 bars
 * it, except cuts of one crop where the grower allows them. Families with a gap of 0 are free.
 */
export function inSeasonRotation(
  plantings: readonly PlanPlanting[],
  beds: ReadonlyMap<string, PlanBed>,
  rules: PlanRules,
): readonly Finding[] {
  const gaps = new Map(Object.entries(rules.gapYears));
  const seen = new Map<string, { readonly planting: PlanPlanting; readonly span: PlanSpan }[]>();
  const found: Finding[] = [];
  const inOrder = [...plantings].sort((a, b) => (a.inBed < b.inBed ? -1 : a.inBed > b.inBed ? 1 : a.id < b.id ? -1 : 1));
  for (const planting of inOrder) {
    const { family, cropId } = planting.crop;
    if (gapOfFamily_years(family, gaps) === 0) continue;
    for (const span of planting.spans) {
      const key = `${span.bedId} ${family}`;
      const before = seen.get(key) ?? [];
      const earlier = before.find(
        (each) =>
          each.planting.id !== planting.id &&
          Math.min(each.span.toShare, span.toShare) - Math.max(each.span.fromShare, span.fromShare) > 1e-9 &&
          each.planting.free <= planting.inBed &&
          !(rules.mayRepeatCrop && each.planting.crop.cropId === cropId),
      );
      if (earlier !== undefined)
        found.push({
          code: 'rotation-season',
          weight: 'barred',
          plantingId: planting.id,
          otherId: earlier.planting.id,
          bedId: span.bedId,
          from: planting.inBed,
          to: planting.free,
          message: `${family} already stands in ${beds.get(span.bedId)?.code ?? 'this bed'} this season (${earlier.planting.crop.cropName}).`,
        });
      before.push({ planting, span });
      seen.set(key, before);
    }
  }
  return found;
}
