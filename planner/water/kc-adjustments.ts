import { refuse, requireRange } from '../errors.ts';

export type AirOverCrop = {
  readonly wind2m_m_per_s: number;
  readonly rhmin_share: number;
  readonly height_m: number;
};

const hold = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/**
 * What wind and dry air add to a tabulated coefficient.
 *
 *   [0.04 (u2 - 2) - 0.004 (RHmin - 45)] (h/3)^0.3
 *
 *   u2      wind at 2 m, held to 1 to 6            m/s
 *   RHmin   least humidity, held to 20 to 80       %
 *   h       height of the crop, held to 0.1 to 10  m
 *
 * Source: FAO-56 eq. 62, 65; checked with Example 27 and Boxes 14 and 15.
 */
export function airTerm({ wind2m_m_per_s, rhmin_share, height_m }: AirOverCrop): number {
  const u2 = hold(wind2m_m_per_s, 1, 6);
  const rh = hold(rhmin_share * 100, 20, 80);
  return (0.04 * (u2 - 2) - 0.004 * (rh - 45)) * (hold(height_m, 0.1, 10) / 3) ** 0.3;
}

/** A coefficient of the middle stage in the air of the place. Source: FAO-56 eq. 62. */
export function adjustedKc(kcTable: number, air: AirOverCrop): number {
  requireRange('kcTable', kcTable, 0, 2.5, '');
  requireRange('rhmin_share', air.rhmin_share, 0, 1, '');
  requireRange('height_m', air.height_m, 0, 100, 'm');
  return kcTable + airTerm(air);
}

/** Kc end in the air of the place: below 0.45 the crop dries off and the value stays as it is. Source: FAO-56 eq. 65. */
export const adjustedKcEnd = (kcEndTable: number, air: AirOverCrop): number =>
  kcEndTable < 0.45 ? kcEndTable : adjustedKc(kcEndTable, air);

/** Depths of a light and a heavy wetting. Source: FAO-56 eq. 59. */
const LIGHT_MM = 10;
const HEAVY_MM = 40;

export type InitialStageInput = {
  /** Depth of one wetting over the whole bed. */
  readonly wetting_mm: number;
  readonly kcLight: number;
  readonly kcHeavy: number;
  /** Share of the surface that is wetted: 1 rain or basin, 0.3 to 0.4 drip. */
  readonly wettedShare: number;
};

/**
 * Kc of the initial stage between light and heavy wettings, and where only a part of the surface is wetted.
 *
 *   I_w = I/fw;   Kc = light + (I_w - 10)/(40 - 10) (heavy - light);   Kc of the bed = fw Kc
 *
 * Source: FAO-56 eq. 59 to 61; checked with Examples 25 and 26.
 * @throws InputError naming the field
 */
export function initialKc({ wetting_mm, kcLight, kcHeavy, wettedShare }: InitialStageInput): {
  readonly wettedPart_mm: number;
  readonly kcWetted: number;
  readonly kcBed: number;
} {
  requireRange('wetting_mm', wetting_mm, 0, 1000, 'mm');
  requireRange('wettedShare', wettedShare, 0.01, 1, '');
  const wettedPart_mm = wetting_mm / wettedShare;
  const along = hold((wettedPart_mm - LIGHT_MM) / (HEAVY_MM - LIGHT_MM), 0, 1);
  const kcWetted = kcLight + along * (kcHeavy - kcLight);
  return { wettedPart_mm, kcWetted, kcBed: wettedShare * kcWetted };
}

/** Share by which plastic over the whole bed lowers Kc mid and Kc end, where the crop has no figure of its own. Source: FAO-56 Table 25, 10 to 30 %. */
export const PLASTIC_REDUCTION = 0.2;
/** Kc of the initial stage under plastic with drip. Source: FAO-56 chapter 10. */
export const PLASTIC_KC_INI = 0.1;

/** A coefficient under plastic mulch. Source: FAO-56 Table 25; checked with Example 45. */
export function underPlastic(kc: number, reductionShare: number): number {
  requireRange('reductionShare', reductionShare, 0, 0.5, '');
  return kc * (1 - reductionShare);
}

/** Share by which an organic mulch lowers evaporation: 5 % for each 10 % of the surface covered. Source: FAO-56 chapter 10. */
export function organicReduction(coverShare: number): number {
  requireRange('coverShare', coverShare, 0, 1, '');
  return 0.5 * coverShare;
}

/**
 * A coefficient under organic mulch: the part that is evaporation, `Kc - Kcb`, falls. In the initial stage nearly all is
 * evaporation: give Kcb 0 there.
 * Source: FAO-56 chapter 10.
 */
export const underOrganic = (kc: number, kcb: number, coverShare: number): number =>
  kc - organicReduction(coverShare) * Math.max(0, kc - kcb);

/**
 * Reference evapotranspiration under shade cloth: sunlight is cut by the shade share, the wind's part stays, so about three
 * quarters of the share is felt. Common practice, no source.
 */
export function underShade_mm_per_day(eto_mm_per_day: number, shadeShare: number): number {
  requireRange('shadeShare', shadeShare, 0, 0.95, '');
  return eto_mm_per_day * (1 - 0.75 * shadeShare);
}

/**
 * One coefficient for crops that grow in one bed: each weighs with its share of the ground and its height.
 *
 *   Kc = sum(f h Kc) / sum(f h)
 *
 * Source: FAO-56 eq. 104; checked with Example 46.
 * @throws InputError when nothing grows
 */
export function mixedKc(crops: readonly { readonly share: number; readonly height_m: number; readonly kc: number }[]): number {
  const weight = crops.reduce((sum, { share, height_m }) => sum + share * height_m, 0);
  if (weight <= 0) refuse('crops', 'too-small', 'At least one crop with a share and a height is needed.');
  return crops.reduce((sum, { share, height_m, kc }) => sum + share * height_m * kc, 0) / weight;
}
