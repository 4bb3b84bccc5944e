import { createGenerator } from '../../planner/season/optimise/generator.ts';
import type { SeasonCrop, SeasonInstance } from '../../planner/season/optimise/instance.ts';

export type TinySeasonWishes = {
  readonly units?: number;
  readonly crops?: number;
  readonly starts?: number;
  readonly weeks?: number;
};

/** A small random season whose plans can all be looked at; every kind of rule and limit comes up over the seeds. */
export function tinySeason(seed: number, wishes: TinySeasonWishes = {}): SeasonInstance {
  const { units = 3, crops = 4, starts = 2, weeks = 24 } = wishes;
  const random = createGenerator(seed);
  const repeats = seed % 2 === 0 ? 'one-crop' : 'once';
  const families = ([repeats, 'not-back-to-back', 'free'] as const).map((inSeason, at) => ({ name: `family ${at}`, inSeason }));
  const list = <T>(count: number, make: (at: number) => T): T[] => Array.from({ length: count }, (_, at) => make(at));
  const bench = random.below(3) === 0;
  const aCrop = (c: number): SeasonCrop => {
    const stay = 5 + random.below(7);
    const firstPick = stay - 1 - random.below(3);
    const price = 150 + random.below(400);
    const perWeek = 1 + random.below(3);
    return {
      name: `crop ${c}`,
      family: random.below(3),
      shelf_weeks: random.below(3) * random.below(3),
      overhead_minor: random.below(2) * 300,
      steadiness_minor: random.below(4) === 0 ? 20 : 0,
      options: list(starts, () => {
        const startWeek = random.below(weeks - stay + 1);
        return {
          startWeek,
          harvest_per_m2: list(stay, (k) => (k < firstPick ? 0 : perWeek * (1 + random.below(3)) * 0.5)),
          labour_h_per_m2: list(stay, (k) => (k === 0 ? 0.4 : 0.1)),
          water_L_per_m2: list(stay, () => 10 + random.below(15)),
          bench_m2_per_m2: bench ? list(Math.min(startWeek, 3), () => 0.2) : [],
          cost_minor_per_m2: 50 + random.below(150),
        };
      }),
      demand: list(weeks, (week) => ({
        week,
        contract: random.below(4) === 0 ? 2 : 0,
        contractPrice_minor: price,
        penalty_minor: Math.round(price / 3),
        tiers: [
          { cap: 2 + random.below(4), price_minor: price },
          { cap: 5, price_minor: Math.round(price / 2) },
        ],
      })).filter((_, week) => week % 2 === 0 || week > weeks / 2),
    };
  };
  const made = list(crops, aCrop);
  return {
    weeks,
    families,
    units: list(units, (u) => ({
      id: `bed ${Math.floor(u / 2)}/${u % 2}`,
      bedId: `bed ${Math.floor(u / 2)}`,
      block: 0,
      position: Math.floor(u / 2),
      part: u % 2,
      area_m2: 1 + random.below(3),
      zone: random.below(2),
      cropsFit: made.map((_, c) => c).filter(() => random.below(6) > 0),
      barredFamilies: random.below(4) === 0 ? [random.below(3)] : [],
      fixed:
        random.below(3) === 0
          ? [{ fromWeek: 8, toWeek: 8 + 2 + random.below(4), family: random.below(2) === 0 ? null : random.below(3) }]
          : [],
      seasonsSince: { 0: 1 + random.below(4) },
    })),
    crops: made,
    wage_minor_per_h: 400,
    labourCap_h: list(weeks, () => 0.8 + random.below(3) * 0.4),
    overtimeMost_h: random.below(2) * 0.6,
    overtimePremium_minor_per_h: 300,
    waterCap_L: [list(weeks, () => 40 + random.below(60)), list(weeks, () => 90)],
    benchCap_m2: list(weeks, () => (bench ? 0.7 : Infinity)),
    mostCrops: random.below(2) === 0 ? 2 : crops,
    standing: null,
  };
}
