import { refuse, requireRange, requireWhole } from '../errors.ts';
import { entry, library, type Working } from '../working.ts';
import { randomStream } from './random-stream.ts';

/** A number that is not known for certain: the least, the usual and the most. */
export type Range = { readonly low: number; readonly typical: number; readonly high: number };

export type ChanceInput = {
  /** Sold amount, in the unit that the price is for. */
  readonly sold: Range;
  readonly price_minor_per_unit: Range;
  readonly fixed_minor: number;
  readonly following_minor_per_unit: number;
  /** How far a good yield goes with a low price: -1 fully against each other, 0 independent, 1 together. */
  readonly correlation: number;
  readonly draws: number;
  readonly seed: number;
};

export type Chance = {
  readonly covers_share: number;
  readonly mean_minor: number;
  /** One in ten is below the first, one in ten above the last. */
  readonly p10_minor: number;
  readonly median_minor: number;
  readonly p90_minor: number;
};

/**
 * Chance that a stand covers its cost, from the spread of yield and price.
 *
 *   net = Q (p - v) - F;   Q and p drawn from triangles low - typical - high
 *
 * Each draw takes two uniform numbers u1, u2; with correlation r the price's is u1 (or 1 - u1 where r < 0) in |r| of the draws,
 * else u2, so that the rank correlation is r. The generator is seeded: same input, same answer.
 * Covers means net of 0 or more.
 * Common practice, no source.
 * @throws InputError naming the field
 */
export function chanceOfCover(input: ChanceInput): Chance {
  requireTriangle('sold', input.sold);
  requireTriangle('price_minor_per_unit', input.price_minor_per_unit);
  requireRange('correlation', input.correlation, -1, 1, '');
  requireWhole('draws', input.draws, 1, 1_000_000);
  const next = randomStream(input.seed);
  const nets = new Float64Array(input.draws);
  let sum = 0;
  let covered = 0;
  for (let at = 0; at < input.draws; at += 1) {
    const first = next();
    const second = next();
    const tied = next() < Math.abs(input.correlation);
    const forPrice = tied ? (input.correlation < 0 ? 1 - first : first) : second;
    const net = netOf(input, fromTriangle(input.sold, first), fromTriangle(input.price_minor_per_unit, forPrice));
    nets[at] = net;
    sum += net;
    if (net >= 0) covered += 1;
  }
  nets.sort();
  const quantile = (share: number): number => nets[Math.min(nets.length - 1, Math.floor(share * nets.length))] ?? 0;
  return {
    covers_share: covered / input.draws,
    mean_minor: sum / input.draws,
    p10_minor: quantile(0.1),
    median_minor: quantile(0.5),
    p90_minor: quantile(0.9),
  };
}

/** One thing that may come otherwise, and what the net return would then be. */
export type TornadoBar = {
  readonly cause: string;
  readonly low_minor: number;
  readonly high_minor: number;
  readonly swing_minor: number;
};

/**
 * What matters most: each quantity taken to its low and high end while the others stay typical; the largest swing first.
 *
 * Common practice, no source.
 * @throws InputError naming the field
 */
export function tornado(input: {
  readonly sold: Range;
  readonly price_minor_per_unit: Range;
  readonly fixed_minor: Range;
  readonly following_minor_per_unit: Range;
}): readonly TornadoBar[] {
  const typical = {
    sold: input.sold.typical,
    price: input.price_minor_per_unit.typical,
    fixed: input.fixed_minor.typical,
    following: input.following_minor_per_unit.typical,
  };
  const net = (change: Partial<typeof typical>): number => {
    const at = { ...typical, ...change };
    return at.sold * (at.price - at.following) - at.fixed;
  };
  const bar = (cause: string, low: number, high: number): TornadoBar => ({
    cause,
    low_minor: low,
    high_minor: high,
    swing_minor: Math.abs(high - low),
  });
  return [
    bar('Yield', net({ sold: input.sold.low }), net({ sold: input.sold.high })),
    bar('Price', net({ price: input.price_minor_per_unit.low }), net({ price: input.price_minor_per_unit.high })),
    bar('Cost that stays', net({ fixed: input.fixed_minor.high }), net({ fixed: input.fixed_minor.low })),
    bar(
      'Cost of each unit',
      net({ following: input.following_minor_per_unit.high }),
      net({ following: input.following_minor_per_unit.low }),
    ),
  ].sort((a, b) => b.swing_minor - a.swing_minor || a.cause.localeCompare(b.cause));
}

/** Working of the chance in {@link chanceOfCover}. */
export function explainChance(input: ChanceInput, unit: string): Working {
  const found = chanceOfCover(input);
  const range = (symbol: string, name: string, of: Range, in_: string) => [
    {
      symbol: `${symbol} low`,
      name: `${name}, low`,
      figure: { value: of.low, unit: in_ },
      origin: library('your history, else the crop library'),
    },
    {
      symbol: `${symbol}`,
      name: `${name}, usual`,
      figure: { value: of.typical, unit: in_ },
      origin: library('your history, else the crop library'),
    },
    {
      symbol: `${symbol} high`,
      name: `${name}, high`,
      figure: { value: of.high, unit: in_ },
      origin: library('your history, else the crop library'),
    },
  ];
  return {
    title: 'Chance of covering its cost',
    formula: 'share of draws with Q (p - v) - F of 0 or more',
    symbols: [
      ...range('Q', 'sold', input.sold, unit),
      ...range('p', 'price', input.price_minor_per_unit, 'minor'),
      { symbol: 'F', name: 'cost that stays', figure: { value: input.fixed_minor, unit: 'minor' }, origin: entry() },
      {
        symbol: 'v',
        name: 'cost of each unit',
        figure: { value: input.following_minor_per_unit, unit: 'minor' },
        origin: entry(),
      },
    ],
    steps: [
      { text: `Mean of ${input.draws} draws`, figures: `seed ${input.seed}`, result: { value: found.mean_minor, unit: 'minor' } },
      { text: 'One in ten is below', figures: '', result: { value: found.p10_minor, unit: 'minor' } },
      { text: 'One in ten is above', figures: '', result: { value: found.p90_minor, unit: 'minor' } },
    ],
    result: { value: found.covers_share, unit: 'share' },
    sources: ['common practice, no source'],
    notes: ['Drawn from triangles between low and high. The same seed draws the same numbers.'],
  };
}

const netOf = (input: ChanceInput, sold: number, price: number): number =>
  sold * (price - input.following_minor_per_unit) - input.fixed_minor;

function fromTriangle({ low, typical, high }: Range, u: number): number {
  if (high === low) return low;
  const turn = (typical - low) / (high - low);
  return u < turn
    ? low + Math.sqrt(u * (high - low) * (typical - low))
    : high - Math.sqrt((1 - u) * (high - low) * (high - typical));
}

function requireTriangle(path: string, range: Range): void {
  requireRange(`${path}.low`, range.low, 0, Infinity, '');
  if (!(range.low <= range.typical && range.typical <= range.high))
    refuse(path, 'not-in-order', `${path}: low, usual and high must rise.`);
}
