import { requirePositive, requireRange } from '../errors.ts';

/**
 * Height to which water climbs in a round pore, mm.
 *
 *   h = 2 gamma / (rho g r)
 *
 *   gamma   surface tension     N/m      0.0728 at 20 C
 *   rho     density             kg/m3    998.2 at 20 C
 *   r       radius of the pore  mm       above 0
 *
 * Static height only: it says nothing of how much flows. Source: Jurin's law (from memory).
 * @throws InputError naming the field
 */
export function tubeRise_mm(input: {
  readonly radius_mm: number;
  readonly tension_N_per_m: number;
  readonly density_kg_per_m3: number;
  readonly gravity_m_per_s2: number;
}): number {
  requirePositive('radius_mm', input.radius_mm, 'mm');
  const metres = (2 * input.tension_N_per_m) / (input.density_kg_per_m3 * input.gravity_m_per_s2 * (input.radius_mm / 1000));
  return metres * 1000;
}

/** Coefficient C of the greatest steady flow upward `q = C a/L^n` for `K = a/h^n`: `(pi/(n sin(pi/n)))^n`. Source: Gardner 1958 (from memory). */
export function gardnerCoefficient(n: number): number {
  requireRange('n', n, 1.01, 20, '');
  return (Math.PI / (n * Math.sin(Math.PI / n))) ** n;
}

/** How a soil holds and passes water. */
export type Retention = {
  readonly residualShare: number;
  readonly saturatedShare: number;
  readonly alpha_per_cm: number;
  readonly n: number;
  readonly conductivity_cm_per_day: number;
};

/** Water held at a suction, `theta_r + (theta_s - theta_r)/(1 + (alpha h)^n)^(1 - 1/n)`. Source: van Genuchten 1980. */
export function heldShare(soil: Retention, suction_cm: number): number {
  const { residualShare, saturatedShare, alpha_per_cm, n } = soil;
  return residualShare + (saturatedShare - residualShare) / (1 + (alpha_per_cm * suction_cm) ** n) ** (1 - 1 / n);
}

/** Conductivity at a suction, pore connectivity 0.5. Source: van Genuchten 1980, Mualem 1976. */
export function conductivityAt_cm_per_day(soil: Retention, suction_cm: number): number {
  const m = 1 - 1 / soil.n;
  const power = (soil.alpha_per_cm * suction_cm) ** soil.n;
  const filled = (1 + power) ** -m;
  // 1 - (1 - S^(1/m))^m without losing digits when the soil is dry
  const inner = -Math.expm1(m * Math.log1p(-1 / (1 + power)));
  return soil.conductivity_cm_per_day * Math.sqrt(filled) * inner ** 2;
}

/** Suction up to which the flow is followed: 150 m of water, the wilting point. */
const WILTING_SUCTION_CM = 15_000;
const STEPS = 2000;

/**
 * Greatest height above free water at which a soil can pass a steady flow upward, cm.
 *
 *   z = integral over suction h, 0 to 150 m, of dh / (1 + q/K(h))
 *
 *   q   steady flow upward   mm/day   above 0
 *
 * For mineral soils; a peat or compost mix shrinks and turns from water when dry: let the grower enter the height that stays moist.
 * Source: steady Darcy flow; computed heights of 20 cm in sand and 34 cm in sandy loam at 5 mm/day.
 * @throws InputError naming the field
 */
export function supplyHeight_cm(soil: Retention, flow_mm_per_day: number): number {
  requirePositive('flow_mm_per_day', flow_mm_per_day, 'mm/day');
  requireRange('n', soil.n, 1.01, 20, '');
  requirePositive('conductivity_cm_per_day', soil.conductivity_cm_per_day, 'cm/day');
  return heightIn_cm(conductivities(soil), flow_mm_per_day);
}

const LOWEST_LOG = Math.log(1e-4);
const LOG_STEP = (Math.log(WILTING_SUCTION_CM) - LOWEST_LOG) / STEPS;
const suctions_cm = Float64Array.from({ length: STEPS + 1 }, (_, at) => Math.exp(LOWEST_LOG + at * LOG_STEP));

/** Conductivity at each step of the suction: the costly part, the same for every flow. */
const conductivities = (soil: Retention): Float64Array =>
  suctions_cm.map((suction_cm) => conductivityAt_cm_per_day(soil, suction_cm));

function heightIn_cm(conductivity_cm_per_day: Float64Array, flow_mm_per_day: number): number {
  const q = flow_mm_per_day / 10;
  let sum = 0;
  for (let at = 0; at <= STEPS; at += 1) {
    const share = (suctions_cm[at] ?? 0) / (1 + q / (conductivity_cm_per_day[at] ?? 0));
    sum += share * (at === 0 || at === STEPS ? 1 : at % 2 === 1 ? 4 : 2);
  }
  return 1e-4 + (sum * LOG_STEP) / 3;
}

/**
 * Steady flow that reaches a height above free water, mm/day: the inverse of {@link supplyHeight_cm} by halving, to 0.01 %.
 * 0 where even a tenth of a millimetre does not arrive; at most 50.
 */
export function supplyAt_mm_per_day(soil: Retention, height_cm: number): number {
  requireRange('height_cm', height_cm, 0, 1000, 'cm');
  let low = 0.1;
  let high = 50;
  if (supplyHeight_cm(soil, low) < height_cm) return 0;
  const conductivity_cm_per_day = conductivities(soil);
  const reaches = (flow_mm_per_day: number) => heightIn_cm(conductivity_cm_per_day, flow_mm_per_day) >= height_cm;
  if (reaches(high)) return high;
  for (let turn = 0; turn < 16; turn += 1) {
    const middle = Math.sqrt(low * high);
    if (reaches(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/**
 * Water a drained column of a height holds as a mean share: free water at its base, suction growing upward.
 * Source: Milks, Fonteno & Larson 1989 with van Genuchten's curve.
 * @throws InputError naming the field
 */
export function drainedColumnShare(soil: Retention, height_cm: number): number {
  requirePositive('height_cm', height_cm, 'cm');
  const steps = 400;
  let sum = 0;
  for (let at = 0; at <= steps; at += 1)
    sum += heldShare(soil, (height_cm * at) / steps) * (at === 0 || at === steps ? 1 : at % 2 === 1 ? 4 : 2);
  return sum / (3 * steps);
}
