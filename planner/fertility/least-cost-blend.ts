import { refuse } from '../errors.ts';
import type { LpSolver } from '../lp.ts';
import { createMilp, type MilpModel, type MilpSolver } from '../milp.ts';

/** One material of a blend: price of a unit of mass (or of a measure) and what the unit brings of each nutrient. */
export type BlendMaterial = {
  readonly name: string;
  readonly price: number;
  readonly contents: Readonly<Record<string, number>>;
  /** No more than this: stock, or the label's rate. */
  readonly most?: number;
};

/** Amounts in one unit of mass throughout; limits in the unit of `contents`. */
export type BlendProblem = {
  readonly materials: readonly BlendMaterial[];
  readonly minimum: Readonly<Record<string, number>>;
  readonly maximum?: Readonly<Record<string, number>>;
  /** Exactly so much in all. */
  readonly total?: number;
  readonly mostTotal?: number;
  readonly budget?: number;
};

export type BindingLimit = {
  /** `minimum`, `maximum` and `most` name a nutrient or material in `of`; the others have none. */
  readonly limit: 'minimum' | 'maximum' | 'most' | 'total' | 'mostTotal' | 'budget';
  readonly of: string;
  /** What one more unit of the limit would add to the cost; below zero it would save. */
  readonly price: number;
};

export type Blend = {
  readonly state: 'found';
  readonly cost: number;
  readonly amounts: Readonly<Record<string, number>>;
  /** What the blend brings of each nutrient. */
  readonly brings: Readonly<Record<string, number>>;
  readonly binding: readonly BindingLimit[];
};

export type BlendShortfall = {
  readonly state: 'cannot-be-met';
  /** The limits that clash, each with the least by which it must give way, as a share of it. */
  readonly clash: readonly { readonly limit: BindingLimit['limit']; readonly of: string; readonly missedShare: number }[];
};

/** So that of two blends of one price the lighter is taken. */
const TIE_BREAK = 1e-6;
const TOLERANCE = 1e-7;

type Limit = { readonly limit: BindingLimit['limit']; readonly of: string; readonly lower: number; readonly upper: number };

function limitsOf(problem: BlendProblem): readonly Limit[] {
  const range = (limit: BindingLimit['limit'], of: string, lower: number, upper: number): Limit => ({ limit, of, lower, upper });
  return [
    ...Object.entries(problem.minimum).map(([of, least]) => range('minimum', of, least, Infinity)),
    ...Object.entries(problem.maximum ?? {}).map(([of, most]) => range('maximum', of, -Infinity, most)),
    ...problem.materials.flatMap((m) => (m.most === undefined ? [] : [range('most', m.name, -Infinity, m.most)])),
    ...(problem.total === undefined ? [] : [range('total', '', problem.total, problem.total)]),
    ...(problem.mostTotal === undefined ? [] : [range('mostTotal', '', -Infinity, problem.mostTotal)]),
    ...(problem.budget === undefined ? [] : [range('budget', '', -Infinity, problem.budget)]),
  ];
}

function coefficient(limit: Limit, material: BlendMaterial): number {
  if (limit.limit === 'minimum' || limit.limit === 'maximum') return material.contents[limit.of] ?? 0;
  if (limit.limit === 'most') return material.name === limit.of ? 1 : 0;
  return limit.limit === 'budget' ? material.price : 1;
}

function blendModel(problem: BlendProblem, whole: boolean): MilpModel {
  checkBlend(problem);
  const builder = createMilp('minimise');
  for (const material of problem.materials) builder.column({ cost: material.price + TIE_BREAK, integer: whole });
  for (const limit of limitsOf(problem))
    builder.row({
      lower: limit.lower,
      upper: limit.upper,
      entries: problem.materials.map((material, at) => [at, coefficient(limit, material)] as const),
    });
  return builder.build();
}

function checkBlend(problem: BlendProblem): void {
  if (problem.materials.length === 0) refuse('materials', 'empty', 'Choose at least one material for the blend.');
  problem.materials.forEach((material, at) => {
    if (!Number.isFinite(material.price) || material.price < 0)
      refuse(`materials.${at}.price`, 'too-small', `${material.name}: a price of zero or more is needed.`);
    for (const [nutrient, content] of Object.entries(material.contents))
      if (!Number.isFinite(content) || content < 0)
        refuse(`materials.${at}.contents.${nutrient}`, 'too-small', `${material.name}: ${nutrient} must be zero or more.`);
  });
  for (const [nutrient, least] of Object.entries(problem.minimum)) {
    const most = problem.maximum?.[nutrient];
    if (most !== undefined && most < least)
      refuse(`maximum.${nutrient}`, 'too-small', `${nutrient}: the most wanted (${most}) is below the least (${least}).`);
  }
}

/**
 * The cheapest blend that keeps every limit.
 *
 *   min sum c_j x_j    with  L_i <= sum a_ij x_j <= U_i,  0 <= x_j <= most_j,  sum x_j = total where one is given
 *
 *   x_j   amount of material j     any unit of mass
 *   a_ij  nutrient i in a unit of it, within the crop's reach this season
 *   c_j   price of a unit
 *
 * Of equal prices the lightest blend. The price of a limit is the dual value: what one more unit of it would cost.
 * Where nothing fits, the limits are loosened as little as can be, counted in percent of each, and those that had to
 * give way are named.
 * Source: linear programming, a standard form. @throws InputError on prices or contents below zero
 */
export function leastCostBlend(problem: BlendProblem, solver: LpSolver): Blend | BlendShortfall {
  const lp = solver(blendModel(problem, false));
  const outcome = lp.solve('fresh');
  lp.close();
  if (outcome.state === 'no-solution') return clashOf(problem, solver);
  const limits = limitsOf(problem);
  const duals = outcome.solution.rowDuals;
  const binding = limits.flatMap(({ limit, of }, at) =>
    Math.abs(duals[at] ?? 0) > TOLERANCE * 10 ? [{ limit, of, price: duals[at] ?? 0 }] : [],
  );
  return { ...readBlend(problem, outcome.solution.values), binding };
}

/**
 * The cheapest blend in whole measures: `price` and `contents` are those of one measure.
 * The same program with whole numbers; the answer is rounded and every limit checked again by plain arithmetic.
 */
export function wholeMeasureBlend(problem: BlendProblem, solve: MilpSolver, lpSolver: LpSolver): Blend | BlendShortfall {
  const answer = solve(blendModel(problem, true));
  if (answer.state === 'no-solution') return clashOf(problem, lpSolver);
  const blend = readBlend(problem, answer.values.map(Math.round));
  const broken = brokenLimits(problem, blend.amounts);
  return broken.length === 0 ? { ...blend, binding: [] } : { state: 'cannot-be-met', clash: broken };
}

function readBlend(problem: BlendProblem, values: Float64Array): Omit<Blend, 'binding'> {
  const amounts: Record<string, number> = {};
  const brings: Record<string, number> = {};
  let cost = 0;
  problem.materials.forEach((material, at) => {
    const raw = values[at] ?? 0;
    const amount = raw < TOLERANCE ? 0 : raw;
    amounts[material.name] = amount;
    cost += amount * material.price;
    for (const [nutrient, content] of Object.entries(material.contents))
      brings[nutrient] = (brings[nutrient] ?? 0) + amount * content;
  });
  return { state: 'found', cost, amounts, brings };
}

/** The limits that a blend breaks, by plain arithmetic. */
export function brokenLimits(problem: BlendProblem, amounts: Readonly<Record<string, number>>): BlendShortfall['clash'] {
  return limitsOf(problem).flatMap((limit) => {
    const sum = problem.materials.reduce((total, m) => total + coefficient(limit, m) * (amounts[m.name] ?? 0), 0);
    const size = Math.max(1e-9, Math.abs(Number.isFinite(limit.lower) ? limit.lower : limit.upper));
    const missed = Math.max(limit.lower - sum, sum - limit.upper, 0) / size;
    return missed > 1e-6 ? [{ limit: limit.limit, of: limit.of, missedShare: missed }] : [];
  });
}

/** Solves again with every limit loosened at a cost of its share, and names those that had to give way. */
function clashOf(problem: BlendProblem, solver: LpSolver): BlendShortfall {
  const builder = createMilp('minimise');
  for (const _ of problem.materials) builder.column({ cost: TIE_BREAK });
  const limits = limitsOf(problem);
  const slack = limits.map(() => ({ under: builder.column({ cost: 1 }), over: builder.column({ cost: 1 }) }));
  limits.forEach((limit, row) => {
    const size = Math.max(1e-9, Math.abs(Number.isFinite(limit.lower) ? limit.lower : limit.upper));
    const { under, over } = slack[row] ?? { under: 0, over: 0 };
    builder.row({
      lower: limit.lower,
      upper: limit.upper,
      entries: [
        ...problem.materials.map((material, at) => [at, coefficient(limit, material)] as const),
        [under, size],
        [over, -size],
      ],
    });
  });
  const lp = solver(builder.build());
  const outcome = lp.solve('fresh');
  lp.close();
  if (outcome.state === 'no-solution') return { state: 'cannot-be-met', clash: [] };
  const { values } = outcome.solution;
  return {
    state: 'cannot-be-met',
    clash: limits.flatMap(({ limit, of }, row) => {
      const missedShare = Math.max(values[slack[row]?.under ?? 0] ?? 0, values[slack[row]?.over ?? 0] ?? 0);
      return missedShare > 1e-6 ? [{ limit, of, missedShare }] : [];
    }),
  };
}
