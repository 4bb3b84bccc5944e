import { requireRange, requireWhole } from '../errors.ts';
import { computed, entry, library, type Origin, practice, type Working } from '../working.ts';

export type SeedNeedInput = {
  readonly plants: number;
  /** Share of seed that germinates in the test. */
  readonly germination_share: number;
  /** Share of germinable seed that comes up: 1 in trays, 0.6 to 0.9 outdoors (common practice, no source). */
  readonly emergence_share: number;
  readonly seedsPerHole: number;
  /** Sown over need, 0.05 to 0.20 (common practice, no source). */
  readonly overage_share: number;
};

export type SeedNeed = { readonly stations: number; readonly seeds: number; readonly success_share: number };

/** Slack for rounding where a need ends exactly on a whole number. */
const ON_THE_WHOLE = 1e-9;

/**
 * Chance that a station of k seeds has at least one seedling: p = 1 - (1 - g e)^k.
 *
 *   g   germination               -   above 0 to 1
 *   e   emergence of live seed    -   above 0 to 1
 *   k   seeds a station           -   1 to 20
 *
 * Seeds are held to come up independently. Source: probability of at least one success.
 * @throws InputError naming the field
 */
export function stationSuccess_share(germination_share: number, emergence_share: number, seedsPerHole: number): number {
  requireRange('germination_share', germination_share, 0.01, 1, '');
  requireRange('emergence_share', emergence_share, 0.01, 1, '');
  requireWhole('seedsPerHole', seedsPerHole, 1, 20);
  return 1 - (1 - germination_share * emergence_share) ** seedsPerHole;
}

/**
 * Stations (cells or holes) and seeds for a number of plants.
 *
 *   stations = ceil(N (1 + o)/p)      seeds = k stations
 *
 *   N   plants wanted           -   0 or more
 *   o   overage                 -   0 to 3
 *   p   success of a station    -   {@link stationSuccess_share}
 *
 * Source: expectation of successes; checked with 7 CFR 201.31 germination and 201.46 seed counts.
 * @throws InputError naming the field
 */
export function seedNeed(input: SeedNeedInput): SeedNeed {
  requireWhole('plants', input.plants, 0, 100_000_000);
  requireRange('overage_share', input.overage_share, 0, 3, '');
  const success_share = stationSuccess_share(input.germination_share, input.emergence_share, input.seedsPerHole);
  const stations = Math.ceil((input.plants * (1 + input.overage_share)) / success_share - ON_THE_WHOLE);
  return { stations, seeds: stations * input.seedsPerHole, success_share };
}

/** Mass of seed: seeds / seeds per gram, in g. @throws InputError naming the field */
export function seedMass_g(seeds: number, seeds_per_g: number): number {
  requireRange('seeds', seeds, 0, 1e10, '');
  requireRange('seeds_per_g', seeds_per_g, 0.01, 1e6, 'seeds/g');
  return seeds / seeds_per_g;
}

/** Share of a lot that is live seed of its kind: purity times germination. Source: USDA NRCS (memory). @throws InputError */
export function pureLiveSeed_share(purity_share: number, germination_share: number): number {
  requireRange('purity_share', purity_share, 0.01, 1, '');
  requireRange('germination_share', germination_share, 0.01, 1, '');
  return purity_share * germination_share;
}

/** Bulk seed to sow for a rate given as pure live seed: rate / PLS, g/m2. Source: USDA NRCS (memory). @throws InputError */
export function bulkRate_g_per_m2(rate_g_per_m2: number, pureLiveSeed: number): number {
  requireRange('rate_g_per_m2', rate_g_per_m2, 0, 10_000, 'g/m2');
  requireRange('pureLiveSeed', pureLiveSeed, 0.0001, 1, '');
  return rate_g_per_m2 / pureLiveSeed;
}

export function explainSeedNeed(input: SeedNeedInput, germinationFrom: Origin = library('the crop')): Working {
  const need = seedNeed(input);
  const result = { value: need.seeds, unit: 'seeds' };
  const figure = (value: number, unit = '') => ({ value, unit });
  return {
    title: 'Seed needed',
    formula: 'p = 1 - (1 - g e)^k; stations = ceil(N (1 + o)/p); seeds = k stations',
    symbols: [
      { symbol: 'N', name: 'plants wanted', figure: figure(input.plants, 'plants'), origin: computed('counted in the layout') },
      { symbol: 'g', name: 'germination', figure: figure(input.germination_share, 'share'), origin: germinationFrom },
      { symbol: 'e', name: 'emergence', figure: figure(input.emergence_share, 'share'), origin: practice() },
      { symbol: 'k', name: 'seeds in a hole', figure: figure(input.seedsPerHole), origin: entry() },
      { symbol: 'o', name: 'overage', figure: figure(input.overage_share, 'share'), origin: practice() },
    ],
    steps: [
      {
        text: 'Chance that a station has a seedling',
        figures: `1 - (1 - ${input.germination_share} x ${input.emergence_share})^${input.seedsPerHole}`,
        result: figure(need.success_share, 'share'),
      },
      {
        text: 'Stations, rounded up',
        figures: `${input.plants} x (1 + ${input.overage_share}) / p`,
        result: figure(need.stations),
      },
      { text: 'Seeds', figures: `${input.seedsPerHole} x ${need.stations}`, result },
    ],
    result,
    sources: ['Probability of at least one success in k'],
    notes: ['Seeds are held to come up independently of each other. Where no lot was tested, the legal minimum is used.'],
  };
}
