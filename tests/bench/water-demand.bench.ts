import { runBed } from '../../planner/water/bed-run.ts';
import type { BedStore } from '../../planner/water/bed-store.ts';
import { bedYear } from '../../planner/water/bed-year.ts';
import { stressYears } from '../../planner/water/stress-years.ts';
import { type WeatherRun, weatherRun } from '../../planner/water/weather-run.ts';
import type { Bench } from './bench.ts';

const BEDS = 1000;

function beds() {
  return Array.from({ length: BEDS }, (_, at) => {
    const store: BedStore = {
      bedId: `bed-${at}`,
      area_m2: 0.5 + (at % 7),
      rain_m2: at % 5 === 0 ? 0 : 0.5 + (at % 7),
      wall_m2: at % 3 === 0 ? 0.7 : 0,
      wallFactor: 0.3,
      depth_m: 0.3,
      availableShare: 0.18,
      free: at % 2 === 0 ? { kind: 'basin', capacity_L: 20, fill_L: 9, rise_mm_per_day: 10, open_m2: 0.15 } : null,
    };
    const crop = (from: number) => ({
      from,
      to: from + 80,
      curve: { stages_days: [20, 20, 25, 15] as const, kcIni: 0.6, kcMid: 1.1, kcEnd: 0.8 },
      share: 1,
      canopyFactor: 1.2,
      rootDepth_m: 0.4,
      p: 0.4,
    });
    const year = bedYear({
      area_m2: store.area_m2,
      depth_m: store.depth_m,
      crops: [crop(90 + (at % 30)), crop(180 + (at % 30))],
      cover: { bareReduction: 0.2, exposure: 1 },
    });
    return { store, year, watering: { kind: 'when-due' } as const };
  });
}

const year = (number: number): WeatherRun =>
  weatherRun(
    Array.from({ length: 365 }, (_, yearDay) => ({
      year: number,
      yearDay,
      eto_mm: 2.7 - 2.2 * Math.cos((2 * Math.PI * yearDay) / 365),
      rain_mm: (yearDay * 7 + number) % 5 === 0 ? 9 : 0,
    })),
  );

type Prepared = { readonly beds: ReturnType<typeof beds>; readonly years: readonly WeatherRun[] };

/** Adds up the same weather once for each bed: the least that any balance over it must do. */
const touch = ({ beds: all, years }: Prepared): number => {
  let sum = 0;
  for (const bed of all) for (const run of years) for (const eto of run.eto_mm) sum += eto * bed.store.area_m2;
  return sum;
};

export const benches: readonly Bench[] = [
  {
    name: 'water balance, 1,000 beds x 365 days',
    prepare: () => ({ beds: beds(), years: [year(2015)] }),
    run: ({ beds: all, years }: Prepared) => {
      for (const bed of all) for (const run of years) runBed(bed.store, bed.year, run, bed.watering);
    },
    floor: touch,
    target_ms: 100,
  },
  {
    name: 'stress run, 1,000 beds x 30 years',
    prepare: () => ({ beds: beds(), years: Array.from({ length: 30 }, (_, at) => year(1990 + at)) }),
    run: ({ beds: all, years }: Prepared) => stressYears(all, years, { progress: () => undefined, shouldStop: () => false }),
    floor: touch,
    target_ms: 5000,
    rounds: 3,
  },
];
