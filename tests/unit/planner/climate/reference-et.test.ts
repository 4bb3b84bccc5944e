import { describe, expect, test } from 'vitest';
import { hargreaves_mm_per_day } from '../../../../planner/climate/hargreaves.ts';
import { penmanMonteith } from '../../../../planner/climate/penman-monteith.ts';
import {
  islandSunlight_MJ_per_m2,
  netLongwave_MJ_per_m2,
  soilHeat_MJ_per_m2,
  soilHeatSoFar_MJ_per_m2,
  sunlightFromRange_MJ_per_m2,
  sunlightFromSunshine_MJ_per_m2,
  vapourFromMinimum_kPa,
} from '../../../../planner/climate/radiation.ts';
import { explainReferenceEt, referenceEt } from '../../../../planner/climate/reference-et.ts';
import { decimalDegrees, extraterrestrial_MJ_per_m2 } from '../../../../planner/climate/sun.ts';
import {
  leastHumidity_share,
  saturation_kPa,
  vapourFromMeanHumidity_kPa,
  vapourFromPsychrometer_kPa,
} from '../../../../planner/climate/vapour.ts';
import type { StationPlace } from '../../../../planner/climate/weather-day.ts';
import { windAt2m_m_per_s } from '../../../../planner/climate/wind.ts';
import { aWeatherDay } from '../../../builders/a-weather-day.ts';
import { asRead } from '../../../builders/as-read.ts';

// FAO-56 Example 18, Brussels: 50.8 N, 100 m, 6 July, 21.5 and 12.3 C, humidity 84 and 63 %, 2.78 m/s at 10 m, 22.07 MJ/m2
const brussels: StationPlace = { latitude_deg: 50.8, elevation_m: 100, windHeight_m: 10, krs: 0.16 };
const july = aWeatherDay('2023-07-06', {
  tmax_C: 21.5,
  tmin_C: 12.3,
  rhmax_share: 0.84,
  rhmin_share: 0.63,
  wind_m_per_s: 2.78,
  radiation_MJ_per_m2: 22.07,
});
const bare = aWeatherDay('2023-07-06', { tmax_C: 21.5, tmin_C: 12.3 });
const known = (day: typeof july, place = brussels) => {
  const answer = referenceEt(day, place);
  if (answer.state !== 'known') throw new Error('the day has temperatures');
  return answer;
};
const symbols = (day: typeof july, place = brussels) =>
  Object.fromEntries((explainReferenceEt(day, place)?.symbols ?? []).map(({ symbol, figure }) => [symbol, figure.value]));

describe('reference evapotranspiration', () => {
  test('FAO-56 Example 18: 3.88 mm, nothing assumed', () => {
    const answer = known(july);
    expect(answer.eto_mm_per_day).toBeCloseTo(3.88, 1);
    expect([answer.method, answer.assumed]).toEqual(['penman-monteith', []]);
  });
  test('its working shows every quantity of the example as printed: ea 1.409, es 1.997, Ra 41.09, Rn 13.28, 0.122, 0.0666', () => {
    const working = explainReferenceEt(july, brussels);
    if (working === null) throw new Error('the day has temperatures');
    const shown = symbols(july);
    expect(Object.keys(shown)).toEqual(['Tmax', 'Tmin', 'u₂', 'ea', 'es', 'Ra', 'Rs', 'Rn', 'Δ', 'γ']);
    for (const [symbol, printed, digits] of [
      ['Tmax', 21.5, 9],
      ['Tmin', 12.3, 9],
      ['u₂', 2.078, 2],
      ['ea', 1.409, 3],
      ['es', 1.997, 3],
      ['Ra', 41.09, 1],
      ['Rs', 22.07, 9],
      ['Rn', 13.28, 1],
      ['Δ', 0.122, 3],
      ['γ', 0.0666, 4],
    ] as const)
      expect(shown[symbol], symbol).toBeCloseTo(printed, digits);
    expect(working.symbols.map((each) => `${each.figure.unit} ${each.origin.kind}`)).toEqual([
      'C entry',
      'C entry',
      'm_per_s computed',
      'kPa computed',
      'kPa source',
      'MJ_per_m2 source',
      'MJ_per_m2 computed',
      'MJ_per_m2 source',
      ' source',
      ' source',
    ]);
    const lines = asRead(working);
    expect(lines.at(-1)).toBe(`result ${Number(known(july).eto_mm_per_day.toPrecision(6))} mm_per_day, notes 0`);
    expect(working.steps.map((step) => step.figures)).toEqual([
      '0.408 × 0.1221 × 13.28 / (…)',
      '0.06658 × 900/(T + 273) × u₂ × 0.5889 / (…)',
    ]);
    const [sun = Number.NaN, wind = Number.NaN] = working.steps.map((step) => step.result.value);
    expect(sun + wind).toBeCloseTo(known(july).eto_mm_per_day, 12);
    expect(working.steps.every((step) => step.result.unit === 'mm_per_day')).toBe(true);
  });
  test('temperatures alone are reckoned by Hargreaves, shown with sunlight as a depth of water', () => {
    const ra = extraterrestrial_MJ_per_m2(50.8, 187);
    expect(known(bare)).toEqual({
      state: 'known',
      eto_mm_per_day: hargreaves_mm_per_day({ tmax_C: 21.5, tmin_C: 12.3, extraterrestrial_MJ_per_m2: ra }),
      method: 'temperatures-only',
      assumed: [],
    });
    const working = explainReferenceEt(bare, brussels);
    if (working === null) throw new Error('the day has temperatures');
    expect(asRead(working)).toEqual([
      'Tmax = 21.5 C (entry)',
      'Tmin = 12.3 C (entry)',
      `Ra = ${Number(ra.toPrecision(6))} MJ_per_m2 (source)`,
      `0.408 × 41.09 -> ${Number((0.408 * ra).toPrecision(6))} mm_per_day`,
      `result ${Number(known(bare).eto_mm_per_day.toPrecision(6))} mm_per_day, notes 1`,
    ]);
  });
  test('any one further measurement is used, and the others are said to be assumed', () => {
    const of = (over: Parameters<typeof aWeatherDay>[1]) => known({ ...bare, ...over }).assumed;
    expect(of({ dewPoint_C: 10 })).toEqual(['radiation-from-range', 'wind-usual']);
    expect(of({ rhmax_share: 0.9 })).toEqual(['radiation-from-range', 'wind-usual']);
    expect(of({ radiation_MJ_per_m2: 20 })).toEqual(['humidity-from-minimum', 'wind-usual']);
    expect(of({ wind_m_per_s: 3 })).toEqual(['humidity-from-minimum', 'radiation-from-range']);
    // the least humidity without the greatest says nothing
    expect(known({ ...bare, rhmin_share: 0.5 }).method).toBe('temperatures-only');
    const working = explainReferenceEt({ ...bare, wind_m_per_s: 3 }, brussels);
    expect(working?.notes).toHaveLength(2);
  });
  test('the vapour of the air: dew point first, then both humidities, then the greatest, then the night’s minimum', () => {
    const ea = (over: Parameters<typeof aWeatherDay>[1], place = brussels) =>
      symbols({ ...bare, wind_m_per_s: 2, ...over }, place)['ea'];
    const both = { rhmax_share: 0.84, rhmin_share: 0.63 };
    expect(ea({ ...both, dewPoint_C: 10 })).toBe(saturation_kPa(10));
    expect(ea(both)).toBeCloseTo(1.409, 3);
    expect(ea({ rhmax_share: 0.84 })).toBe(saturation_kPa(12.3) * 0.84);
    expect(ea({})).toBe(saturation_kPa(12.3));
    expect(ea({}, { ...brussels, dry: true })).toBe(saturation_kPa(10.3));
  });
  test('wind is brought to 2 m, taken as 2 m/s where unknown; sunlight from the range never beyond a clear sky', () => {
    const dew = { ...bare, dewPoint_C: 10 };
    expect(symbols(dew)['u₂']).toBe(2);
    expect(symbols({ ...dew, wind_m_per_s: 3 })['u₂']).toBe(windAt2m_m_per_s(3, 10));
    expect(symbols({ ...dew, wind_m_per_s: 0.1 })['u₂']).toBe(0.5);
    const ra = extraterrestrial_MJ_per_m2(50.8, 187);
    expect(symbols(dew)['Rs']).toBeCloseTo(0.16 * Math.sqrt(9.2) * ra, 9);
    expect(symbols({ ...dew, tmax_C: 45 })['Rs']).toBeCloseTo((0.75 + 2e-5 * 100) * ra, 9);
  });
  test('without temperatures, or with the night above the day, there is no figure', () => {
    for (const over of [{ tmax_C: null }, { tmin_C: null }, { tmin_C: 21.6 }]) {
      expect(referenceEt({ ...july, ...over }, brussels)).toEqual({ state: 'no-temperature' });
      expect(explainReferenceEt({ ...july, ...over }, brussels)).toBeNull();
    }
    expect(known({ ...july, tmin_C: 21.5 }).method).toBe('penman-monteith');
  });
  test('dew is not counted; heat into the soil is taken off', () => {
    const cold = { tmax_C: 0, tmin_C: -2, vapour_kPa: 0.6, wind2m_m_per_s: 1, sunlight_MJ_per_m2: 3, elevation_m: 0 };
    expect(penmanMonteith({ ...cold, extraterrestrial_MJ_per_m2: 4 }).eto_mm_per_day).toBe(0);
    const warm = { ...cold, tmax_C: 25, tmin_C: 15, vapour_kPa: 1.4, sunlight_MJ_per_m2: 20, extraterrestrial_MJ_per_m2: 40 };
    const whole = penmanMonteith(warm);
    expect(penmanMonteith({ ...warm, soilHeat_MJ_per_m2: 0 })).toEqual(whole);
    const less = penmanMonteith({ ...warm, soilHeat_MJ_per_m2: whole.net_MJ_per_m2 });
    expect(less.radiationTerm_mm_per_day).toBeCloseTo(0, 12);
    expect(hargreaves_mm_per_day({ tmax_C: -30, tmin_C: -40, extraterrestrial_MJ_per_m2: 10 })).toBe(0);
    // a mean measured on its own goes before that of the extremes
    const hot = { tmax_C: 25, tmin_C: 16, extraterrestrial_MJ_per_m2: 40 };
    expect(hargreaves_mm_per_day({ ...hot, tmean_C: 22.2 })).toBeCloseTo(0.0023 * 40 * 3 * 0.408 * 40, 9);
  });
});

describe('the parts of it', () => {
  test('sunshine beyond the day counts as the day; a polar night has none', () => {
    const of = (sunshine_h: number, daylight_h: number) =>
      sunlightFromSunshine_MJ_per_m2({ sunshine_h, daylight_h, extraterrestrial_MJ_per_m2: 40 });
    expect([of(0, 10), of(5, 10), of(12, 10), of(0, 0), of(1, 0)]).toEqual([10, 20, 30, 10, 10]);
  });
  test('an island’s sunlight, a range of nothing, and the heat of a month by its neighbours (FAO-56 eq. 43, 44, 51)', () => {
    expect(islandSunlight_MJ_per_m2(30)).toBeCloseTo(17, 12);
    expect(islandSunlight_MJ_per_m2(4)).toBe(0);
    expect(sunlightFromRange_MJ_per_m2({ tmax_C: 5, tmin_C: 6, krs: 0.16, extraterrestrial_MJ_per_m2: 30 })).toBe(0);
    // Example 13: March 14.1, April 16.1, May 18.8 C: 0.33 and 0.28 MJ/m2
    expect(soilHeat_MJ_per_m2(14.1, 18.8)).toBeCloseTo(0.33, 2);
    expect(soilHeatSoFar_MJ_per_m2(14.1, 16.1)).toBeCloseTo(0.28, 9);
    expect([vapourFromMinimum_kPa(10, false), vapourFromMinimum_kPa(10, true)]).toEqual([saturation_kPa(10), saturation_kPa(8)]);
  });
  test('warmth to the sky: a clear sky is the most that counts, and in polar night cloud is unknown', () => {
    const input = { tmax_C: 25, tmin_C: 19, vapour_kPa: 2.1, sunlight_MJ_per_m2: 20, clearSky_MJ_per_m2: 20 };
    const clear = netLongwave_MJ_per_m2(input);
    expect(netLongwave_MJ_per_m2({ ...input, sunlight_MJ_per_m2: 25 })).toBe(clear);
    expect(netLongwave_MJ_per_m2({ ...input, clearSky_MJ_per_m2: 0, sunlight_MJ_per_m2: 0 })).toBe(clear);
    expect(netLongwave_MJ_per_m2({ ...input, sunlight_MJ_per_m2: 10 })).toBeCloseTo(clear * (1.35 / 2 - 0.35), 9);
    expect(netLongwave_MJ_per_m2({ ...input, vapour_kPa: -1 })).toBe(netLongwave_MJ_per_m2({ ...input, vapour_kPa: 0 }));
  });
  test('a dry wet bulb gives no less than no vapour; a mean humidity; the least humidity is never above one', () => {
    const dry = { dry_C: 50, wet_C: 5, pressure_kPa: 101, coefficient_per_K: 0.000662 };
    expect(vapourFromPsychrometer_kPa(dry)).toBe(0);
    expect(vapourFromPsychrometer_kPa({ ...dry, dry_C: 20, wet_C: 20 })).toBe(saturation_kPa(20));
    expect(vapourFromMeanHumidity_kPa({ tmax_C: 20, tmin_C: 20, rhmean_share: 0.5 })).toBeCloseTo(saturation_kPa(20) / 2, 12);
    expect(leastHumidity_share(25, 20)).toBe(1);
  });
  test('a meter at 2 m reads as it stands; minutes go with their degrees, also south of nothing', () => {
    expect(windAt2m_m_per_s(3, 2)).toBe(3);
    expect([decimalDegrees(13, 30), decimalDegrees(-22, 54), decimalDegrees(-0, 30), decimalDegrees(0, 30)]).toEqual([
      13.5, -22.9, -0.5, 0.5,
    ]);
  });
});
