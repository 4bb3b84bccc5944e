import { parse } from 'csv-parse/sync';
import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { harvestFaults } from '../../planner/costs/harvest-check.ts';
import { lotCode } from '../../planner/costs/lot-code.ts';
import { netOfUnit_kg } from '../../planner/costs/units-of-sale.ts';

/** What the reader of a harvest file needs to know of the farm: plain data, so that a worker can have it. */
export type ImportFacts = {
  readonly today: string;
  readonly plantings: readonly {
    readonly plantingId: string;
    readonly cropId: string;
    readonly crop: string;
    readonly number: number;
    readonly inBed: string;
    readonly clear: string;
    readonly cleared: string | null;
    readonly yieldUnit: string;
    readonly yieldTypical: number | null;
    readonly beds: readonly { readonly bedId: string; readonly code: string }[];
  }[];
  readonly records: readonly (readonly [string, number])[];
  readonly units: readonly { readonly cropId: string | null; readonly unit: string; readonly net_kg: number }[];
  readonly outlets: readonly { readonly outletId: string; readonly name: string }[];
};

export type ImportedHarvest = {
  readonly date: string;
  readonly plantingId: string;
  readonly bedId: string | null;
  readonly amount: number;
  readonly unit: string;
  readonly weight_kg: number | null;
  readonly culls_kg: number;
  readonly grade: string;
  readonly outletId: string | null;
  readonly labour_min: number | null;
  readonly picker: string;
  readonly note: string;
  readonly lot: string;
};

/** A row that cannot be taken in: where in the file, and why. */
export type RowFault = { readonly line: number; readonly column: string; readonly message: string };

export type ImportReading = {
  readonly rows: readonly ImportedHarvest[];
  readonly faults: readonly RowFault[];
  readonly lines: number;
};

const columns = ['date', 'bed', 'crop', 'amount', 'unit', 'grade', 'outlet', 'culls_kg', 'minutes', 'picker', 'note'] as const;
type Column = (typeof columns)[number];

/** Columns that a harvest file must have. */
const needed: readonly Column[] = ['date', 'crop', 'amount', 'unit'];
const EVERY = 5000;

type ParsedRecord = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

/**
 * Reads a harvest file: a header line, then one harvest a line. Nothing is taken in unless every row can be; each bad row is told
 * with its line and column.
 * @param taken lot codes that the farm has given already
 */
export function readHarvestCsv(
  text: string,
  facts: ImportFacts,
  taken: ReadonlySet<string>,
  said: (share: number) => void = () => undefined,
): ImportReading {
  const records = parse(text, {
    bom: true,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
    trim: true,
  }) as unknown as ParsedRecord[];
  const head = records[0]?.record.map((name) => name.toLowerCase().trim()) ?? [];
  const missing = needed.filter((name) => !head.includes(name));
  if (missing.length > 0)
    return {
      rows: [],
      lines: records.length,
      faults: [
        {
          line: 1,
          column: missing.join(', '),
          message: `The first line must name the columns ${needed.join(', ')}; missing: ${missing.join(', ')}.`,
        },
      ],
    };
  const at = new Map(head.map((name, n) => [name, n]));
  const finder = plantingFinder(facts);
  const outletOf = new Map(facts.outlets.map((each) => [each.name.toLowerCase(), each.outletId]));
  const recordOf = new Map(facts.records);
  const codes = new Set(taken);
  const faults: RowFault[] = [];
  const rows: ImportedHarvest[] = [];

  for (const [n, { record, info }] of records.entries()) {
    if (n === 0) continue;
    if (n % EVERY === 0) said(n / records.length);
    const cell = (name: Column): string => record[at.get(name) ?? -1] ?? '';
    const fault = (column: string, message: string) => faults.push({ line: info.lines, column, message });
    const date = cell('date');
    if (!isIsoDate(date)) {
      fault('date', `"${date}" is not a calendar date. Write it as 2026-07-09.`);
      continue;
    }
    const found = finder(cell('crop'), cell('bed'), date);
    if (typeof found === 'string') {
      fault(cell('bed') === '' ? 'crop' : 'bed', found);
      continue;
    }
    const amount = numberOf(cell('amount'));
    const culls = cell('culls_kg') === '' ? 0 : numberOf(cell('culls_kg'));
    const minutes = cell('minutes') === '' ? null : numberOf(cell('minutes'));
    const outlet = cell('outlet');
    const outletId = outlet === '' ? null : (outletOf.get(outlet.toLowerCase()) ?? undefined);
    if (amount === null) fault('amount', `"${cell('amount')}" is not a number. Use a point for decimals, no thousands sign.`);
    if (culls === null) fault('culls_kg', `"${cell('culls_kg')}" is not a number.`);
    if (outletId === undefined) fault('outlet', `There is no outlet "${outlet}".`);
    if (amount === null || culls === null || outletId === undefined) continue;
    const unit = cell('unit');
    const { planting, bed } = found;
    const net_kg = netOfUnit_kg(unit, planting.cropId, facts.units);
    const wrong = harvestFaults(
      { date, amount, unit, net_kg, culls_kg: culls, labour_min: minutes, confirmed: true },
      {
        name: `${planting.crop} ${planting.number}`,
        inBed: planting.inBed as IsoDate,
        cleared: planting.cleared as IsoDate | null,
        yieldUnit: planting.yieldUnit,
        record: recordOf.get(`${planting.cropId} ${unit}`) ?? null,
        expected: planting.yieldTypical,
      },
      facts.today as IsoDate,
    );
    for (const each of wrong) fault(each.path, each.message);
    if (wrong.length > 0) continue;
    const lot = lotCode({ crop: planting.crop, date, place: bed?.code ?? planting.beds[0]?.code ?? '' }, codes);
    codes.add(lot);
    rows.push({
      date,
      plantingId: planting.plantingId,
      bedId: bed?.bedId ?? null,
      amount,
      unit,
      weight_kg: net_kg === null ? null : amount * net_kg,
      culls_kg: culls,
      grade: cell('grade') || 'first',
      outletId,
      labour_min: minutes,
      picker: cell('picker'),
      note: cell('note'),
      lot,
    });
  }
  return { rows, faults, lines: Math.max(0, records.length - 1) };
}

type ImportPlanting = ImportFacts['plantings'][number];
type Found = { readonly planting: ImportPlanting; readonly bed: { readonly bedId: string; readonly code: string } | undefined };

/** Finds the planting that stood in a bed on a day, by crop name and bed code. */
function plantingFinder(facts: ImportFacts): (crop: string, bed: string, date: string) => Found | string {
  const byCrop = new Map<string, ImportPlanting[]>();
  for (const planting of facts.plantings) {
    const key = planting.crop.toLowerCase();
    const list = byCrop.get(key);
    if (list === undefined) byCrop.set(key, [planting]);
    else list.push(planting);
  }
  const byCropAndBed = new Map<string, ImportPlanting[]>();
  for (const [crop, plantings] of byCrop)
    for (const planting of plantings)
      for (const { code } of planting.beds) {
        const key = `${crop} ${code.toLowerCase()}`;
        const list = byCropAndBed.get(key);
        if (list === undefined) byCropAndBed.set(key, [planting]);
        else list.push(planting);
      }
  return (crop, bed, date) => {
    const named = byCrop.get(crop.toLowerCase());
    if (named === undefined) return `No planting of "${crop}" is known.`;
    const open = (bed === '' ? named : (byCropAndBed.get(`${crop.toLowerCase()} ${bed.toLowerCase()}`) ?? [])).filter(
      (each) => each.inBed <= date && (each.cleared ?? each.clear) >= date,
    );
    const only = open[0];
    if (only === undefined)
      return bed === '' ? `No planting of ${crop} stood on ${date}.` : `No ${crop} stood in ${bed} on ${date}.`;
    if (open.length > 1) return `${open.length} plantings of ${crop} stood on ${date}: name the bed.`;
    const there = only.beds.find((each) => each.code.toLowerCase() === bed.toLowerCase());
    return { planting: only, bed: there ?? (only.beds.length === 1 ? only.beds[0] : undefined) };
  };
}

/** A number with a point for decimals; a comma is no number here, since it could mean either. */
function numberOf(text: string): number | null {
  return /^[-+]?\d+(\.\d+)?$/.test(text) ? Number(text) : null;
}
