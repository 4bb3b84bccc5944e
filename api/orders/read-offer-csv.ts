import { parse } from 'csv-parse/sync';
import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { InputError } from '../../planner/errors.ts';
import { roundMoney } from '../../planner/money.ts';
import { parseQuantity } from '../../planner/units/parse.ts';
import type { UnitSystem } from '../../planner/units/system.ts';

/** What reading a price list needs to know of the farm. */
export type OfferFacts = {
  readonly today: IsoDate;
  readonly system: UnitSystem;
  readonly minorDigits: number;
  readonly suppliers: readonly { readonly id: string; readonly name: string }[];
  readonly materials: readonly { readonly id: string; readonly name: string; readonly baseUnit: string }[];
  readonly known: readonly {
    readonly offerId: string;
    readonly supplierId: string;
    readonly materialId: string;
    readonly name: string;
    readonly price_minor: number;
  }[];
};

export type ReadOffer = {
  readonly line: number;
  readonly supplierId: string;
  readonly supplier: string;
  readonly materialId: string;
  readonly material: string;
  readonly baseUnit: string;
  readonly name: string;
  readonly packageAmount: number;
  readonly price_minor: number;
  readonly minimumPackages: number;
  readonly pricedDate: IsoDate;
  /** The offer in force that this line gives a new price, if there is one. */
  readonly offerId: string | null;
  readonly priceBefore_minor: number | null;
};

export type OfferFault = { readonly line: number; readonly column: string; readonly message: string };
export type OfferReading = { readonly offers: readonly ReadOffer[]; readonly faults: readonly OfferFault[] };

const needed = ['supplier', 'material', 'package', 'holds', 'price'] as const;
type Parsed = { readonly record: readonly string[]; readonly info: { readonly lines: number } };

/**
 * Reads a price list: a header line with supplier, material, package, holds, price, and where wanted minimum and date. A package holds a
 * quantity with its unit (`50 lb`, `2 cu ft`). Bad rows are told with line and column; nothing is taken in while there are any.
 */
export function readOfferCsv(text: string, facts: OfferFacts): OfferReading {
  const records = parse(text, {
    bom: true,
    info: true,
    relax_column_count: true,
    skip_empty_lines: true,
    trim: true,
  }) as unknown as Parsed[];
  const head = records[0]?.record.map((name) => name.toLowerCase()) ?? [];
  const missing = needed.filter((name) => !head.includes(name));
  if (missing.length > 0)
    return {
      offers: [],
      faults: [
        {
          line: 1,
          column: missing.join(', '),
          message: `The first line must name the columns ${needed.join(', ')}; missing: ${missing.join(', ')}.`,
        },
      ],
    };
  const suppliers = new Map(facts.suppliers.map((each) => [each.name.toLowerCase(), each]));
  const materials = new Map(facts.materials.map((each) => [each.name.toLowerCase(), each]));
  const known = new Map(facts.known.map((each) => [keyOf(each.supplierId, each.materialId, each.name), each]));
  const seen = new Map<string, number>();
  const faults: OfferFault[] = [];
  const offers: ReadOffer[] = [];
  for (const { record, info } of records.slice(1)) {
    const cell = (name: string): string => record[head.indexOf(name)] ?? '';
    const before = faults.length;
    const fault = (column: string, message: string): void => {
      faults.push({ line: info.lines, column, message });
    };
    const supplier = suppliers.get(cell('supplier').toLowerCase());
    const material = materials.get(cell('material').toLowerCase());
    if (supplier === undefined) fault('supplier', `There is no supplier "${cell('supplier')}". Add it at Library first.`);
    if (material === undefined) fault('material', `There is no material "${cell('material')}". Add it at Library first.`);
    const packageAmount = material === undefined ? null : held(cell('holds'), material.baseUnit, facts.system, fault);
    const price = /^\d+(\.\d+)?$/.test(cell('price')) ? Number(cell('price')) : null;
    if (price === null)
      fault('price', `"${cell('price')}" is not a price. Write it with a point and no thousands sign: 1234.50.`);
    const minimum = cell('minimum') === '' ? 1 : Number(cell('minimum'));
    if (!Number.isInteger(minimum) || minimum < 1) fault('minimum', `"${cell('minimum')}" is not a whole number of packages.`);
    const date = cell('date') === '' ? facts.today : cell('date');
    if (!isIsoDate(date)) fault('date', `"${date}" is not a calendar date. Write it as 2026-11-25.`);
    if (cell('package') === '') fault('package', 'Name the package, e.g. bag of 50 lb.');
    if (
      supplier === undefined ||
      material === undefined ||
      packageAmount === null ||
      price === null ||
      !isIsoDate(date) ||
      faults.length > before
    )
      continue;
    const key = keyOf(supplier.id, material.id, cell('package'));
    const twice = seen.get(key);
    if (twice !== undefined) {
      fault('package', `The same offer stands in line ${twice} already.`);
      continue;
    }
    seen.set(key, info.lines);
    const was = known.get(key);
    offers.push({
      line: info.lines,
      supplierId: supplier.id,
      supplier: supplier.name,
      materialId: material.id,
      material: material.name,
      baseUnit: material.baseUnit,
      name: cell('package'),
      packageAmount,
      price_minor: roundMoney(price * 10 ** facts.minorDigits),
      minimumPackages: minimum,
      pricedDate: date,
      offerId: was?.offerId ?? null,
      priceBefore_minor: was?.price_minor ?? null,
    });
  }
  return { offers, faults };
}

const keyOf = (supplierId: string, materialId: string, name: string): string =>
  JSON.stringify([supplierId, materialId, name.toLowerCase()]);

/** What a package holds, in the material's base unit; says why it cannot be read. */
function held(text: string, unit: string, system: UnitSystem, fault: (column: string, message: string) => void): number | null {
  try {
    const amount = unit === 'count' ? Number(text) : parseQuantity(text, { unit, system, path: 'holds' });
    if (amount > 0) return amount;
    fault('holds', 'A package holds more than nothing.');
    return null;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    fault('holds', error.message);
    return null;
  }
}
