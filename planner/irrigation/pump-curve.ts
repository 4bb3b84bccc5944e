import { type Fault, InputError, refuse } from '../errors.ts';
import { convert } from '../units/convert.ts';

/** One row of a pump's table: what it delivers at a height. */
export type PumpPoint = { readonly flow_L_per_h: number; readonly head_m: number };

/** What the grower knows about the pump. `rated` is the flow at no height and the greatest height, a guess of the rest. */
export type PumpCurveKind = 'points' | 'three-points' | 'one-point' | 'rated';

/** Head against flow, falling. The last known flow tells where the curve is only carried on. */
export type PumpCurve =
  | {
      readonly form: 'power';
      readonly shutoff_m: number;
      /** B in h = A - B q^C with q in m3/s. */
      readonly coefficient: number;
      readonly exponent: number;
      readonly lastFlow_m3_per_s: number;
      readonly guess: boolean;
    }
  | {
      readonly form: 'segments';
      readonly flow_m3_per_s: readonly number[];
      readonly head_m: readonly number[];
      readonly lastFlow_m3_per_s: number;
      readonly guess: false;
    };

const at = (points: readonly PumpPoint[], index: number): PumpPoint => {
  const point = points[index];
  if (point === undefined) return refuse('points', 'too-few', 'points: the pump curve needs more points.');
  return point;
};
const say = (point: PumpPoint): string => `${point.head_m} m at ${point.flow_L_per_h} L/h`;

/** Points in order of flow. @throws InputError naming two points between which head does not fall */
function fallingPoints(points: readonly PumpPoint[]): readonly PumpPoint[] {
  const faults: Fault[] = [];
  points.forEach((point, index) => {
    if (!Number.isFinite(point.flow_L_per_h) || point.flow_L_per_h < 0)
      faults.push({
        path: `points.${index}.flow_L_per_h`,
        code: 'too-small',
        message: 'A pump point needs a flow of zero or more.',
      });
    if (!Number.isFinite(point.head_m) || point.head_m < 0)
      faults.push({ path: `points.${index}.head_m`, code: 'too-small', message: 'A pump point needs a head of zero or more.' });
  });
  const order = points.map((point, index) => ({ point, index })).sort((a, b) => a.point.flow_L_per_h - b.point.flow_L_per_h);
  order.forEach(({ point, index }, place) => {
    const before = order[place - 1];
    if (before === undefined) return;
    if (point.flow_L_per_h === before.point.flow_L_per_h || point.head_m >= before.point.head_m)
      faults.push({
        path: `points.${index}.head_m`,
        code: 'does-not-fall',
        message: `The pump curve must fall as flow rises: ${say(before.point)} (point ${before.index + 1}) and ${say(point)} (point ${index + 1}) do not.`,
      });
  });
  if (faults.length > 0) throw new InputError(faults);
  return order.map(({ point }) => point);
}

/**
 * A falling curve h = A - B q^C through a shut-off head and two more points.
 *
 *   A = h0,   C = ln[(h0 - h2)/(h0 - h1)] / ln(q2/q1),   B = (h0 - h1)/q1^C
 *
 * Misses a real curve by up to about 5 % between its points; four points or more are better.
 * Source: EPANET 2.2 user manual, pump curves.
 * @throws InputError when the first point is not at no flow or the curve does not fall
 */
function throughThreePoints(points: readonly PumpPoint[]): PumpCurve {
  const [none, middle, far] = [at(points, 0), at(points, 1), at(points, 2)];
  if (none.flow_L_per_h !== 0)
    refuse(
      'points.0.flow_L_per_h',
      'shut-off-needed',
      'Of three points one must be the shut-off head, at no flow. Enter more points instead.',
    );
  const drop = none.head_m - middle.head_m;
  const exponent = Math.log((none.head_m - far.head_m) / drop) / Math.log(far.flow_L_per_h / middle.flow_L_per_h);
  const middle_m3_per_s = convert(middle.flow_L_per_h, 'L_per_h', 'm3_per_s');
  return {
    form: 'power',
    shutoff_m: none.head_m,
    coefficient: drop / middle_m3_per_s ** exponent,
    exponent,
    lastFlow_m3_per_s: convert(far.flow_L_per_h, 'L_per_h', 'm3_per_s'),
    guess: false,
  };
}

/**
 * A parabola from one working point: shut-off at 4/3 of its head, no head at twice its flow.
 * Source: EPANET 2.2 user manual, single-point pump curve.
 */
function fromOnePoint(points: readonly PumpPoint[]): PumpCurve {
  const design = at(points, 0);
  if (design.flow_L_per_h <= 0 || design.head_m <= 0)
    refuse('points.0.flow_L_per_h', 'not-positive', 'The one working point needs a flow and a head above zero.');
  return parabola((4 / 3) * design.head_m, 2 * design.flow_L_per_h);
}

/**
 * A parabola h = h0 [1 - (q/q0)2] from the flow at no height and the greatest height, the two figures on the box.
 * A guess: common practice, no source.
 */
function fromRating(points: readonly PumpPoint[]): PumpCurve {
  const [none, full] = [at(points, 0), at(points, 1)];
  if (none.flow_L_per_h !== 0 || full.head_m !== 0)
    refuse('points', 'rating-needed', 'A rating is the greatest height at no flow and the flow at no height.');
  return parabola(none.head_m, full.flow_L_per_h);
}

function parabola(shutoff_m: number, mostFlow_L_per_h: number): PumpCurve {
  const most = convert(mostFlow_L_per_h, 'L_per_h', 'm3_per_s');
  return { form: 'power', shutoff_m, coefficient: shutoff_m / most ** 2, exponent: 2, lastFlow_m3_per_s: most, guess: true };
}

/** Straight lines from point to point, carried on beyond the last. Source: EPANET 2.2 user manual, multi-point curve. */
function throughPoints(points: readonly PumpPoint[]): PumpCurve {
  if (points.length < 2) refuse('points', 'too-few', 'points: a table of the pump needs at least two points.');
  const flow_m3_per_s = points.map((point) => convert(point.flow_L_per_h, 'L_per_h', 'm3_per_s'));
  return {
    form: 'segments',
    flow_m3_per_s,
    head_m: points.map((point) => point.head_m),
    lastFlow_m3_per_s: flow_m3_per_s.at(-1) ?? 0,
    guess: false,
  };
}

/**
 * The pump's curve from what is known of it.
 * @throws InputError naming the two points between which the head rises, or what is missing
 */
export function pumpCurve(kind: PumpCurveKind, points: readonly PumpPoint[]): PumpCurve {
  const falling = fallingPoints(points);
  const wanted = { points: 2, 'three-points': 3, 'one-point': 1, rated: 2 }[kind];
  if (falling.length < wanted || (kind !== 'points' && falling.length !== wanted))
    refuse(
      'points',
      falling.length < wanted ? 'too-few' : 'too-many',
      `points: this kind of curve takes ${wanted}, not ${falling.length}.`,
    );
  switch (kind) {
    case 'points':
      return throughPoints(falling);
    case 'three-points':
      return throughThreePoints(falling);
    case 'one-point':
      return fromOnePoint(falling);
    case 'rated':
      return fromRating(falling);
  }
}

/** The least flow at which a slope is taken: with C below 1 the slope at rest is without bound. */
const LEAST_FLOW_M3_PER_S = 1e-9;

/** Head of the pump at a flow and its slope (never above zero). Below no flow the head stays at shut-off. */
export function pumpHead(curve: PumpCurve, flow_m3_per_s: number): { readonly head_m: number; readonly slope: number } {
  if (curve.form === 'power') {
    const flow = Math.max(flow_m3_per_s, LEAST_FLOW_M3_PER_S);
    const loss = curve.coefficient * flow ** curve.exponent;
    return { head_m: curve.shutoff_m - (flow_m3_per_s <= 0 ? 0 : loss), slope: (-curve.exponent * loss) / flow };
  }
  const flows = curve.flow_m3_per_s;
  let to = 1;
  while (to < flows.length - 1 && flow_m3_per_s > (flows[to] as number)) to += 1;
  const q1 = flows[to - 1] as number;
  const h1 = curve.head_m[to - 1] as number;
  const slope = ((curve.head_m[to] as number) - h1) / ((flows[to] as number) - q1);
  return { head_m: h1 + slope * (flow_m3_per_s - q1), slope };
}

/** Head at no flow. */
export function shutoffHead_m(curve: PumpCurve): number {
  return pumpHead(curve, 0).head_m;
}

/** Flow at no head, "the flow on the box". */
export function mostFlow_m3_per_s(curve: PumpCurve): number {
  if (curve.form === 'power') return (curve.shutoff_m / curve.coefficient) ** (1 / curve.exponent);
  const end = pumpHead(curve, curve.lastFlow_m3_per_s);
  return curve.lastFlow_m3_per_s - end.head_m / end.slope;
}

/**
 * Several equal pumps side by side: at one head their flows add, so h(q) of the set is h(q/n) of one.
 * Source: Hydraulic Institute, pumps in parallel (memory).
 * @throws InputError when the count is not a whole number above zero
 */
export function inParallel(curve: PumpCurve, count: number): PumpCurve {
  if (!Number.isInteger(count) || count < 1) return refuse('count', 'not-whole', 'count: a whole number of pumps is needed.');
  const lastFlow_m3_per_s = curve.lastFlow_m3_per_s * count;
  if (curve.form === 'power') return { ...curve, coefficient: curve.coefficient / count ** curve.exponent, lastFlow_m3_per_s };
  return { ...curve, flow_m3_per_s: curve.flow_m3_per_s.map((flow) => flow * count), lastFlow_m3_per_s };
}
