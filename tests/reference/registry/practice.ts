import { heightHolding_m } from '../../../planner/beds/volume.ts';
import { yearlyShare_minor } from '../../../planner/costs/depreciation.ts';
import { basinRing_L, freeboard_m, minutesForBasins } from '../../../planner/irrigation/basin-fill.ts';
import { loadEnergy_Wh, runEnergy_Wh, seasonEnergy_Wh } from '../../../planner/irrigation/power-use.ts';
import { wholeRuns } from '../../../planner/irrigation/reservoir.ts';
import { bucketsForBeds, filledShare } from '../../../planner/soil/buckets.ts';
import { convert } from '../../../planner/units/convert.ts';
import { areaUse_L_per_day, containerDays } from '../../../planner/water/container-water.ts';
import { centsOf, usdOf } from '../case-units.ts';
import { forEachOfList } from '../for-each-of-list.ts';
import type { Registry } from '../registry.ts';

/** Taller than any bag, so that a bag's nominal volume always finds its height. */
const TALL_M = 20;

/** Facts of the trade that the program must agree with; common practice, no source. */
export const practiceFacts: Registry = {
  'practice.pr-bag-height': forEachOfList((i) => ({
    fill_height_in: convert(
      heightHolding_m(
        {
          solid: 'straight',
          outline: { shape: 'round', diameter_m: convert(i['diameter_in'] as number, 'in', 'm') },
          depth_m: TALL_M,
        },
        convert(i['nominal_volume_us_gal'] as number, 'us_gal', 'L'),
      ),
      'm',
      'in',
    ),
  })),
  'practice.pr-bag-half': forEachOfList((i) => ({
    fill_fraction: filledShare(
      i['buckets'] as number,
      convert(i['bucket_us_gal'] as number, 'us_gal', 'L'),
      convert(i['nominal_volume_us_gal'] as number, 'us_gal', 'L'),
    ),
  })),
  'practice.pr-eight-bags-half': forEachOfList((i) => ({
    buckets: bucketsForBeds({
      beds: i['beds'] as number,
      capacity_L: convert(i['nominal_volume_us_gal'] as number, 'us_gal', 'L'),
      share: i['lower_fraction'] as number,
      bucket_L: convert(i['bucket_us_gal'] as number, 'us_gal', 'L'),
    }),
  })),
  'practice.pr-small-pump-event': forEachOfList((i) => ({
    event_Wh: runEnergy_Wh(i['pump_W'] as number, i['minutes'] as number, 1),
  })),
  'practice.pr-small-pump-season': forEachOfList((i) => ({
    season_Wh: seasonEnergy_Wh(i['pump_W'] as number, i['minutes'] as number, i['runs_per_day'] as number, i['days'] as number),
  })),
  'practice.pr-rated-flow': forEachOfList((i) => ({
    rated_flow_L_h: convert(i['rated_flow_us_gal_h'] as number, 'us_gal_per_h', 'L_per_h'),
  })),
  'practice.pr-basin-minutes': forEachOfList((i) => {
    const ring_L = basinRing_L({
      basinDiameter_m: convert(i['basin_diameter_in'] as number, 'in', 'm'),
      bagDiameter_m: convert(i['bag_diameter_in'] as number, 'in', 'm'),
      depth_m: convert(i['depth_in'] as number, 'in', 'm'),
      bagPorosity: 0,
    });
    const flow_L_per_h = convert(i['flow_us_gal_h'] as number, 'us_gal_per_h', 'L_per_h');
    return {
      ring_volume_us_gal_each: convert(ring_L, 'L', 'us_gal'),
      minutes: minutesForBasins(i['beds'] as number, ring_L, flow_L_per_h),
    };
  }),
  'practice.pr-interval': forEachOfList((i) => ({
    days: containerDays({
      mix_L: i['volume_L'] as number,
      availableShare: i['available_water_fraction'] as number,
      depletionShare: i['allowed_depletion'] as number,
      use_L_per_day: areaUse_L_per_day(i['etc_mm_d'] as number, i['area_m2'] as number),
    }).days,
  })),
  'practice.pr-basin-cost': forEachOfList((i) => {
    const price_minor = centsOf(i['price_usd'] as number);
    return {
      total_usd: usdOf(yearlyShare_minor(i['beds'] as number, price_minor, 1)),
      per_bed_season_usd: usdOf(yearlyShare_minor(1, price_minor, i['life_seasons'] as number)),
    };
  }),
  'practice.pr-station-idle': forEachOfList((i) => ({
    idle_Wh: loadEnergy_Wh(i['idle_W'] as number, i['switch_off_h'] as number),
  })),
  'practice.pr-reservoir': forEachOfList((i) => ({
    whole_runs: wholeRuns(
      convert(i['reservoir_us_gal'] as number, 'us_gal', 'L'),
      i['usable_fraction'] as number,
      convert(i['run_us_gal'] as number, 'us_gal', 'L'),
    ),
  })),
  'practice.pr-feed-hole': forEachOfList((i) => ({
    freeboard_in: convert(
      freeboard_m(
        convert(i['wall_in'] as number, 'in', 'm'),
        i['hole_fraction'] as number,
        convert(i['fill_depth_in'] as number, 'in', 'm'),
      ),
      'm',
      'in',
    ),
  })),
};
