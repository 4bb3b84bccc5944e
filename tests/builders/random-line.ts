import type { LineNetwork, LineOutlet, LineTube } from '../../planner/irrigation/line-network.ts';
import { pumpCurve } from '../../planner/irrigation/pump-curve.ts';

/** A repeatable stream of numbers from 0 to 1 (mulberry32, public domain). */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A random line: snake, comb or bush, 3 to `most` beds, K from 1 to 1e5, outlets from 0.5 m below to 0.7 m above the water. */
export function randomLine(seed: number, most: number): LineNetwork {
  const next = numbersFrom(seed);
  const between = (least: number, top: number): number => least + (top - least) * next();
  const log = (least: number, top: number): number => Math.exp(between(Math.log(least), Math.log(top)));
  const beds = Math.floor(log(3, most + 1));
  const bores_m = [0.0095, 0.0127, 0.0152, 0.0191, 0.0254];
  const bore = (): number => bores_m[Math.floor(next() * bores_m.length)] ?? 0.0127;
  const habit = next();
  const tubes: LineTube[] = [];
  const outlets: LineOutlet[] = [];
  const tees = ['P0'];
  tubes.push({
    id: 'riser',
    from: 'SRC',
    to: 'P0',
    length_m: between(0.5, 6),
    insideDiameter_m: 0.0191,
    roughness_m: 1.5e-6,
    fittingK: between(0, 3),
  });
  for (let at = 1; at <= beds; at += 1) {
    const straight = next() < habit;
    const from = (straight ? tees.at(-1) : tees[Math.floor(next() * tees.length)]) ?? 'P0';
    tees.push(`T${at}`);
    tubes.push({
      id: `M${at}`,
      from,
      to: `T${at}`,
      length_m: between(0.3, 4),
      insideDiameter_m: bore(),
      roughness_m: 1.5e-6,
      fittingK: between(0, 2),
    });
    const insideDiameter_m = bore();
    tubes.push({
      id: `L${at}`,
      from: `T${at}`,
      to: `B${at}`,
      length_m: between(0.1, 2),
      insideDiameter_m,
      roughness_m: 1.5e-6,
      fittingK: between(0, 2),
    });
    outlets.push({ id: `bed ${at}`, node: `B${at}`, outlet_m: between(-0.5, 0.7), bore_m: insideDiameter_m, lossK: log(1, 1e5) });
  }
  const shutoff_m = between(0.8, 4);
  const most_L_per_h = log(200, 4000);
  const middle = between(0.4, 0.7);
  const pump = pumpCurve('three-points', [
    { flow_L_per_h: 0, head_m: shutoff_m },
    { flow_L_per_h: middle * most_L_per_h, head_m: shutoff_m * (1 - middle ** between(1.2, 2.5)) },
    { flow_L_per_h: most_L_per_h, head_m: 0 },
  ]);
  return { source: 'SRC', level_m: 0, pump, viscosity_m2_per_s: 1.004e-6, tubes, outlets };
}
