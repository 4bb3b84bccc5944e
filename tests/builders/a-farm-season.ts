import type { IsoDate } from '../../planner/calendar.ts';
import { dayNumber } from '../../planner/calendar.ts';
import { dayClock } from '../../planner/season/growth-clock.ts';
import { createGenerator } from '../../planner/season/optimise/generator.ts';
import type { CropFigures } from '../../planner/season/proposal/crop-figures.ts';
import type { FarmSeason, PresentPlanting } from '../../planner/season/proposal/farm-season.ts';
import { aCrop, aPlanBed, someRules } from './a-plan.ts';

const families = ['Brassicaceae', 'Asteraceae', 'Poaceae', 'Solanaceae'] as const;

/** A farm's season from a seed: beds of many kinds, some split or built late, plantings pinned across pieces of beds. */
export function aFarmSeason(seed: number, size: { readonly beds?: number; readonly crops?: number } = {}): FarmSeason {
  const random = createGenerator(seed);
  const pick = <T>(list: readonly T[]): T => list[random.below(list.length)] as T;
  const list = <T>(count: number, make: (at: number) => T): T[] => Array.from({ length: count }, (_, at) => make(at));
  const start = '2027-03-01' as IsoDate;
  const crops = list(size.crops ?? 6, (at): CropFigures => {
    const family = pick(families);
    const method = pick(['direct', 'transplant'] as const);
    const typical = 1 + random.below(5);
    return {
      needs: aCrop({
        cropId: `crop-${at}`,
        cropName: `crop ${at}`,
        family,
        soilDepth_m: random.below(4) === 0 ? 0.3 : 0.15,
        needsTrellis: random.below(5) === 0,
        bearsShade: random.below(2) === 0,
        hardiness: pick(['hardy', 'half-hardy', 'tender', null]),
      }),
      timing: {
        method,
        indoors_days: method === 'transplant' ? 28 : 0,
        potOn_days: null,
        toHarvest: { early_days: 30, likely_days: 32 + random.below(40), late_days: 80 },
        window_days: 7 + random.below(30),
        turnover_days: 3,
      },
      form: pick(['even', 'at-once', 'peak'] as const),
      unit: 'kg',
      yield_per_m2: { low: typical * 0.6, typical, high: typical * 1.4 },
      hours: { plant_h_per_m2: 0.1, care_h_per_m2_week: 0.01, clear_h_per_m2: 0.05, harvest_h_per_unit: 0.05 },
      direct_minor_per_m2: random.below(200),
      bench_m2_per_m2: method === 'transplant' ? 0.03 : 0,
      shelf_weeks: random.below(3),
      overhead_minor: 0,
      orders: [
        {
          kind: 'standing',
          from: '2027-05-03' as IsoDate,
          to: '2027-09-20' as IsoDate,
          perWeek: 1 + random.below(6),
          price_minor: 400,
          penalty_minor: 150,
        },
        {
          kind: 'market',
          from: '2027-04-05' as IsoDate,
          to: '2027-10-20' as IsoDate,
          perWeek: 4,
          price_minor: 300,
          penalty_minor: 0,
        },
      ],
    };
  });
  const beds = list(size.beds ?? 8, (at) => ({
    ...aPlanBed({
      id: `bed-${at}`,
      code: `B-${at}`,
      area_m2: 2 + random.below(6),
      soilDepth_m: pick([0.2, 0.3, 0.5]),
      sun: pick(['full', 'full', 'light-shade', 'shade'] as const),
      hasTrellis: random.below(3) === 0,
      built: random.below(6) === 0 ? ('2027-05-15' as IsoDate) : null,
      retired: random.below(8) === 0 ? ('2027-09-01' as IsoDate) : null,
      lastYearOf: Object.fromEntries(
        families.filter(() => random.below(4) === 0).map((family) => [family, 2024 + random.below(3)]),
      ),
    }),
    block: Math.floor(at / 4),
    position: at,
    zone: random.below(2),
    splitAt: random.below(3) === 0 ? [0.5] : [],
  }));
  const pinned = beds
    .filter(() => random.below(3) === 0)
    .map((bed, at): PresentPlanting => {
      const crop = pick(crops);
      return {
        id: `pinned-${at}`,
        crop: {
          ...crop.needs,
          soilDepth_m: null,
          needsTrellis: false,
          bearsShade: true,
          family: pick(['Amaryllidaceae', crop.needs.family]),
        },
        raised: false,
        sow: null,
        inBed: '2027-05-20' as IsoDate,
        firstHarvest: '2027-06-25' as IsoDate,
        lastHarvest: '2027-07-05' as IsoDate,
        free: '2027-07-08' as IsoDate,
        spans: [{ bedId: bed.id, fromShare: 0, toShare: pick([1, 0.5, 1 / 3]), plants: 4, mostPlants: null }],
        isFree: false,
      };
    });
  return {
    rules: someRules({ start, end: '2027-12-01' as IsoDate, mayRepeatCrop: seed % 2 === 0 }),
    today: '2027-03-10' as IsoDate,
    beds,
    plantings: pinned,
    crops,
    clock: dayClock(dayNumber(start) - 400, 1200),
    waterUse: () => 20,
    zoneNames: ['line', 'no line'],
    wage_minor_per_h: 1800,
    labour_h_per_week: 6,
    overtimeMost_h: 2,
    overtimePremium_minor_per_h: 900,
    water_L_per_week: [300, Infinity],
    bench_m2: 0.6,
    mostCrops: random.below(3) === 0 ? 3 : null,
    caution: 0.5,
  };
}
