import type { Fault } from '../errors.ts';
import type { LineNetwork, LineOutlet, LineTube } from './line-network.ts';

const MOST_LENGTH_M = 10_000;
const MOST_DIAMETER_M = 0.5;

const notAbove = (value: number): boolean => !Number.isFinite(value) || value <= 0;

function tubeFaults(tube: LineTube, at: number): Fault[] {
  const faults: Fault[] = [];
  const add = (field: string, code: string, message: string) => faults.push({ path: `tubes.${at}.${field}`, code, message });
  if (notAbove(tube.length_m)) add('length_m', 'not-positive', `Run ${tube.id} has no length: enter metres or feet above zero.`);
  if (tube.length_m > MOST_LENGTH_M) add('length_m', 'too-large', `Run ${tube.id} is longer than ${MOST_LENGTH_M} m.`);
  if (notAbove(tube.insideDiameter_m))
    add('insideDiameter_m', 'not-positive', `Run ${tube.id} needs the tube's inside diameter, not the size it is sold by.`);
  if (tube.insideDiameter_m > MOST_DIAMETER_M)
    add(
      'insideDiameter_m',
      'too-large',
      `Run ${tube.id}: an inside diameter of ${tube.insideDiameter_m} m is not a garden tube.`,
    );
  if (!(tube.roughness_m >= 0 && tube.roughness_m < tube.insideDiameter_m / 4))
    add('roughness_m', 'out-of-range', `Run ${tube.id}: the roughness must be zero or more and small beside the bore.`);
  if (!(tube.fittingK >= 0 && tube.fittingK <= 1e9))
    add('fittingK', 'out-of-range', `Run ${tube.id}: the fittings' K must be zero or more.`);
  if (tube.from === tube.to) add('to', 'loop', `Run ${tube.id} ends where it begins.`);
  return faults;
}

function outletFaults(outlet: LineOutlet, at: number, feeding: ReadonlyMap<string, LineTube>): Fault[] {
  const faults: Fault[] = [];
  const add = (field: string, code: string, message: string) => faults.push({ path: `outlets.${at}.${field}`, code, message });
  if (!Number.isFinite(outlet.outlet_m)) add('outlet_m', 'not-a-number', `Outlet ${outlet.id} needs a height.`);
  if (notAbove(outlet.bore_m)) add('bore_m', 'not-positive', `Outlet ${outlet.id} needs a bore above zero.`);
  const tube = feeding.get(outlet.node);
  if (tube === undefined) add('node', 'not-on-the-line', `Outlet ${outlet.id} is not on any run of the line.`);
  else if (outlet.bore_m > tube.insideDiameter_m * (1 + 1e-9))
    add(
      'bore_m',
      'wider-than-tube',
      `Outlet ${outlet.id} is wider (${outlet.bore_m} m) than its tube ${tube.id} (${tube.insideDiameter_m} m).`,
    );
  if (!(outlet.lossK > 0 || (outlet.lossK === 0 && outlet.emitters !== undefined)))
    add('lossK', 'not-positive', `Outlet ${outlet.id}: a valve and an end have a loss above zero; an open end alone is 1.`);
  const emitters = outlet.emitters;
  if (emitters !== undefined) {
    if (!(Number.isInteger(emitters.count) && emitters.count > 0))
      add('emitters.count', 'not-whole', `Outlet ${outlet.id} needs a whole number of emitters.`);
    if (notAbove(emitters.flowEach_L_per_h))
      add('emitters.flowEach_L_per_h', 'not-positive', `Outlet ${outlet.id}: an emitter's flow must be above zero.`);
    if (notAbove(emitters.atHead_m))
      add('emitters.atHead_m', 'not-positive', `Outlet ${outlet.id}: the head of the emitter's rating must be above zero.`);
    if (!(emitters.exponent >= 0.05 && emitters.exponent <= 1))
      add(
        'emitters.exponent',
        'out-of-range',
        `Outlet ${outlet.id}: the emitter's exponent lies between 0.05 (compensating) and 1 (smooth flow).`,
      );
  }
  return faults;
}

/** Follows every run from the source: runs that close a ring, and runs the source does not reach. */
function treeFaults(network: LineNetwork, feeding: Map<string, LineTube>): Fault[] {
  const faults: Fault[] = [];
  network.tubes.forEach((tube, at) => {
    if (tube.to === network.source)
      faults.push({
        path: `tubes.${at}.to`,
        code: 'loop',
        message: `Run ${tube.id} leads back to the source. Ring mains are not solved: take one run out.`,
      });
    else if (feeding.has(tube.to))
      faults.push({
        path: `tubes.${at}.to`,
        code: 'loop',
        message: `Two runs, ${feeding.get(tube.to)?.id} and ${tube.id}, feed ${tube.to}: that closes a ring. Ring mains are not solved: take one run out.`,
      });
    else feeding.set(tube.to, tube);
  });
  if (faults.length > 0) return faults;
  const after = new Map<string, string[]>();
  for (const tube of network.tubes) after.set(tube.from, [...(after.get(tube.from) ?? []), tube.to]);
  const reached = new Set([network.source]);
  const waiting = [network.source];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop())
    for (const next of after.get(node) ?? []) {
      reached.add(next);
      waiting.push(next);
    }
  network.tubes.forEach((tube, at) => {
    if (!reached.has(tube.to))
      faults.push({
        path: `tubes.${at}.from`,
        code: 'not-connected',
        message: `Run ${tube.id} begins at ${tube.from}, which the source does not reach.`,
      });
  });
  return faults;
}

/** Everything that keeps a line from being solved, each at its field. Empty when it can be solved. */
export function lineFaults(network: LineNetwork): readonly Fault[] {
  const faults: Fault[] = network.tubes.flatMap(tubeFaults);
  if (network.tubes.length === 0) faults.push({ path: 'tubes', code: 'too-few', message: 'The line has no tube yet.' });
  if (network.outlets.length === 0) faults.push({ path: 'outlets', code: 'too-few', message: 'No outlet leads to a bed yet.' });
  if (!Number.isFinite(network.level_m))
    faults.push({ path: 'level_m', code: 'not-a-number', message: 'The water level of the source is needed.' });
  if (notAbove(network.viscosity_m2_per_s))
    faults.push({ path: 'viscosity_m2_per_s', code: 'not-positive', message: 'The water needs a viscosity.' });
  const feeding = new Map<string, LineTube>();
  faults.push(...treeFaults(network, feeding));
  for (const [kind, things] of [
    ['tubes', network.tubes],
    ['outlets', network.outlets],
  ] as const) {
    const seen = new Set<string>();
    things.forEach((thing, at) => {
      if (seen.has(thing.id))
        faults.push({ path: `${kind}.${at}.id`, code: 'twice', message: `${thing.id} stands twice in the line.` });
      seen.add(thing.id);
    });
  }
  network.outlets.forEach((outlet, at) => {
    faults.push(...outletFaults(outlet, at, feeding));
  });
  return faults;
}
