import { yearOf } from '../calendar.ts';
import type { Finding, FindingCode, PlanBed, PlanPlanting, PlanSpan, Weight } from './plan.ts';
import { gapOfFamily_years, mayReturn } from './rotation.ts';

const cm = (depth_m: number): string => `${Math.round(depth_m * 100)} cm`;

/** What one bed says to one planting on a span of it. */
export function bedFindings(
  planting: PlanPlanting,
  span: PlanSpan,
  bed: PlanBed | undefined,
  gapYears: ReadonlyMap<string, number>,
): readonly Finding[] {
  const found: Finding[] = [];
  const { crop } = planting;
  const say = (code: FindingCode, weight: Weight, message: string) =>
    found.push({
      code,
      weight,
      plantingId: planting.id,
      otherId: null,
      bedId: span.bedId,
      from: planting.inBed,
      to: planting.free,
      message,
    });
  if (!(span.fromShare >= 0 && span.toShare <= 1 + 1e-9 && span.toShare - span.fromShare > 1e-9))
    say('bad-share', 'clash', 'The piece of the bed must lie between its two ends and have a length.');
  if (span.mostPlants !== null && span.plants > span.mostPlants)
    say('too-many-plants', 'clash', `${span.plants} plants are more than the ${span.mostPlants} that fit with this spacing.`);
  if (bed === undefined) {
    say('no-such-bed', 'clash', 'This bed is no longer there.');
    return found;
  }
  if ((bed.built !== null && planting.inBed < bed.built) || (bed.retired !== null && planting.free > bed.retired))
    say('no-such-bed', 'clash', `${bed.code} does not stand for the whole of this time.`);
  if (crop.soilDepth_m !== null && bed.soilDepth_m + 1e-9 < crop.soilDepth_m)
    say(
      'shallow-soil',
      'barred',
      `${bed.code} has ${cm(bed.soilDepth_m)} of soil; ${crop.cropName} wants ${cm(crop.soilDepth_m)}.`,
    );
  if (crop.needsTrellis && !bed.hasTrellis)
    say('no-trellis', 'barred', `${crop.cropName} climbs and ${bed.code} has no support.`);
  if (bed.sun === 'shade' || (bed.sun === 'light-shade' && !crop.bearsShade))
    say(
      'too-little-sun',
      bed.sun === 'shade' ? 'barred' : 'risk',
      `${bed.code} lies in ${bed.sun === 'shade' ? 'shade' : 'light shade'}; ${crop.cropName} wants ${crop.bearsShade ? 'light shade at most' : 'full sun'}.`,
    );
  const lastYear = bed.lastYearOf[crop.family] ?? null;
  const gap = gapOfFamily_years(crop.family, gapYears);
  if (!mayReturn(yearOf(planting.inBed), lastYear, gap))
    say(
      'rotation-years',
      'barred',
      `${crop.family} stood in ${bed.code} in ${lastYear}; it may come back in ${(lastYear ?? 0) + gap}.`,
    );
  return found;
}
