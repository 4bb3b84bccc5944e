/** A seeded source of whole numbers: same seed, same row, on every machine. */
export type Generator = {
  /** A whole number from 0 up to but not counting `count`. */
  readonly below: (count: number) => number;
  /** Puts a list in random order, in place. */
  readonly shuffle: <T>(list: T[]) => T[];
};

/**
 * 32-bit xorshift (13, 17, 5) with a multiplying finish; only whole-number operations, so every engine agrees.
 * Source: Marsaglia, Xorshift RNGs, Journal of Statistical Software 8(14), 2003 (from memory).
 */
export function createGenerator(seed: number): Generator {
  let state = (Math.imul(seed | 0, 0x9e3779b1) ^ 0x6d2b79f5) | 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return Math.imul(state, 0x2545f491) >>> 0;
  };
  const below = (count: number): number => Math.floor((next() / 4294967296) * count);
  return {
    below,
    shuffle(list) {
      for (let at = list.length - 1; at > 0; at--) {
        const with_ = below(at + 1);
        const held = list[at]!;
        list[at] = list[with_]!;
        list[with_] = held;
      }
      return list;
    },
  };
}
