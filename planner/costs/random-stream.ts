const UINT32 = 4_294_967_296;

/**
 * A seeded stream of numbers in [0, 1): 32-bit integer arithmetic only, so that every machine draws the same.
 *
 * Source: the mulberry32 generator, public domain, from memory. Not for secrets.
 */
export function randomStream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / UINT32;
  };
}
