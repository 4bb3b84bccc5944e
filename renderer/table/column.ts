import type { ReactNode } from 'react';
import { unitForKey } from '../../planner/units/reader.ts';

/** What a cell holds. Numbers are canonical; dates are ISO calendar dates. */
export type CellValue = string | number | boolean | null | undefined;

export type ColumnKind = 'text' | 'quantity' | 'money' | 'date' | 'count' | 'share' | 'choice' | 'flag';

export type Choice = { readonly value: string; readonly text: string };

export type ColumnOptions<Row> = {
  /** Whether the cell can be edited; a function decides for each row. */
  readonly edit?: boolean | ((row: Row) => boolean);
  readonly total?: 'sum' | 'mean';
  /** In pixels at 16 px text. */
  readonly width?: number;
  /** `false`: there to be chosen, but not shown at first. */
  readonly shown?: boolean;
  /** Said in the head's tooltip and to screen readers. */
  readonly hint?: string;
  /** Draws the cell instead of its text; sorting, filtering and copying still use the value. */
  readonly draw?: (row: Row) => ReactNode;
  /** Significant digits known of a quantity. */
  readonly digits?: number;
  /** Whether an edited cell may be left empty. */
  readonly mayBeEmpty?: boolean;
};

export type Column<Row> = ColumnOptions<Row> & {
  readonly key: string;
  readonly title: string;
  readonly kind: ColumnKind;
  /** Canonical unit of a quantity, else ''. */
  readonly unit: string;
  readonly choices: readonly Choice[];
  readonly read: (row: Row) => CellValue;
};

type KeyOf<Row, Value> = {
  [Key in keyof Row & string]-?: Row[Key] extends Value | null | undefined ? Key : never;
}[keyof Row & string];

const make = <Row>(
  kind: ColumnKind,
  key: keyof Row & string,
  title: string,
  more: ColumnOptions<Row> & { readonly unit?: string; readonly choices?: readonly Choice[] } = {},
): Column<Row> => ({ unit: '', choices: [], ...more, kind, key, title, read: (row) => row[key] as CellValue });

/** Words: `text('code', 'Bed')`. A key that is not text is a type error. */
export const text = <Row>(key: KeyOf<Row, string>, title: string, more?: ColumnOptions<Row>): Column<Row> =>
  make<Row>('text', key, title, more);

/** A quantity; its unit is read from the key: `quantity('depth_m', 'Depth')`. */
export const quantity = <Row>(key: KeyOf<Row, number>, title: string, more?: ColumnOptions<Row>): Column<Row> =>
  make<Row>('quantity', key, title, { ...more, unit: unitForKey(key) });

/** Money in minor units: `money('cost_minor', 'Cost')`. */
export const money = <Row>(key: KeyOf<Row, number>, title: string, more?: ColumnOptions<Row>): Column<Row> =>
  make<Row>('money', key, title, { ...more, unit: 'minor' });

/** A calendar date in ISO form. */
export const date = <Row>(key: KeyOf<Row, string>, title: string, more?: ColumnOptions<Row>): Column<Row> =>
  make<Row>('date', key, title, more);

/** A whole number of things. */
export const count = <Row>(key: KeyOf<Row, number>, title: string, more?: ColumnOptions<Row>): Column<Row> =>
  make<Row>('count', key, title, more);

/** A share from 0 to 1, shown in percent. */
export const share = <Row>(key: KeyOf<Row, number>, title: string, more?: ColumnOptions<Row>): Column<Row> =>
  make<Row>('share', key, title, { ...more, unit: 'share' });

/** One of a list; the cell shows the choice's text. */
export const choice = <Row>(
  key: KeyOf<Row, string>,
  title: string,
  choices: readonly Choice[],
  more?: ColumnOptions<Row>,
): Column<Row> => make<Row>('choice', key, title, { ...more, choices });

/** Yes or no. */
export const flag = <Row>(key: KeyOf<Row, boolean>, title: string, more?: ColumnOptions<Row>): Column<Row> =>
  make<Row>('flag', key, title, more);

/** A column worked out from the whole row. `key` still names it, and gives a quantity its unit. */
export function derived<Row>(
  kind: ColumnKind,
  key: string,
  title: string,
  read: (row: Row) => CellValue,
  more: ColumnOptions<Row> = {},
): Column<Row> {
  const unit = kind === 'quantity' ? unitForKey(key) : kind === 'money' ? 'minor' : kind === 'share' ? 'share' : '';
  return { choices: [], ...more, unit, kind, key, title, read };
}

const numeric: ReadonlySet<ColumnKind> = new Set(['quantity', 'money', 'count', 'share']);

export const isNumeric = (column: { readonly kind: ColumnKind }): boolean => numeric.has(column.kind);

export function canEdit<Row>(column: Column<Row>, row: Row): boolean {
  return typeof column.edit === 'function' ? column.edit(row) : column.edit === true;
}
