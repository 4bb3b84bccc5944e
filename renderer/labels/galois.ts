/** Arithmetic of GF(256) with the polynomial x^8 + x^4 + x^3 + x^2 + 1 (ISO/IEC 18004, 6.5.2, from memory). */
const exp = new Uint8Array(512);
const log = new Uint8Array(256);
for (let power = 0, value = 1; power < 255; power += 1) {
  exp[power] = value;
  exp[power + 255] = value;
  log[value] = power;
  value <<= 1;
  if (value > 255) value ^= 0x11d;
}

export const multiply = (a: number, b: number): number => (a === 0 || b === 0 ? 0 : (exp[(log[a] ?? 0) + (log[b] ?? 0)] ?? 0));

/** The generator polynomial for a number of check words, highest power first. */
function generator(words: number): readonly number[] {
  let poly = [1];
  for (let root = 0; root < words; root += 1) {
    const next = new Array<number>(poly.length + 1).fill(0);
    poly.forEach((factor, at) => {
      next[at] = (next[at] ?? 0) ^ factor;
      next[at + 1] = (next[at + 1] ?? 0) ^ multiply(factor, exp[root] ?? 0);
    });
    poly = next;
  }
  return poly;
}

/** The Reed-Solomon check words of a block: the remainder of the message over the generator. */
export function checkWords(message: readonly number[], words: number): readonly number[] {
  const poly = generator(words);
  const rest = [...message, ...new Array<number>(words).fill(0)];
  for (let at = 0; at < message.length; at += 1) {
    const factor = rest[at] ?? 0;
    if (factor === 0) continue;
    poly.forEach((each, along) => {
      rest[at + along] = (rest[at + along] ?? 0) ^ multiply(each, factor);
    });
  }
  return rest.slice(message.length);
}

/** The value of a block at each root of the generator: all zero when the block is whole. */
export function syndromes(block: readonly number[], words: number): readonly number[] {
  return Array.from({ length: words }, (_, root) => block.reduce((sum, word) => multiply(sum, exp[root] ?? 0) ^ word, 0));
}
