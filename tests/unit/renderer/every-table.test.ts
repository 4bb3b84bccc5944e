import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const places = new URL('../../../renderer/places/', import.meta.url).pathname;

/** Each table of the pages as its source draws it: its name, and whether cells are edited in it (and so filled and pasted). */
const tables = readdirSync(places, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.tsx'))
  .flatMap((file) =>
    readFileSync(places + file, 'utf8')
      .split(/<Grid\b/)
      .slice(1)
      .map((part) => ({
        file,
        name: /\bname=(?:"([^"]+)"|\{say\('([^']+)')/.exec(part)?.slice(1).find(Boolean) ?? '',
        edits: /\bonEdit=/.test(part),
      })),
  );

/** Tables without cells to edit, and why: what is worked out cannot be typed over; the others are entered elsewhere. */
const readOnly: Readonly<Record<'worked out, or read from files' | 'entered by a form or a line of entry', readonly string[]>> = {
  'worked out, or read from files': [
    'Against plan',
    'Blocks',
    'Changes of the proposal',
    'Days each bed lasts',
    'Doses of the blend',
    'Fill needs',
    'Flushing',
    'Lime and sulfur',
    'Nutrient budget',
    'Parts due',
    'Published units of sale',
    'Reservoir by year',
    'Salts by crop',
    'Seasons',
    'Stress by bed',
    'Top-ups by material',
    'Water need by bed',
    'What {group} earned',
    'Yields',
    'Backups',
    'Stock',
    'Lots on hand',
  ],
  'entered by a form or a line of entry': [
    'Applications',
    'Compost heaps',
    'Compost tea',
    'Designs',
    'Hours',
    'Movements of {row}',
    'Overheads',
    'Own units of sale',
    'Purchases',
    'Records',
    'Sales',
    'Soil tests',
    'Standing orders',
  ],
};

test('every table has a name of its own, under which its columns are remembered', () => {
  expect(tables.length).toBeGreaterThan(45);
  expect(tables.filter(({ name }) => name === '')).toEqual([]);
  expect(new Set(tables.map(({ name }) => name)).size).toBe(tables.length);
});

test('every table is edited in its cells, or the list here says why not', () => {
  const listed = Object.values(readOnly).flat();
  expect(
    tables
      .filter(({ edits }) => !edits)
      .map(({ name }) => name)
      .sort(),
  ).toEqual([...listed].sort());
});
