import fc from 'fast-check';
import { expect, test } from 'vitest';
import { InputError } from '../../../planner/errors.ts';
import { addressOf, readAddress } from '../../../renderer/app/address.ts';
import { findIn } from '../../../renderer/app/find.ts';
import { helpOf } from '../../../renderer/app/help.ts';
import { cautionIds, cautionText } from '../../../renderer/cautions/caution-texts.ts';
import { failureOf, faultsAt } from '../../../renderer/client/failure.ts';
import { roundLength_m } from '../../../renderer/draw/round-length.ts';
import { extentOf, scaleTo } from '../../../renderer/draw/scale.ts';
import { zoomed } from '../../../renderer/draw/use-pan-zoom.ts';
import { familyMark } from '../../../renderer/look/family-mark.tsx';
import { readLook } from '../../../renderer/look/theme.ts';
import { readRemembered } from '../../../renderer/table/remembered.ts';
import file from '../../../resources/cautions.json' with { type: 'json' };

const metres = fc.double({ min: -500, max: 500, noNaN: true });

test('the scale goes there and back, and keeps shapes', () => {
  fc.assert(
    fc.property(
      metres,
      metres,
      fc.double({ min: 0.5, max: 400, noNaN: true }),
      fc.double({ min: 0.5, max: 400, noNaN: true }),
      (x, y, wide, high) => {
        const scale = scaleTo({ minX_m: x, minY_m: y, maxX_m: x + wide, maxY_m: y + high }, { width: 800, height: 500 });
        const back = scale.back({ x: scale.x(x + wide / 3), y: scale.y(y + high / 4) });
        expect(back.x_m).toBeCloseTo(x + wide / 3, 6);
        expect(back.y_m).toBeCloseTo(y + high / 4, 6);
        expect(scale.x(x + 1) - scale.x(x)).toBeCloseTo(scale.y(y) - scale.y(y + 1), 6);
        expect(scale.x(x)).toBeGreaterThanOrEqual(23.999);
        expect(scale.y(y + high)).toBeGreaterThanOrEqual(23.999);
      },
    ),
  );
});

test('zooming leaves the point under the pointer where it is', () => {
  const extent = { minX_m: 0, minY_m: 0, maxX_m: 40, maxY_m: 20 };
  const about = { x_m: 30, y_m: 5 };
  const nearer = zoomed(extent, 0.5, about);
  expect((about.x_m - nearer.minX_m) / (nearer.maxX_m - nearer.minX_m)).toBeCloseTo(0.75, 9);
  expect((about.y_m - nearer.minY_m) / (nearer.maxY_m - nearer.minY_m)).toBeCloseTo(0.25, 9);
});

test('the extent of no point is none', () => {
  expect(extentOf([])).toBeUndefined();
});

test('a scale bar is a round figure in the reader’s unit and fits', () => {
  expect(roundLength_m(7.3, 'metric')).toBe(5);
  expect(roundLength_m(0.23, 'metric')).toBeCloseTo(0.2, 9);
  expect(roundLength_m(7.3, 'us') / 0.3048).toBeCloseTo(20, 9);
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 900, noNaN: true }),
      fc.constantFrom('us' as const, 'metric' as const),
      (room, system) => {
        const length = roundLength_m(room, system);
        expect(length).toBeLessThanOrEqual(room * 1.000001);
        expect(length).toBeGreaterThan(room / 10);
      },
    ),
  );
});

test('an address names the place, and the open farm stays in it', () => {
  const here = 'http://127.0.0.1:4000/beds?farm=2&bed=b1';
  expect(readAddress(here).place).toBe('beds');
  expect(addressOf('water', { line: 'w1', none: undefined }, here)).toBe('/water?farm=2&line=w1');
  expect(readAddress('http://127.0.0.1:4000/nowhere').place).toBe('week');
});

test('what begins with the typed words comes first', () => {
  const finding = (title: string, kind = 'Bed') => ({ id: title, kind, title, detail: '', go: () => undefined });
  const all = [
    finding('AB-1'),
    finding('Cabbage', 'Crop'),
    finding('B-1'),
    finding('B-10'),
    finding('Bed B-1 lining', 'Material'),
  ];
  expect(findIn(all, 'b-1').map((each) => each.title)).toEqual(['B-1', 'B-10', 'Bed B-1 lining', 'AB-1']);
  expect(findIn(all, 'crop').map((each) => each.title)).toEqual(['Cabbage']);
  expect(findIn(all, 'zzz')).toEqual([]);
  for (const slip of ['cabbge', 'cabbagee', 'cabbege', 'cabbaeg'])
    expect(
      findIn(all, slip).map((each) => each.title),
      slip,
    ).toEqual(['Cabbage']);
  expect(findIn(all, 'cbbaeg')).toEqual([]);
  expect(findIn(all, 'b-2')).toEqual([]);
});

test('what the program answers becomes faults by field', () => {
  const refused = failureOf({
    data: { bedwright: { code: 'input', message: 'No.', faults: [{ path: 'beds.0.depth_m', code: 'x', message: 'Too deep.' }] } },
  });
  expect(faultsAt(refused.faults, 'beds.0').map((fault) => fault.message)).toEqual(['Too deep.']);
  expect(faultsAt(refused.faults, 'beds')).toHaveLength(1);
  expect(faultsAt(refused.faults, 'bed')).toHaveLength(0);
  expect(failureOf(new InputError([{ path: 'a', code: 'b', message: 'c' }])).faults).toHaveLength(1);
  expect(failureOf(new TypeError('Failed to fetch')).message).toContain('does not answer');
});

test('no two of the first 32 families are shown alike', () => {
  const marks = Array.from({ length: 32 }, (_, at) => JSON.stringify(familyMark(at)));
  expect(new Set(marks).size).toBe(32);
});

test('a damaged memory of a table counts as none', () => {
  expect(readRemembered('{"hidden":')).toEqual({});
  expect(readRemembered('{"hidden":{"a":true},"sort":[{"id":"b"},3]}')).toEqual({
    hidden: { a: true },
    sort: [{ id: 'b', desc: false }],
  });
  expect(readLook('purple', 'high')).toEqual({ theme: 'system', contrast: 'high' });
  expect(readLook('dark normal', 'high')).toEqual({ theme: 'dark', contrast: 'normal' });
});

test('every caution has its text, whom it defers to and its source, and is in the help of the places that show it', () => {
  expect(cautionIds).toHaveLength(30);
  for (const id of cautionIds) {
    const { text, defer, source, severity } = cautionText(id);
    expect([id, text.length > 20, defer.length > 10, source.length > 5]).toEqual([id, true, true, true]);
    expect(['stop', 'guard', 'note']).toContain(severity);
  }
  const places = {
    Beds: 'beds',
    Soil: 'soil',
    Water: 'water',
    Season: 'season',
    'This week': 'week',
    Orders: 'orders',
    Harvest: 'harvest',
    Costs: 'costs',
    Library: 'library',
  } as const;
  for (const [title, ids] of Object.entries(file.places)) {
    const named = helpOf[places[title as keyof typeof places]].cautions;
    const missing = ids.filter((id) => !named.includes(id));
    expect(title === 'Season' || title === 'This week' ? [] : missing, title).toEqual([]);
  }
  const shown = new Set(Object.values(helpOf).flatMap((help) => help.cautions));
  expect(cautionIds.filter((id) => !shown.has(id))).toEqual([]);
});
