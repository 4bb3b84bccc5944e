/**
 * A seeded generator of numbers from 0 up to 1, for invented farms: 32-bit counter with a mixing step
 * (the "mulberry" mixer, public domain, from memory). Not for anything that must be unguessable.
 */
export function seededRandom(seed: number) {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  const between = (least: number, most: number): number => least + (most - least) * next();
  const whole = (least: number, most: number): number => Math.floor(between(least, most + 1));
  const pick = <T>(from: readonly T[]): T => {
    const chosen = from[Math.floor(next() * from.length)];
    if (chosen === undefined) throw new RangeError('Nothing to pick from.');
    return chosen;
  };
  return { next, between, whole, pick };
}

export type Random = ReturnType<typeof seededRandom>;
