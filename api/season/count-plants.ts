import { outlineOfBed } from '../../planner/beds/bed-spec.ts';
import type { Spacing } from '../../planner/beds/plant-count.ts';
import { refuse } from '../../planner/errors.ts';
import { plantsOnSpan } from '../../planner/season/plants-on-span.ts';
import type { LoadedBed } from '../beds/load-beds.ts';
import type { SpanEntry } from './planting-entry.ts';

export type SpacingEntry = {
  readonly layout: 'square' | 'staggered' | 'rows';
  readonly inRow_m: number;
  readonly row_m: number;
  readonly margin_m: number | null;
};

export const spacingOf = ({ layout, inRow_m, row_m }: SpacingEntry): Spacing =>
  layout === 'rows' ? { pattern: 'rows', rowSpacing_m: row_m, inRow_m } : { pattern: layout, spacing_m: inRow_m };

export type CountedSpan = SpanEntry & { readonly plants: number; readonly area_m2: number };

/** An oval or crooked bed takes a second to count; the same bed with the same spacing is asked for again and again. */
const counted = new Map<string, number>();
const MOST_KEPT = 2000;

function keep(key: string, plants: number): void {
  if (counted.size >= MOST_KEPT) counted.clear();
  counted.set(key, plants);
}

/** Exact plants of each piece of bed. Equal beds are counted once. @throws InputError at the bed */
export function countPlants(
  beds: readonly LoadedBed[],
  spans: readonly SpanEntry[],
  spacing: SpacingEntry,
): readonly CountedSpan[] {
  const byId = new Map(beds.map((each) => [each.bed.id, each]));
  return spans.map((span, at) => {
    const bed = byId.get(span.bedId) ?? refuse(`spans.${at}`, 'no-such-bed', 'This bed is no longer there.');
    if (bed.figures === null) refuse(`spans.${at}`, 'no-such-bed', `${bed.bed.code}: ${bed.fault ?? 'its measures do not fit.'}`);
    if (span.toShare <= span.fromShare)
      refuse(`spans.${at}`, 'bad-share', `${bed.bed.code}: the piece must end after it begins.`);
    const outline = outlineOfBed(bed.spec);
    const key = JSON.stringify([outline, span.fromShare, span.toShare, spacingOf(spacing), spacing.margin_m]);
    const margin = spacing.margin_m === null ? {} : { edgeMargin_m: spacing.margin_m };
    const plants =
      counted.get(key) ??
      plantsOnSpan({ outline, fromShare: span.fromShare, toShare: span.toShare, spacing: spacingOf(spacing), ...margin });
    keep(key, plants);
    return { ...span, plants, area_m2: (bed.figures?.area_m2 ?? 0) * (span.toShare - span.fromShare) };
  });
}
