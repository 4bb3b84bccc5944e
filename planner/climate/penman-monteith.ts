import { requireRange } from '../errors.ts';
import { computed, entry, source, type Working } from '../working.ts';
import {
  clearSky_MJ_per_m2,
  GRASS_ALBEDO,
  MM_PER_MJ_PER_M2,
  netLongwave_MJ_per_m2,
  netShortwave_MJ_per_m2,
} from './radiation.ts';
import { airPressure_kPa, meanSaturation_kPa, psychrometric_kPa_per_K, saturationSlope_kPa_per_K } from './vapour.ts';
import { LEAST_WIND_M_PER_S } from './wind.ts';

export type PenmanMonteithInput = {
  readonly tmax_C: number;
  readonly tmin_C: number;
  readonly vapour_kPa: number;
  readonly wind2m_m_per_s: number;
  readonly sunlight_MJ_per_m2: number;
  readonly extraterrestrial_MJ_per_m2: number;
  readonly elevation_m: number;
  /** Heat into the soil; 0 for a day. */
  readonly soilHeat_MJ_per_m2?: number;
};

/** Every quantity on the way to the answer, as the published examples print them. */
export type PenmanMonteithSteps = {
  readonly pressure_kPa: number;
  readonly psychrometric_kPa_per_K: number;
  readonly slope_kPa_per_K: number;
  readonly saturation_kPa: number;
  readonly deficit_kPa: number;
  readonly clearSky_MJ_per_m2: number;
  readonly netShortwave_MJ_per_m2: number;
  readonly netLongwave_MJ_per_m2: number;
  readonly net_MJ_per_m2: number;
  readonly radiationTerm_mm_per_day: number;
  readonly windTerm_mm_per_day: number;
  readonly eto_mm_per_day: number;
};

/**
 * Reference evapotranspiration: water used by a wide, well-watered sward of short grass.
 *
 *   ETo = [0.408 D (Rn - G) + g 900/(T + 273) u2 (es - ea)] / [D + g (1 + 0.34 u2)]
 *
 *   D    slope of the saturation curve at the mean temperature   kPa/C
 *   Rn   net radiation                                           MJ m-2 d-1
 *   G    heat into the soil                                      MJ m-2 d-1   0 for a day
 *   g    psychrometric constant                                  kPa/C
 *   T    (Tmax + Tmin)/2                                         C
 *   u2   wind at 2 m, not below 0.5                              m/s
 *   es, ea   mean saturation and actual vapour pressure          kPa
 *
 * Not below 0: dew is not counted. Source: FAO-56 eq. 6; checked with Examples 17, 18 and 20 and every printed step.
 * @throws InputError naming the field
 */
export function penmanMonteith(input: PenmanMonteithInput): PenmanMonteithSteps {
  requireRange('tmax_C', input.tmax_C, -90, 60, 'C');
  requireRange('tmin_C', input.tmin_C, -90, input.tmax_C, 'C');
  requireRange('vapour_kPa', input.vapour_kPa, 0, 20, 'kPa');
  requireRange('sunlight_MJ_per_m2', input.sunlight_MJ_per_m2, 0, 50, 'MJ/m2');
  const { tmax_C, tmin_C } = input;
  const mean_C = (tmax_C + tmin_C) / 2;
  const u2 = Math.max(LEAST_WIND_M_PER_S, input.wind2m_m_per_s);
  const pressure_kPa = airPressure_kPa(input.elevation_m);
  const g = psychrometric_kPa_per_K(pressure_kPa);
  const slope = saturationSlope_kPa_per_K(mean_C);
  const saturation_kPa = meanSaturation_kPa(tmax_C, tmin_C);
  const deficit_kPa = saturation_kPa - input.vapour_kPa;
  const clear = clearSky_MJ_per_m2(input.extraterrestrial_MJ_per_m2, input.elevation_m);
  const short = netShortwave_MJ_per_m2(input.sunlight_MJ_per_m2, GRASS_ALBEDO);
  const long = netLongwave_MJ_per_m2({
    tmax_C,
    tmin_C,
    vapour_kPa: input.vapour_kPa,
    sunlight_MJ_per_m2: input.sunlight_MJ_per_m2,
    clearSky_MJ_per_m2: clear,
  });
  const net = short - long;
  const under = slope + g * (1 + 0.34 * u2);
  const radiationTerm_mm_per_day = (MM_PER_MJ_PER_M2 * slope * (net - (input.soilHeat_MJ_per_m2 ?? 0))) / under;
  const windTerm_mm_per_day = (((g * 900) / (mean_C + 273)) * u2 * deficit_kPa) / under;
  return {
    pressure_kPa,
    psychrometric_kPa_per_K: g,
    slope_kPa_per_K: slope,
    saturation_kPa,
    deficit_kPa,
    clearSky_MJ_per_m2: clear,
    netShortwave_MJ_per_m2: short,
    netLongwave_MJ_per_m2: long,
    net_MJ_per_m2: net,
    radiationTerm_mm_per_day,
    windTerm_mm_per_day,
    eto_mm_per_day: Math.max(0, radiationTerm_mm_per_day + windTerm_mm_per_day),
  };
}

const by = (value: number): string => value.toPrecision(4);

/** How {@link penmanMonteith} came to its figure. */
export function explainPenmanMonteith(input: PenmanMonteithInput, notes: readonly string[] = []): Working {
  const s = penmanMonteith(input);
  const sun = source('FAO Irrigation and Drainage Paper 56, eq. 21');
  return {
    title: 'Reference evapotranspiration',
    formula: 'ETo = [0.408 Δ (Rn − G) + γ 900/(T + 273) u₂ (es − ea)] / [Δ + γ (1 + 0.34 u₂)]',
    symbols: [
      {
        symbol: 'Tmax',
        name: 'highest temperature of the day',
        figure: { value: input.tmax_C, unit: 'C' },
        origin: entry('the weather record'),
      },
      {
        symbol: 'Tmin',
        name: 'lowest temperature of the day',
        figure: { value: input.tmin_C, unit: 'C' },
        origin: entry('the weather record'),
      },
      {
        symbol: 'u₂',
        name: 'wind 2 m above the ground',
        figure: { value: Math.max(LEAST_WIND_M_PER_S, input.wind2m_m_per_s), unit: 'm_per_s' },
        origin: computed('the weather record, FAO-56 eq. 47'),
      },
      { symbol: 'ea', name: 'vapour pressure of the air', figure: { value: input.vapour_kPa, unit: 'kPa' }, origin: computed() },
      {
        symbol: 'es',
        name: 'mean saturation vapour pressure',
        figure: { value: s.saturation_kPa, unit: 'kPa' },
        origin: source('FAO-56 eq. 12'),
      },
      {
        symbol: 'Ra',
        name: 'sunlight above the air',
        figure: { value: input.extraterrestrial_MJ_per_m2, unit: 'MJ_per_m2' },
        origin: sun,
      },
      {
        symbol: 'Rs',
        name: 'sunlight at the ground',
        figure: { value: input.sunlight_MJ_per_m2, unit: 'MJ_per_m2' },
        origin: computed(),
      },
      {
        symbol: 'Rn',
        name: 'net radiation',
        figure: { value: s.net_MJ_per_m2, unit: 'MJ_per_m2' },
        origin: source('FAO-56 eq. 38 to 40'),
      },
      {
        symbol: 'Δ',
        name: 'slope of the saturation curve, kPa/°C',
        figure: { value: s.slope_kPa_per_K, unit: '' },
        origin: source('FAO-56 eq. 13'),
      },
      {
        symbol: 'γ',
        name: 'psychrometric constant, kPa/°C',
        figure: { value: s.psychrometric_kPa_per_K, unit: '' },
        origin: source('FAO-56 eq. 8'),
      },
    ],
    steps: [
      {
        text: 'from sunlight',
        figures: `0.408 × ${by(s.slope_kPa_per_K)} × ${by(s.net_MJ_per_m2)} / (…)`,
        result: { value: s.radiationTerm_mm_per_day, unit: 'mm_per_day' },
      },
      {
        text: 'from wind and dry air',
        figures: `${by(s.psychrometric_kPa_per_K)} × 900/(T + 273) × u₂ × ${by(s.deficit_kPa)} / (…)`,
        result: { value: s.windTerm_mm_per_day, unit: 'mm_per_day' },
      },
    ],
    result: { value: s.eto_mm_per_day, unit: 'mm_per_day' },
    sources: ['FAO Irrigation and Drainage Paper 56 (1998), eq. 6'],
    notes: [...notes],
  };
}
