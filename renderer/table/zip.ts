const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const UTF8_NAMES = 0x0800;
/** 1 January 1980, the format's first day: the same table then gives the same bytes. */
const FIRST_DAY = 0x0021;

const crcTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value >>> 0;
});

/** CRC-32 of the ZIP format (ISO 3309). The check value of "123456789" is cbf43926. */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (crcTable[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

/** A ZIP archive of text files, stored without compression (APPNOTE 6.3, method 0). */
export function zipOf(files: Readonly<Record<string, string>>): Uint8Array {
  const encoder = new TextEncoder();
  const parts: Uint8Array[] = [];
  const central: Uint8Array[] = [];
  let offset = 0;
  for (const [path, text] of Object.entries(files)) {
    const name = encoder.encode(path);
    const body = encoder.encode(text);
    const facts = [20, UTF8_NAMES, 0, 0, FIRST_DAY] as const;
    const sizes = [crc32(body), body.length, body.length] as const;
    const local = join([...words([LOCAL], 4), ...words(facts, 2), ...words(sizes, 4), ...words([name.length, 0], 2)], name);
    central.push(
      join(
        [
          ...words([CENTRAL], 4),
          ...words([20, ...facts], 2),
          ...words(sizes, 4),
          ...words([name.length, 0, 0, 0, 0], 2),
          ...words([0, offset], 4),
        ],
        name,
      ),
    );
    parts.push(local, body);
    offset += local.length + body.length;
  }
  const directory = joinAll(central);
  const end = Uint8Array.from([
    ...words([END], 4),
    ...words([0, 0, central.length, central.length], 2),
    ...words([directory.length, offset], 4),
    ...words([0], 2),
  ]);
  return joinAll([...parts, directory, end]);
}

function words(values: readonly number[], width: 2 | 4): number[] {
  return values.flatMap((value) => Array.from({ length: width }, (_, at) => (value >>> (8 * at)) & 0xff));
}

const join = (head: readonly number[], name: Uint8Array): Uint8Array => joinAll([Uint8Array.from(head), name]);

function joinAll(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((size, part) => size + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
