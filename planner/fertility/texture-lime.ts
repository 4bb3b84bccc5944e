import { refuse, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { readBetween } from './between-rows.ts';
import type { TextureLimeTable } from './soil-tables.ts';

const TARGET_PH = 6.5;

/**
 * Limestone to pH 6.5 by soil pH and texture only: a rough guide for a garden without a buffer test.
 *
 *   rate = table(pH, texture), linear between the rows and to nothing at pH 6.5; below pH 4.0 the last row is held
 *
 * The first table has sandy-loam, loam and clay-loam (lb per 100 ft2), the second sand, loam and clay (lb per
 * 1,000 ft2); `loam` is read in the first. For the top 6 to 7 in of a mineral soil, never for a potting mix.
 * Source: two garden liming tables, read; both are rough.
 * @throws InputError on a texture that no table has
 */
export function textureLime_kg_per_m2(input: {
  readonly tables: readonly TextureLimeTable[];
  readonly soilPh: number;
  readonly texture: string;
}): number {
  requireRange('soilPh', input.soilPh, 2.5, 10.5, '');
  const texture = input.texture.trim().toLowerCase().replaceAll(' ', '-');
  for (const [at, table] of input.tables.entries()) {
    const rows = Object.entries(table.rows).flatMap(([ph, byTexture]) => {
      const rate = byTexture[texture];
      return rate === undefined ? [] : [[Number(ph), rate] as const];
    });
    if (rows.length === 0) continue;
    const reading = readBetween([...rows, [TARGET_PH, 0]], input.soilPh);
    return convert(at === 0 ? 10 * reading.value : reading.value, 'lb_per_1000ft2', 'kg_per_m2');
  }
  return refuse(
    'texture',
    'unknown',
    `texture: no lime table knows "${input.texture}". Use sand, sandy-loam, loam, clay-loam or clay.`,
  );
}
