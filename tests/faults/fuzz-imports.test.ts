import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../api/http/app.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

/** Files each importer gets in `npm test`; `FUZZ=450 FUZZ_SEED=1` for a long night. */
const RUNS = Number(process.env['FUZZ'] ?? 40);
const SEED = Number(process.env['FUZZ_SEED'] ?? 7);

let t: TestProgram;
let app: ReturnType<typeof createApp>;
beforeAll(() => {
  t = aProgram({ beds: 8, years: 1 });
  app = createApp({ program: t.program, pages: t.folder });
});
afterAll(() => t.end());

const cell = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.constantFrom(
      '2026-10-20',
      'A-01',
      'Carrot',
      '2.5',
      'kg',
      'Feather meal',
      'Tidewrack Soil Yard (invented)',
      '25 kg',
      '41.50',
      '6.4',
      '120',
      '',
      'D-01',
      'mehlich-3',
      '20121105',
      'TMAX',
      '-9999',
      '12.8',
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      '1,234',
      '1,5',
      '=SUM(A1)',
      '"',
      '""',
      'a"b',
      '\r',
      '\n',
      ';',
      '\t',
      '\u0000',
      '\uFEFF',
      '9'.repeat(400),
      '-',
      'n/a',
      'NaN',
      'Infinity',
      '1e400',
      '2026-02-30',
      '💧',
    ),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 20 }) },
);
const quoted = cell.chain((text) => fc.constantFrom(text, `"${text.replaceAll('"', '""')}"`, `"${text}`));
const newline = fc.constantFrom('\n', '\r\n', '\r');

/** A table whose head line is mostly right, and whose rows are mostly of the right length. */
function tables(head: readonly string[]): fc.Arbitrary<string> {
  const headLine = fc.oneof(
    { weight: 6, arbitrary: fc.constant(head.join(',')) },
    { weight: 1, arbitrary: fc.shuffledSubarray([...head]).map((some) => some.join(',')) },
    { weight: 1, arbitrary: fc.constant(head.join(';')) },
    { weight: 1, arbitrary: fc.string() },
  );
  const row = fc
    .oneof(
      { weight: 5, arbitrary: fc.array(quoted, { minLength: head.length, maxLength: head.length }) },
      { weight: 1, arbitrary: fc.array(quoted, { maxLength: 12 }) },
    )
    .map((cells) => cells.join(','));
  return fc
    .tuple(fc.constantFrom('', '\uFEFF'), headLine, fc.array(row, { maxLength: 6 }), newline)
    .map(([mark, first, rows, end]) => mark + [first, ...rows].join(end));
}

const number = fc.oneof(fc.double({ min: -180, max: 180, noNaN: true }), fc.constantFrom(1e9, -1e9, 0, 90, 91, null, 'x'));
const ring = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .array(
        fc.tuple(fc.double({ min: -122.31, max: -122.29, noNaN: true }), fc.double({ min: 47.59, max: 47.61, noNaN: true })),
        { maxLength: 8 },
      )
      .map((points) => [...points, ...points.slice(0, 1)]),
  },
  { weight: 1, arbitrary: fc.array(fc.array(number, { maxLength: 4 }), { maxLength: 6 }) },
);
const geometry = fc.oneof(
  ring.map((one) => ({ type: 'Polygon', coordinates: [one] })),
  fc.array(ring, { maxLength: 3 }).map((rings) => ({ type: 'Polygon', coordinates: rings })),
  ring.map((one) => ({ type: 'MultiPolygon', coordinates: [[one]] })),
  fc.constantFrom(null, {}, { type: 'Point', coordinates: [0, 0] }, { type: 'Polygon' }, { type: 'Polygon', coordinates: 'x' }),
);
const feature = fc.record({
  type: fc.constantFrom('Feature', 'Thing'),
  geometry,
  properties: fc.oneof(fc.constant(null), fc.dictionary(fc.constantFrom('code', 'name', 'kind', '__proto__'), cell)),
});
const geoJson = fc.oneof(
  {
    weight: 6,
    arbitrary: fc
      .record({ type: fc.constantFrom('FeatureCollection', 'Feature', 'Nothing'), features: fc.array(feature, { maxLength: 4 }) })
      .map((value) => JSON.stringify(value)),
  },
  { weight: 1, arbitrary: fc.json() },
  { weight: 1, arbitrary: fc.constantFrom('', '{', '[]', 'null', '{"type":"FeatureCollection"}', '['.repeat(5000)) },
);
const weatherLine = fc
  .tuple(
    fc.constantFrom('USW00024233', 'X'),
    fc.constantFrom('20121105', '20120230', 'x'),
    fc.constantFrom('TMAX', 'TMIN', 'PRCP', 'AWND', 'ZZZZ'),
    fc.constantFrom('128', '-9999', '', 'x', '99999'),
    fc.constantFrom('', 'T', 'X'),
    fc.constantFrom('', 'G', 'I'),
    fc.constantFrom('W', ''),
    fc.constantFrom('2400', ''),
  )
  .map((cells) => cells.join(','));
const weather = fc.oneof(
  fc.array(weatherLine, { maxLength: 20 }).map((lines) => lines.join('\n')),
  tables(['date', 'precipitation', 'temp_max', 'temp_min', 'wind']),
  tables(['STATION', 'DATE', 'TMAX', 'TMIN', 'PRCP']),
);

const importers: readonly (readonly [procedure: string, input: fc.Arbitrary<unknown>])[] = [
  [
    'soilTests.lookIntoFile',
    tables(['date', 'sample', 'beds', 'method', 'pH', 'buffer pH', 'OM %', 'P ppm', 'K (lb/acre)']).map((csv) => ({ csv })),
  ],
  [
    'soilTests.importFile',
    tables(['date', 'sample', 'beds', 'method', 'pH', 'buffer pH', 'OM %', 'P ppm', 'K (lb/acre)']).map((csv) => ({ csv })),
  ],
  ['harvest.importAll', tables(['date', 'bed', 'crop', 'amount', 'unit', 'grade', 'minutes', 'note']).map((text) => ({ text }))],
  [
    'suppliers.lookIntoOffers',
    tables(['supplier', 'material', 'package', 'holds', 'price', 'minimum', 'weight', 'priced']).map((csv) => ({ csv })),
  ],
  [
    'suppliers.importOffers',
    tables(['supplier', 'material', 'package', 'holds', 'price', 'minimum', 'weight', 'priced']).map((csv) => ({ csv })),
  ],
  ['beds.checkGeoJson', geoJson.map((text) => ({ text, firstCode: 'G-01' }))],
  [
    'beds.importGeoJson',
    geoJson.map((text) => ({
      text,
      firstCode: 'G-01',
      designId: 'design-frame',
      block: { kind: 'existing', blockId: 'block-a' },
      builtDate: '2026-11-25',
    })),
  ],
  ['weather.look', weather.map((text) => ({ text, latitude_deg: 47.6 }))],
];

type Said = { readonly error?: { readonly message: string; readonly data: { readonly bedwright?: { readonly code: string } } } };

/** Rows of the tables that imports write to, so that a refused file is seen to have written nothing. */
const counted = () =>
  ['soil_test', 'soil_test_value', 'harvest', 'harvest_lot', 'offer', 'bed', 'weather_day'].map((table) =>
    t.farm.sqlite.prepare(`SELECT count(*) FROM ${table}`).pluck().get(),
  );

describe('every importer, given files right and wrong', () => {
  test.each(importers)('%s takes the whole file or nothing, and says why', { timeout: 600_000 }, async (name, files) => {
    await fc.assert(
      fc.asyncProperty(files, async (input) => {
        const before = counted();
        const answer = await app.fetch(
          new Request(`http://program/trpc/${name}?batch=1`, {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body: JSON.stringify({ 0: input }),
          }),
        );
        const text = await answer.text();
        expect(text).not.toMatch(/\n\s+at |node_modules|\.ts:\d/);
        const [said] = JSON.parse(text) as Said[];
        if (said?.error === undefined) return;
        const code = said.error.data.bedwright?.code;
        expect(code, `${said.error.message} ${code === 'bug' ? t.logged.at(-1) : ''}`).not.toBe('bug');
        expect(said.error.message.length).toBeGreaterThan(0);
        expect(counted()).toEqual(before);
      }),
      { numRuns: RUNS, seed: SEED },
    );
  });
});
