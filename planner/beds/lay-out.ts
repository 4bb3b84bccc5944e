import { refuse, requirePositive, requireRange, requireWhole } from '../errors.ts';
import type { Point } from './outline.ts';

export type LayOutInput = {
  readonly count: number;
  /** Beds in one row before the next begins. */
  readonly perRow: number;
  readonly length_m: number;
  readonly width_m: number;
  /** Path between the ends of two beds of a row, and between two rows. */
  readonly endPath_m: number;
  readonly sidePath_m: number;
  /** Centre of the first bed. */
  readonly first_m: Point;
  /** Turn of beds and rows, counter-clockwise. */
  readonly turn_deg: number;
};

export type LaidBed = { readonly x_m: number; readonly y_m: number; readonly turn_deg: number };

/**
 * Centres of beds laid out in rows: along a row by bed length and path, row by row by bed width and path.
 * @throws InputError naming the field
 */
export function layOutBeds(input: LayOutInput): readonly LaidBed[] {
  requireWhole('count', input.count, 1, 2000);
  requireWhole('perRow', input.perRow, 1, 2000);
  requirePositive('length_m', input.length_m, 'm');
  requirePositive('width_m', input.width_m, 'm');
  requireRange('endPath_m', input.endPath_m, 0, 100, 'm');
  requireRange('sidePath_m', input.sidePath_m, 0, 100, 'm');
  requireRange('turn_deg', input.turn_deg, -360, 360, '°');
  const angle = (input.turn_deg * Math.PI) / 180;
  return Array.from({ length: input.count }, (_, at) => {
    const along_m = (at % input.perRow) * (input.length_m + input.endPath_m);
    const across_m = Math.floor(at / input.perRow) * (input.width_m + input.sidePath_m);
    return {
      x_m: input.first_m[0] + along_m * Math.cos(angle) - across_m * Math.sin(angle),
      y_m: input.first_m[1] + along_m * Math.sin(angle) + across_m * Math.cos(angle),
      turn_deg: input.turn_deg,
    };
  });
}

/**
 * Codes that count on from a first one: `C-01` gives `C-01`, `C-02` … with as many digits; codes already taken are left
 * out. A first code without a number gets one.
 * @throws InputError at `firstCode`
 */
export function codesFrom(firstCode: string, count: number, taken: ReadonlySet<string>): readonly string[] {
  requireWhole('count', count, 1, 2000);
  const text = firstCode.trim();
  if (text === '' || text.length > 40) refuse('firstCode', 'empty', 'Write the first code, for instance C-01.');
  const found = /^(.*?)(\d+)(\D*)$/.exec(text);
  const [head, digits, tail] = found === null ? [`${text}-`, '01', ''] : [found[1] ?? '', found[2] ?? '1', found[3] ?? ''];
  const codes: string[] = [];
  for (let number = Number(digits); codes.length < count; number += 1) {
    const code = head + String(number).padStart(digits.length, '0') + tail;
    if (!taken.has(code)) codes.push(code);
  }
  return codes;
}
