import { yearOf } from '../../calendar.ts';
import { gapOfFamily_years, mayReturn } from '../rotation.ts';
import type { FarmSeason } from './farm-season.ts';

/** How many beds of a farm a crop cannot stand in, and why; a bed may be ruled out by several. */
export type RuledOut = {
  readonly cropId: string;
  readonly beds: number;
  readonly fit: number;
  readonly tooShallow: number;
  readonly tooDark: number;
  readonly noSupport: number;
  readonly resting: number;
};

/** For each crop what rules beds out: depth of soil, sun, a support, or the years its family must rest. */
export function ruledOut(farm: FarmSeason): readonly RuledOut[] {
  const year = yearOf(farm.rules.start);
  const gaps = new Map(Object.entries(farm.rules.gapYears));
  return farm.crops.map(({ needs }): RuledOut => {
    const gap = gapOfFamily_years(needs.family, gaps);
    const marks = farm.beds.map((bed) => ({
      tooShallow: needs.soilDepth_m !== null && bed.soilDepth_m + 1e-9 < needs.soilDepth_m,
      tooDark: bed.sun === 'shade' || (bed.sun === 'light-shade' && !needs.bearsShade),
      noSupport: needs.needsTrellis && !bed.hasTrellis,
      resting: !mayReturn(year, bed.lastYearOf[needs.family] ?? null, gap),
    }));
    const count = (pick: (mark: (typeof marks)[number]) => boolean) => marks.filter(pick).length;
    return {
      cropId: needs.cropId,
      beds: marks.length,
      fit: count((mark) => !(mark.tooShallow || mark.tooDark || mark.noSupport || mark.resting)),
      tooShallow: count(({ tooShallow }) => tooShallow),
      tooDark: count(({ tooDark }) => tooDark),
      noSupport: count(({ noSupport }) => noSupport),
      resting: count(({ resting }) => resting),
    };
  });
}
