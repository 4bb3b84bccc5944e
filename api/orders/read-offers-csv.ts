import { parse } from 'csv-parse/sync';
import { isIsoDate } from '../../planner/calendar.ts';
import { InputError } from '../../planner/errors.ts';
import { parseQuantity } from '../../planner/units/parse.ts';
import { currencyPlaces } from '../../planner/units/print-money.ts';
import type { UnitSystem } from '../../planner/units/system.ts';

/** What is known of the farm, to read a price list against. */
export type OfferFacts = {
  readonly system: UnitSystem;
  readonly currency: string;
  readonly today: string;
  readonly suppliers: readonly { readonly id: string; readonly name: string }[];
  readonly materials: readonly { readonly id: string; readonly name: string; readonly baseUnit: string }[];
  readonly offers: readonly {
    readonly id: string;
    readonly supplierId: string;
    readonly materialId: string;
    readonly name: string;
    readonly price_minor: number;
    readonly revision: number;
  }[];
};

export type ReadOffer = {
  readonly line: number;
  readonly supplierId: string;
  readonly supplier: string;
  readonly materialId: string;
  readonly material: string;
  readonly name: string;
  readonly packageAmount: number;
  readonly baseUnit: string;
  readonly price_minor: number;
  readonly minimumPackages: number;
  readonly lead_days: number | null;
  readonly packageWeight_kg: number | null;
  readonly pricedDate: string;
  /** The offer that this line gives a new price to; null where it is new. */
  readonly present: { readonly id: string; readonly revision: number; readonly price_minor: number } | null;
};

export type OfferFault = { readonly line: number; readonly column: string; readonly message: string };
export type OfferReading = {
  readonly rows: readonly ReadOffer[];
  readonly faults: readonly OfferFault[];
  readonly unread: readonly string[];
};

const needed = ['supplier', 'material', 'package', 'holds', 'price'] as const;
const known = new Set<string>([...needed, 'minimum', 'lead days', 'weight', 'priced']);

type Line = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

/**
 * Reads a supplier's price list: a head line, then one package a line; `holds` is a quantity as written (`2 cu ft`, `50 lb`, `100`), in
 * any unit of the material's kind. Nothing is taken in unless every line can be; each bad line is told by line and column.
 */
export function readOffersCsv(text: string, facts: OfferFacts): OfferReading {
  const lines = parse(text, {
    info: true,
    bom: true,
    relax_column_count: true,
    skip_empty_lines: true,
  }) as unknown as readonly Line[];
  const head = (lines[0]?.record ?? []).map((name) => name.trim().toLowerCase());
  const missing = needed.filter((name) => !head.includes(name));
  if (missing.length > 0) {
    return {
      rows: [],
      unread: [],
      faults: [
        {
          line: 1,
          column: 'head',
          message: `The first line must name the columns ${needed.join(', ')}; missing: ${missing.join(', ')}.`,
        },
      ],
    };
  }
  const faults: OfferFault[] = [];
  const seen = new Map<string, number>();
  const rows = lines.slice(1).flatMap(({ record, info }) => {
    const found = readLine(record, head, info.lines, facts);
    faults.push(...found.faults);
    if (found.row === null) return [];
    const key = `${found.row.supplierId} ${found.row.materialId} ${found.row.name.toLowerCase()}`;
    const before = seen.get(key);
    if (before !== undefined)
      faults.push({
        line: info.lines,
        column: 'package',
        message: `The same package of the same supplier stands in line ${before}.`,
      });
    seen.set(key, info.lines);
    return [found.row];
  });
  return { rows, faults, unread: head.filter((name) => name !== '' && !known.has(name)) };
}

function readLine(
  record: readonly string[],
  head: readonly string[],
  line: number,
  facts: OfferFacts,
): { readonly row: ReadOffer | null; readonly faults: readonly OfferFault[] } {
  const faults: OfferFault[] = [];
  const cell = (name: string): string => (record[head.indexOf(name)] ?? '').trim();
  const say = (column: string, message: string): null => {
    faults.push({ line, column, message });
    return null;
  };
  const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();
  const supplier =
    facts.suppliers.find((each) => same(each.name, cell('supplier'))) ??
    say('supplier', `There is no supplier "${cell('supplier')}". Add it in Library first.`);
  const material =
    facts.materials.find((each) => same(each.name, cell('material'))) ??
    say('material', `There is no material "${cell('material')}". Add it in Library first.`);
  const name = cell('package') === '' ? say('package', 'Say what the package is.') : cell('package');
  const quantity = (column: string, unit: string): number | null => {
    try {
      return parseQuantity(cell(column), { unit: unit === 'count' ? '' : unit, system: facts.system, path: column });
    } catch (error) {
      if (error instanceof InputError) return say(column, error.message);
      throw error;
    }
  };
  const packageAmount = material === null ? null : quantity('holds', material.baseUnit);
  if (packageAmount !== null && packageAmount <= 0) say('holds', 'A package holds more than nothing.');
  const price_minor = priceOf(cell('price'), facts.currency, say);
  const whole = (column: string, least: number): number | null => {
    const text = cell(column);
    if (text === '') return null;
    return /^\d+$/.test(text) && Number(text) >= least && Number(text) <= 100_000
      ? Number(text)
      : say(column, `"${text}" is not a whole number from ${least}.`);
  };
  const minimumPackages = whole('minimum', 1);
  const lead_days = whole('lead days', 0);
  const packageWeight_kg = cell('weight') === '' ? null : quantity('weight', 'kg');
  const pricedDate =
    cell('priced') === ''
      ? facts.today
      : isIsoDate(cell('priced'))
        ? cell('priced')
        : (say('priced', `"${cell('priced')}" is not a calendar date. Write it as 2026-03-09.`) ?? '');
  if (
    faults.length > 0 ||
    supplier === null ||
    material === null ||
    name === null ||
    packageAmount === null ||
    price_minor === null
  )
    return { row: null, faults };
  const present = facts.offers.find(
    (each) => each.supplierId === supplier.id && each.materialId === material.id && same(each.name, name),
  );
  return {
    faults,
    row: {
      line,
      supplierId: supplier.id,
      supplier: supplier.name,
      materialId: material.id,
      material: material.name,
      name,
      packageAmount,
      baseUnit: material.baseUnit,
      price_minor,
      minimumPackages: minimumPackages ?? 1,
      lead_days,
      packageWeight_kg,
      pricedDate,
      present: present === undefined ? null : { id: present.id, revision: present.revision, price_minor: present.price_minor },
    },
  };
}

/** A price with a point; a comma is ambiguous and is asked about, not guessed. */
function priceOf(text: string, currency: string, say: (column: string, message: string) => null): number | null {
  const plain = text
    .replace(/^\s*[$€£]\s*/, '')
    .replace(new RegExp(`\\s*${currency}\\s*$`, 'i'), '')
    .trim();
  if (plain === '') return say('price', 'A price is needed.');
  if (plain.includes(','))
    return say('price', `"${text}": write the price with a point and without grouping, as 1234.50. A comma may mean either.`);
  if (!/^\d{1,9}(\.\d+)?$/.test(plain)) return say('price', `"${text}" is not a price.`);
  const places = currencyPlaces(currency);
  if ((plain.split('.')[1] ?? '').length > places) return say('price', `"${text}" has more than ${places} decimals.`);
  return Math.round(Number(plain) * 10 ** places);
}
