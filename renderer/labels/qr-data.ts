import { checkWords } from './galois.ts';

/**
 * Sizes of QR codes at error-correction level M: check words in a block, and the lengths of its data blocks.
 * ISO/IEC 18004:2015, table 9, versions 1 to 6 (from memory; compared with an independent encoder).
 */
const versions = [
  { check: 10, blocks: [16] },
  { check: 16, blocks: [28] },
  { check: 26, blocks: [44] },
  { check: 18, blocks: [32, 32] },
  { check: 24, blocks: [43, 43] },
  { check: 16, blocks: [27, 27, 27, 27] },
] as const;

const alphanumerics = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:';

export type QrData = { readonly version: number; readonly words: readonly number[] };

const bitsOf = (value: number, length: number): readonly number[] =>
  Array.from({ length }, (_, at) => (value >> (length - 1 - at)) & 1);

function payload(text: string): readonly number[] {
  if ([...text].every((sign) => alphanumerics.includes(sign))) {
    const pairs = text.match(/..?/g) ?? [];
    return [
      ...bitsOf(0b0010, 4),
      ...bitsOf(text.length, 9),
      ...pairs.flatMap((pair) => {
        const [a = 0, b] = [...pair].map((sign) => alphanumerics.indexOf(sign));
        return b === undefined ? bitsOf(a, 6) : bitsOf(a * 45 + b, 11);
      }),
    ];
  }
  const bytes = [...new TextEncoder().encode(text)];
  return [...bitsOf(0b0100, 4), ...bitsOf(bytes.length, 8), ...bytes.flatMap((byte) => bitsOf(byte, 8))];
}

/**
 * The words of a QR code for a text, with error correction M (a seventh of the code may be lost), in the smallest
 * version that holds it.
 * @throws Error for a text longer than version 6 holds (106 bytes): a label's code is short
 */
export function qrData(text: string): QrData {
  const bits = payload(text);
  const at = versions.findIndex(({ blocks }) => bits.length <= 8 * blocks.reduce<number>((sum, length) => sum + length, 0));
  const version = versions[at];
  if (version === undefined) throw new Error(`"${text}" is too long for a label's code.`);
  const total = version.blocks.reduce<number>((sum, length) => sum + length, 0);
  const padded = [...bits, ...new Array<number>(Math.min(4, 8 * total - bits.length)).fill(0)];
  while (padded.length % 8 !== 0) padded.push(0);
  const words = Array.from({ length: padded.length / 8 }, (_, word) =>
    padded.slice(8 * word, 8 * word + 8).reduce((sum, bit) => 2 * sum + bit, 0),
  );
  for (let pad = 0xec; words.length < total; pad ^= 0xec ^ 0x11) words.push(pad);
  let from = 0;
  const blocks = version.blocks.map((length) => {
    const data = words.slice(from, from + length);
    from += length;
    return { data, check: checkWords(data, version.check) };
  });
  const interleaved = (pick: (block: (typeof blocks)[number]) => readonly number[], length: number): number[] =>
    Array.from({ length }, (_, word) => blocks.flatMap((block) => pick(block)[word] ?? [])).flat();
  return {
    version: at + 1,
    words: [
      ...interleaved((block) => block.data, Math.max(...version.blocks)),
      ...interleaved((block) => block.check, version.check),
    ],
  };
}
