import { dayOfYear, daysBetween, type IsoDate } from '../calendar.ts';
import { type CropOnBed, stagesFor } from './bed-year.ts';
import type { CropWater } from './crop-water.ts';
import {
  type AirOverCrop,
  adjustedKc,
  adjustedKcEnd,
  organicReduction,
  PLASTIC_KC_INI,
  PLASTIC_REDUCTION,
  underOrganic,
  underPlastic,
} from './kc-adjustments.ts';

export type Mulch = 'none' | 'organic' | 'plastic';

export type PlantedSpan = {
  readonly inBedDate: IsoDate;
  readonly clearDate: IsoDate;
  readonly share: number;
  /** Ground that the plants of this span are given; wider than the bed for a wide-set plant in a small container. */
  readonly canopy_m2: number | null;
  readonly crop: CropWater;
};

export type SpanAround = {
  readonly area_m2: number;
  readonly mulch: Mulch;
  /** Mean wind and least humidity of the growing months; null leaves the coefficients as printed. */
  readonly air: Omit<AirOverCrop, 'height_m'> | null;
};

/** Canopy at most this much wider than its share of the bed. Common practice, no source. */
const WIDEST = 2;

/**
 * A planting on a bed as the daily loop wants it: its stages brought to its real dates, coefficients to the air of the place and
 * to the mulch, the canopy to the room its plants are given.
 * Source: FAO-56 eq. 62, 65, 66 and chapter 10.
 */
export function cropOnBed(span: PlantedSpan, around: SpanAround): CropOnBed {
  const { crop } = span;
  const air = around.air === null ? null : { ...around.air, height_m: crop.height_m };
  const kcMid = air === null ? crop.kcMid : adjustedKc(crop.kcMid, air);
  const kcEnd = air === null ? crop.kcEnd : adjustedKcEnd(crop.kcEnd, air);
  const mulched = underMulch(around.mulch, { kcIni: crop.kcIni, kcMid, kcEnd, evaporation: crop.kcMid - crop.kcbMid });
  const days = Math.max(1, daysBetween(span.inBedDate, span.clearDate));
  const from = dayOfYear(span.inBedDate);
  const own_m2 = span.share * around.area_m2;
  return {
    from,
    to: from + days - 1,
    curve: stagesFor({ stages_days: crop.stages_days, ...mulched }, days),
    share: span.share,
    canopyFactor: span.canopy_m2 === null || own_m2 <= 0 ? 1 : Math.min(WIDEST, Math.max(1, span.canopy_m2 / own_m2)),
    rootDepth_m: crop.rootDepth_m,
    p: crop.p,
  };
}

function underMulch(
  mulch: Mulch,
  kc: { readonly kcIni: number; readonly kcMid: number; readonly kcEnd: number; readonly evaporation: number },
) {
  switch (mulch) {
    case 'none':
      return { kcIni: kc.kcIni, kcMid: kc.kcMid, kcEnd: kc.kcEnd };
    case 'organic':
      return {
        kcIni: underOrganic(kc.kcIni, 0, 1),
        kcMid: underOrganic(kc.kcMid, kc.kcMid - kc.evaporation, 1),
        kcEnd: underOrganic(kc.kcEnd, kc.kcEnd - kc.evaporation, 1),
      };
    case 'plastic':
      return {
        kcIni: PLASTIC_KC_INI,
        kcMid: underPlastic(kc.kcMid, PLASTIC_REDUCTION),
        kcEnd: underPlastic(kc.kcEnd, PLASTIC_REDUCTION),
      };
  }
}

/** Share by which a mulch lowers evaporation from ground without a crop. Source: FAO-56 chapter 10; plastic common practice. */
export function bareReductionOf(mulch: Mulch): number {
  if (mulch === 'organic') return organicReduction(1);
  return mulch === 'plastic' ? 0.8 : 0;
}
