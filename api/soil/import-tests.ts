import { parse } from 'csv-parse/sync';
import { type Fault, InputError } from '../../planner/errors.ts';
import { testUnits } from '../../planner/fertility/test-value.ts';
import { rowsOfTest, type SoilTestRows, soilTestInput } from './test-input.ts';

type Info = { readonly record: Readonly<Record<string, string>>; readonly info: { readonly lines: number } };

/** Columns that a sheet may have, by the words laboratories write. */
const heads: Readonly<Record<string, string>> = {
  date: 'date',
  sampled: 'date',
  laboratory: 'laboratory',
  lab: 'laboratory',
  sample: 'sample',
  'sample id': 'sample',
  bed: 'beds',
  beds: 'beds',
  kind: 'kind',
  method: 'method',
  texture: 'texture',
  ph: 'ph',
  'soil ph': 'ph',
  'buffer ph': 'bufferPh',
  buffer_ph: 'bufferPh',
  'buffer method': 'bufferMethod',
  buffer_method: 'bufferMethod',
  om: 'om',
  'om %': 'om',
  'om (%)': 'om',
  'organic matter': 'om',
  'organic matter %': 'om',
  om_pct: 'om',
  cec: 'cec',
  ec: 'ec',
  'soluble salts': 'ec',
  lead: 'lead',
  pb: 'lead',
  note: 'note',
  unit: 'unit',
};
/** `P`, `K (lb/acre)`, `Ca ppm`, `NO3-N mg/kg`. */
const nutrientHead =
  /^(P|K|Ca|Mg|S|Na|N|NO3-?N|B|Zn|Mn|Fe|Cu)(?:\s*\(?\s*(mg\/kg|ppm|lb\/acre|lb\/ac|lbs\/acre|kg\/ha|meq\/100g|meq\/100 g|mg\/L|%)\s*\)?)?$/i;
const nutrientNames: Readonly<Record<string, string>> = {
  ca: 'Ca',
  mg: 'Mg',
  na: 'Na',
  zn: 'Zn',
  mn: 'Mn',
  fe: 'Fe',
  cu: 'Cu',
  'no3-n': 'NO3N',
  no3n: 'NO3N',
};

const unitOf = (text: string | undefined): (typeof testUnits)[number] => {
  const word = (text ?? 'ppm').toLowerCase().replaceAll(' ', '');
  const plain = word === 'lbs/acre' || word === 'lb/ac' ? 'lb/acre' : word;
  return testUnits.find((unit) => unit.toLowerCase() === plain) ?? 'ppm';
};

type Column = { readonly field: string } | { readonly nutrient: string; readonly unit: (typeof testUnits)[number] };

function columnOf(head: string): Column | null {
  const field = heads[head.trim().toLowerCase()];
  if (field !== undefined) return { field };
  const nutrient = nutrientHead.exec(head.trim());
  if (nutrient === null) return null;
  const name = nutrient[1] ?? '';
  return { nutrient: nutrientNames[name.toLowerCase()] ?? name.toUpperCase(), unit: unitOf(nutrient[2]) };
}

/** What a file of sheets would bring, before anything is written. */
export type ReadSheets = {
  readonly tests: readonly SoilTestRows[];
  readonly faults: readonly Fault[];
  readonly columns: readonly string[];
  readonly unread: readonly string[];
};

/**
 * Reads many laboratory sheets from CSV, one sample a line; `beds` holds bed codes parted by spaces or semicolons, and a
 * block's code stands for its beds. Checked whole: each fault with line and column; nothing is written while there is one.
 */
export function readTestSheets(csv: string, bedIds: ReadonlyMap<string, readonly string[]>): ReadSheets {
  let records: Info[];
  try {
    records = parse(csv, {
      columns: true,
      bom: true,
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      trim: true,
    }) as Info[];
  } catch (error) {
    const message = error instanceof Error ? error.message : 'The file cannot be read.';
    throw new InputError([{ path: 'csv', code: 'not-csv', message: `This is no CSV file: ${message}` }]);
  }
  const names = Object.keys(records[0]?.record ?? {});
  if (records.length === 0)
    throw new InputError([{ path: 'csv', code: 'empty', message: 'There is no line with a sample in this file.' }]);
  const columns = new Map(
    names.flatMap((name) => {
      const column = columnOf(name);
      return column === null ? [] : [[name, column] as const];
    }),
  );
  const faults: Fault[] = [];
  const tests = records.flatMap(({ record, info }): SoilTestRows[] => {
    const read = readRecord(record, columns, bedIds, info.lines);
    if ('faults' in read) {
      faults.push(...read.faults);
      return [];
    }
    return [read.rows];
  });
  return { tests, faults, columns: [...columns.keys()], unread: names.filter((name) => !columns.has(name)) };
}

function readRecord(
  record: Readonly<Record<string, string>>,
  columns: ReadonlyMap<string, Column>,
  bedIds: ReadonlyMap<string, readonly string[]>,
  line: number,
): { readonly rows: SoilTestRows } | { readonly faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const fault = (column: string, message: string) =>
    faults.push({ path: `line ${line}, ${column}`, code: 'import', message: `Line ${line}, ${column}: ${message}` });
  const cell = (field: string) => {
    for (const [name, column] of columns)
      if ('field' in column && column.field === field && (record[name] ?? '') !== '') return { name, text: record[name] ?? '' };
    return null;
  };
  const number = (field: string, factor = 1): number | null => {
    const found = cell(field);
    if (found === null) return null;
    const value = Number(found.text.replace('%', ''));
    if (!Number.isFinite(value)) fault(found.name, `"${found.text}" is no number.`);
    return Number.isFinite(value) ? value * factor : null;
  };
  const values = [...columns].flatMap(([name, column]) => {
    if (!('nutrient' in column) || (record[name] ?? '') === '') return [];
    const value = Number(record[name]);
    if (!Number.isFinite(value)) fault(name, `"${record[name]}" is no number.`);
    return Number.isFinite(value) ? [{ nutrient: column.nutrient, value, unit: column.unit }] : [];
  });
  const codes = (cell('beds')?.text ?? '').split(/[;,\s]+/).filter((code) => code !== '');
  const beds = codes.flatMap((code) => {
    const found = bedIds.get(code.toUpperCase());
    if (found === undefined) fault(cell('beds')?.name ?? 'beds', `there is no bed or block ${code}.`);
    return found ?? [];
  });
  const kind = (cell('kind')?.text ?? 'soil').toLowerCase().startsWith('m') ? 'media' : 'soil';
  const bufferPh = number('bufferPh');
  const parsed = soilTestInput.safeParse({
    date: cell('date')?.text ?? '',
    laboratory: cell('laboratory')?.text ?? '',
    sample: cell('sample')?.text ?? '',
    kind,
    method: (cell('method')?.text ?? (kind === 'media' ? 'saturated-paste' : 'mehlich-3')).toLowerCase().replaceAll(' ', '-'),
    depth_m: null,
    texture: cell('texture')?.text ?? null,
    ph: number('ph'),
    bufferPh,
    bufferMethod: bufferPh === null ? null : (cell('bufferMethod')?.text.toLowerCase() ?? null),
    organicMatterShare: number('om', 0.01),
    cec_meq_per_100g: number('cec'),
    ec_dS_per_m: number('ec'),
    lead_mg_per_kg: number('lead'),
    note: cell('note')?.text ?? '',
    values,
    bedIds: beds,
  });
  if (!parsed.success) for (const issue of parsed.error.issues) fault(issue.path.join('.'), issue.message);
  if (faults.length > 0 || !parsed.success) return { faults };
  try {
    return { rows: rowsOfTest(parsed.data) };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return {
      faults: error.faults.map((each) => ({
        ...each,
        path: `line ${line}, ${each.path}`,
        message: `Line ${line}: ${each.message}`,
      })),
    };
  }
}
