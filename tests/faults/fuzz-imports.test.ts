import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createApp } from '../../api/http/app.ts';
import { router } from '../../api/router.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import { inputsTried, loopRound } from './inputs-tried.ts';

/** Files each importer gets in `npm test`; `npm run fuzz` gives it more. */
const RUNS = Number(process.env['FUZZ'] ?? 40);
const SEED = Number(process.env['FUZZ_SEED'] ?? 7);

let t: TestProgram;
let app: ReturnType<typeof createApp>;
const tried = inputsTried('imports');
beforeAll(() => {
  t = aProgram({ beds: 8, years: 1 });
  app = createApp({ program: t.program, pages: t.folder });
});
afterAll(async () => {
  tried.tell();
  await t.end();
});

const nasty = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.constantFrom(
      '',
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
      '-1',
      'n/a',
      'NaN',
      'Infinity',
      '1e400',
      '2026-02-30',
      '💧',
      '__proto__',
    ),
  },
  { weight: 1, arbitrary: fc.string({ maxLength: 20 }) },
);
const csvCell = (text: string) => fc.constantFrom(text, `"${text.replaceAll('"', '""')}"`);
const torn = nasty.chain((text) => fc.constantFrom(text, `"${text.replaceAll('"', '""')}"`, `"${text}`));
const newline = fc.constantFrom('\n', '\r\n', '\r');

type Sound = Readonly<Record<string, string>>;

/** A table as the importer wants it, with now and then a cell, a row, the head or the line ends spoilt. */
function tables(sound: fc.Arbitrary<Sound>, head: readonly string[]): fc.Arbitrary<string> {
  const headLine = fc.oneof(
    { weight: 20, arbitrary: fc.constant(head.join(',')) },
    { weight: 1, arbitrary: fc.shuffledSubarray([...head]).map((some) => some.join(',')) },
    { weight: 1, arbitrary: fc.constant(head.join(';')) },
    { weight: 1, arbitrary: fc.constant([...head, ...head].join(',')) },
    { weight: 1, arbitrary: fc.string() },
  );
  const rightRow = sound.chain((row) =>
    fc.tuple(
      ...head.map((name) => fc.oneof({ weight: 60, arbitrary: csvCell(row[name] ?? '') }, { weight: 1, arbitrary: torn })),
    ),
  );
  const row = fc
    .oneof(
      { weight: 24, arbitrary: rightRow },
      { weight: 1, arbitrary: fc.array(torn, { maxLength: 12 }) },
      { weight: 1, arbitrary: fc.array(torn, { minLength: head.length, maxLength: head.length }) },
    )
    .map((cells) => cells.join(','));
  return fc
    .tuple(fc.constantFrom('', '\uFEFF'), headLine, fc.array(row, { maxLength: 6 }), newline)
    .map(([mark, first, rows, end]) => mark + [first, ...rows].join(end));
}

/** One of each column's words, whatever the others say. */
const anyOf = (words: Readonly<Record<string, readonly string[]>>): fc.Arbitrary<Sound> =>
  fc.record(Object.fromEntries(Object.entries(words).map(([name, list]) => [name, fc.constantFrom(...list)])));

const soilSheet = {
  date: ['2026-10-20', '2025-03-01'],
  sample: ['7', 'north', ''],
  beds: ['A-01', 'A-02; B-01', 'D', ''],
  method: ['mehlich-3', 'Mehlich 3', 'olsen'],
  pH: ['6.4', '7', '5.85', ''],
  'OM %': ['4.2', '3', ''],
  'P ppm': ['40', '12.5', ''],
  'K (lb/acre)': ['210', '95', ''],
};
const soilFiles = tables(anyOf(soilSheet), Object.keys(soilSheet)).map((csv) => ({ csv }));

const priceLine = {
  supplier: ['Tidewrack Soil Yard (invented)', 'mill lane hardware (invented)'],
  material: ['Feather meal', 'Alfalfa meal', 'Blood meal'],
  package: ['25 kg', 'small bag', 'Sack'],
  holds: ['25 kg', '50 lb', '2.5 kg'],
  price: ['41.50', '$12', '0.99 USD'],
  minimum: ['', '1', '10'],
  weight: ['', '26 kg'],
  priced: ['2026-10-20', ''],
};
const offerFiles = tables(anyOf(priceLine), Object.keys(priceLine)).map((csv) => ({ csv }));

/** Lines of plantings that stood in their beds on the day, as the farm knows them. */
function harvestFiles(): fc.Arbitrary<unknown> {
  const standing = t.farm.sqlite
    .prepare<[], { readonly crop: string; readonly bed: string; readonly unit: string; readonly day: string }>(
      `SELECT c.name AS crop, b.code AS bed, p.yield_unit AS unit, coalesce(p.cleared_actual, p.clear_date) AS day
       FROM planting p JOIN crop c ON c.id = p.crop_id JOIN planting_bed pb ON pb.planting_id = p.id JOIN bed b ON b.id = pb.bed_id
       WHERE p.season_id = 'season-2026' AND day <= '2026-11-20'`,
    )
    .all();
  const line = fc
    .tuple(fc.constantFrom(...standing), fc.constantFrom('1.2', '3', '0.25'), fc.constantFrom('', '12'))
    .map(([{ crop, bed, unit, day }, amount, minutes]): Sound => ({ date: day, bed, crop, amount, unit, minutes }));
  return tables(line, ['date', 'bed', 'crop', 'amount', 'unit', 'grade', 'minutes', 'note']).map((text) => ({ text }));
}

const number = fc.oneof(fc.double({ min: -180, max: 180, noNaN: true }), fc.constantFrom(1e9, -1e9, 0, 90, 91, null, 'x'));
/** A closed rectangle of some metres. */
const plot = fc
  .tuple(fc.double({ min: -122.31, max: -122.29, noNaN: true }), fc.double({ min: 47.59, max: 47.61, noNaN: true }))
  .map(([x, y]) => [
    [x, y],
    [x + 2e-5, y],
    [x + 2e-5, y + 5e-5],
    [x, y + 5e-5],
    [x, y],
  ]);
const ring = fc.oneof(
  { weight: 12, arbitrary: plot },
  {
    weight: 2,
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
  { weight: 16, arbitrary: ring.map((one) => ({ type: 'Polygon', coordinates: [one] })) },
  { weight: 1, arbitrary: fc.array(ring, { maxLength: 3 }).map((rings) => ({ type: 'Polygon', coordinates: rings })) },
  { weight: 2, arbitrary: ring.map((one) => ({ type: 'MultiPolygon', coordinates: [[one]] })) },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      null,
      {},
      { type: 'Point', coordinates: [0, 0] },
      { type: 'Polygon' },
      { type: 'Polygon', coordinates: 'x' },
    ),
  },
);
const feature = fc.record({
  type: fc.oneof({ weight: 20, arbitrary: fc.constant('Feature') }, { weight: 1, arbitrary: fc.constant('Thing') }),
  geometry,
  properties: fc.oneof(
    { weight: 3, arbitrary: fc.constant(null) },
    { weight: 1, arbitrary: fc.dictionary(fc.constantFrom('code', 'name', 'kind', '__proto__'), nasty) },
  ),
});
const geoJson = fc.oneof(
  {
    weight: 12,
    arbitrary: fc
      .record({
        type: fc.oneof(
          { weight: 16, arbitrary: fc.constant('FeatureCollection') },
          { weight: 1, arbitrary: fc.constantFrom('Feature', 'Nothing') },
        ),
        features: fc.array(feature, { maxLength: 4 }),
      })
      .map((value) => JSON.stringify(value)),
  },
  { weight: 1, arbitrary: fc.json() },
  { weight: 1, arbitrary: fc.constantFrom('', '{', '[]', 'null', '{"type":"FeatureCollection"}', '['.repeat(5000)) },
);
const weatherLine = fc
  .tuple(
    fc.oneof({ weight: 40, arbitrary: fc.constant('USW00024233') }, { weight: 1, arbitrary: fc.constant('X') }),
    fc.oneof(
      { weight: 20, arbitrary: fc.constantFrom('20121105', '20121106') },
      { weight: 1, arbitrary: fc.constantFrom('20120230', 'x') },
    ),
    fc.oneof(
      { weight: 10, arbitrary: fc.constantFrom('TMAX', 'TMIN', 'PRCP', 'AWND') },
      { weight: 1, arbitrary: fc.constant('ZZZZ') },
    ),
    fc.oneof(
      { weight: 20, arbitrary: fc.constantFrom('128', '61', '-9999') },
      { weight: 1, arbitrary: fc.constantFrom('', 'x', '99999') },
    ),
    fc.constantFrom('', 'T', 'X'),
    fc.constantFrom('', 'G', 'I'),
    fc.constantFrom('W', ''),
    fc.constantFrom('2400', ''),
  )
  .map((cells) => cells.join(','));
const daily = {
  date: ['2025-06-01', '2025-06-02', '2025-06-03', '2024-02-29'],
  precipitation: ['0', '3.4', ''],
  temp_max: ['24.1', '31', ''],
  temp_min: ['11', '-2.5', ''],
  wind: ['2.1', ''],
};
const station = {
  STATION: ['USW00024233'],
  DATE: ['2025-06-01', '2025-06-02'],
  TMAX: ['24.1', '18'],
  TMIN: ['9', '11.5'],
  PRCP: ['0', '12.2'],
};
const weather = fc.oneof(
  fc.array(weatherLine, { maxLength: 20 }).map((lines) => lines.join('\n')),
  tables(anyOf(daily), Object.keys(daily)),
  tables(anyOf(station), Object.keys(station)),
);
const stationFields = {
  name: 'By the shed (invented)',
  latitude_deg: 47.6,
  longitude_deg: -122.3,
  elevation_m: 20,
  windHeight_m: 2,
  source: 'invented',
};

type Door = keyof (typeof router)['_def']['record'] & string;

const importers: readonly (readonly [door: `${Door}.${string}`, files: () => fc.Arbitrary<unknown>])[] = [
  ['soilTests.lookIntoFile', () => soilFiles],
  ['soilTests.importFile', () => soilFiles],
  ['harvest.importAll', harvestFiles],
  ['suppliers.lookIntoOffers', () => offerFiles],
  ['suppliers.importOffers', () => offerFiles],
  ['beds.checkGeoJson', () => geoJson.map((text) => ({ text, firstCode: 'G-01' }))],
  [
    'beds.importGeoJson',
    () =>
      geoJson.map((text) => ({
        text,
        firstCode: 'G-01',
        designId: 'design-frame',
        block: { blockId: 'block-a', newBlock: { code: '', name: '' } },
        builtDate: '2026-11-25',
      })),
  ],
  ['weather.preview', () => weather.map((text) => ({ text, latitude_deg: 47.6 }))],
  [
    'weather.importFile',
    () =>
      fc
        .tuple(weather, fc.boolean(), fc.boolean())
        .map(([text, fill, skipFaults]) => ({ text, stationId: null, station: stationFields, fill, skipFaults })),
  ],
];

type Said = { readonly error?: { readonly message: string; readonly data: { readonly bedwright?: { readonly code: string } } } };

/** Rows of the tables that imports write to, so that a refused file is seen to have written nothing. */
const counted = () =>
  ['soil_test', 'soil_test_value', 'harvest', 'harvest_lot', 'offer', 'bed', 'weather_day'].map((table) =>
    t.farm.sqlite.prepare(`SELECT count(*) FROM ${table}`).pluck().get(),
  );

describe('every importer, given files right and wrong', () => {
  test.each(importers)(
    '%s takes the whole file or nothing, and says why',
    { timeout: 120_000 + RUNS * 3000 },
    async (name, files) => {
      expect(name in router._def.procedures).toBe(true);
      let taken = 0;
      await fc.assert(
        fc.asyncProperty(files(), async (input) => {
          const before = counted();
          const answer = await app.fetch(
            new Request(`http://program/trpc/${name}?batch=1`, {
              method: 'POST',
              headers: { 'content-type': 'application/json' },
              body: JSON.stringify({ 0: input }),
            }),
          );
          const text = await answer.text();
          await loopRound();
          expect(text).not.toMatch(/\n\s+at |node_modules|\.ts:\d/);
          const [said] = JSON.parse(text) as Said[];
          tried.add(name, said?.error?.data.bedwright?.code);
          if (said?.error === undefined) {
            taken += 1;
            return;
          }
          const code = said.error.data.bedwright?.code;
          expect(code, `${said.error.message} ${code === 'bug' ? t.logged.at(-1) : ''}`).not.toBe('bug');
          expect(said.error.message.length).toBeGreaterThan(0);
          expect(counted()).toEqual(before);
        }),
        { numRuns: RUNS, seed: SEED },
      );
      // else nothing but the first check was tried
      expect(taken).toBeGreaterThan(RUNS / 8);
      expect(taken).toBeLessThan(RUNS);
    },
  );
});
