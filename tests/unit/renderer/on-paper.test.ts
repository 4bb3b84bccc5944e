import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { M_PER_FOOT } from '../../../planner/units/constants.ts';
import type { BedRow } from '../../../renderer/places/beds/bed-types.ts';
import { bedShapes, carriesCode, paperShapes } from '../../../renderer/places/beds/site-shapes.ts';
import { cameraFor, siteExtent } from '../../../renderer/places/beds/site-view.ts';
import { boardLines } from '../../../renderer/places/season/board-lines.ts';
import { boardSheets, SHEET_PX, sheetEnds } from '../../../renderer/places/season/board-sheets.ts';
import { paperOf, roomOn } from '../../../renderer/print/paper.ts';
import { aPlanBed, day } from '../../builders/a-plan.ts';

describe('the paper', () => {
  test('is Letter where the country has it, A4 elsewhere, by the units where no country is named', () => {
    const paper = (system: 'us' | 'metric', locale: string) => paperOf({ system, locale });
    expect(paper('us', 'en-US')).toBe('letter');
    expect(paper('metric', 'en-CA')).toBe('letter');
    expect(paper('metric', 'de-DE')).toBe('a4');
    expect(paper('us', 'en-GB')).toBe('a4');
    expect([paper('us', 'en'), paper('metric', 'en')]).toEqual(['letter', 'a4']);
  });
  test('has as much room across as its long side, less the margins', () => {
    // A4 is 297 by 210 mm (ISO 216); margins of half an inch at each side
    expect(roomOn('a4', true).width).toBe(Math.floor((297 / 25.4 - 1) * 96));
    expect(roomOn('a4', true).height).toBeLessThan(roomOn('a4', false).height);
  });
});

describe('the season board on sheets', () => {
  const blocks = ['A', 'B', 'C'].map((code) => ({ blockId: code, code, name: '' }));
  const bedsOf = (counts: readonly number[]) =>
    counts.flatMap((count, block) =>
      Array.from({ length: count }, (_, at) => {
        const blockId = blocks[block]?.blockId ?? '';
        return aPlanBed({ id: `${blockId}${at}`, code: `${blockId}-${at}`, blockId });
      }),
    );
  const room = roomOn('a4', true);

  test('every bed stands on exactly one sheet, no sheet is too high, no heading stands at a foot', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 70 }), { minLength: 3, maxLength: 3 }), (counts) => {
        const beds = bedsOf(counts);
        const sheets = boardSheets(boardLines({ beds, blocks }, []), day('2027-01-04'), day('2028-01-03'), room);
        const shown = sheets.flatMap(({ lines }) => lines.flatMap((line) => (line.kind === 'bed' ? [line.bed.code] : [])));
        expect(shown).toEqual(beds.map((bed) => bed.code));
        for (const { lines, height_px, scale } of sheets) {
          expect(height_px + SHEET_PX.head + SHEET_PX.key).toBeLessThanOrEqual(room.height);
          expect(scale.width_px + SHEET_PX.name).toBeLessThanOrEqual(room.width);
          if (beds.length > 0 && counts.every((count) => count > 0)) expect(lines.at(-1)?.kind).toBe('bed');
        }
      }),
    );
  });
  test('a block that goes on has its heading again', () => {
    const sheets = boardSheets(boardLines({ beds: bedsOf([60, 1, 1]), blocks }, []), day('2027-01-04'), day('2028-01-03'), room);
    expect(sheets[1]?.lines[0]).toMatchObject({ kind: 'block', id: 'A' });
  });
  test('a season of two years takes two sheets across that follow each other to the day', () => {
    const sheets = boardSheets(boardLines({ beds: bedsOf([1, 1, 1]), blocks }, []), day('2027-01-04'), day('2029-01-01'), room);
    expect(sheets).toHaveLength(2);
    const [first, second] = sheets;
    if (first === undefined || second === undefined) throw new Error('two sheets');
    expect(second.scale.first).toBe(first.scale.last);
    expect(second.scale.x(sheetEnds(second).from)).toBeCloseTo(0, 9);
    expect(first.scale.x(sheetEnds(second).from)).toBeCloseTo(first.scale.width_px, 9);
  });
});

describe('the shapes of the site drawing', () => {
  const bed = (code: string, x_m: number): BedRow =>
    ({
      ...{ bedId: code, code, x_m, y_m: 0, turn_deg: 30, length_m: 2.4, width_m: 1.2, kind: 'framed', watering: 'drip' },
      ...{ outline: { shape: 'rectangle', length_m: 2.4, width_m: 1.2 }, isOverLimit: false, fault: null },
    }) as unknown as BedRow;
  const beds = [bed('A-1', 0), bed('A-2', 5)];
  const size = { width: 800, height: 400 };
  const view = { camera: cameraFor(siteExtent(beds, null), size), size };
  const asItLies = (each: BedRow) => each;

  test('are one outline a bed, with its code where there is room for it', () => {
    const shapes = bedShapes(view, beds, asItLies, () => false);
    expect(shapes.filter(({ kind }) => kind === 'bed')).toHaveLength(2);
    expect(shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []))).toEqual(['A-1', 'A-2']);
    const far = { camera: { ...view.camera, perMetre: 4 }, size };
    expect(beds.every((each) => carriesCode(each, 4))).toBe(false);
    expect(bedShapes(far, beds, asItLies, () => false).every(({ kind }) => kind === 'bed')).toBe(true);
  });
  test('what is heavier than its ground may bear is drawn in the ink of warning, what is chosen in that of work', () => {
    const inks = bedShapes(
      view,
      [{ ...bed('A-1', 0), isOverLimit: true }, bed('A-2', 5)],
      asItLies,
      (each) => each.code === 'A-2',
    );
    expect(inks.flatMap((shape) => (shape.kind === 'bed' ? [shape.line.ink] : []))).toEqual(['stop', 'accent']);
  });
  test('the squares of the paper are whole metres or whole feet', () => {
    const sides_m = (['metric', 'us'] as const).map((system) => {
      const [fine] = paperShapes({ camera: { x_m: 0, y_m: 0, perMetre: 40 }, size }, system);
      if (fine?.kind !== 'squares') throw new Error('squares');
      const [first = 0, second = 0] = fine.xs;
      return (second - first) / 40;
    });
    expect(sides_m[0]).toBeCloseTo(0.5, 1);
    expect(sides_m[1]).toBeCloseTo(M_PER_FOOT, 1);
  });
});
