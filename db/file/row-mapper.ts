import { Column, getTableName, is, SQL, Subquery } from 'drizzle-orm';

type Decoder = { readonly mapFromDriverValue: (value: unknown) => unknown };
export type Fields = readonly { readonly path: readonly string[]; readonly field: unknown }[];
export type NotNullable = Readonly<Record<string, boolean>>;

type Cell = { readonly at: number; readonly key: string; readonly decoder: Decoder | null };
/** The cells of one object of a row; `name` is empty for the row itself. */
type Part = { readonly name: string; readonly cells: Cell[]; readonly nullWhen: number };

/** Plain columns hand the value on as it is; those that keep flags, dates or lists have their own way. */
function decoderOf(field: unknown): Decoder | null {
  if (is(field, Column)) return field.mapFromDriverValue === Column.prototype.mapFromDriverValue ? null : (field as Decoder);
  if (is(field, SQL)) return (field as unknown as { decoder: Decoder }).decoder;
  if (is(field, Subquery)) return (field._.sql as unknown as { decoder: Decoder }).decoder;
  return (field as { sql: { decoder: Decoder } }).sql.decoder;
}

/**
 * The column whose null says that a joined table has no row here: its first, where all the object's columns are that table's
 * and the join may miss. -1 where the object always stands.
 */
function missingAt(fields: Fields, name: string, notNullable: NotNullable | undefined): number {
  if (notNullable === undefined) return -1;
  const of = fields.flatMap(({ path, field }, at) =>
    path.length === 2 && path[0] === name && is(field, Column) ? [{ at, table: getTableName(field.table) }] : [],
  );
  const [first] = of;
  if (first === undefined || of.some(({ table }) => table !== first.table)) return -1;
  return notNullable[first.table] === true ? -1 : first.at;
}

/** Makes the plan by which rows of a query become objects. */
export function rowMapper(fields: Fields, notNullable: NotNullable | undefined): (rows: readonly unknown[][]) => unknown[] {
  const order: ({ readonly cell: Cell } | { readonly part: Part })[] = [];
  const parts = new Map<string, Part>();
  fields.forEach(({ path, field }, at) => {
    const [name = '', inner] = path;
    if (path.length > 2) throw new RangeError(`Rows nest one level at the most, not ${path.join('.')}.`);
    const cell = { at, key: inner ?? name, decoder: decoderOf(field) };
    if (inner === undefined) {
      order.push({ cell });
      return;
    }
    const known = parts.get(name);
    if (known !== undefined) {
      known.cells.push(cell);
      return;
    }
    const part = { name, cells: [cell], nullWhen: missingAt(fields, name, notNullable) };
    parts.set(name, part);
    order.push({ part });
  });
  return (rows) =>
    rows.map((row) => {
      const object: Record<string, unknown> = {};
      for (const each of order) {
        if ('cell' in each) put(object, each.cell, row);
        else object[each.part.name] = each.part.nullWhen >= 0 && row[each.part.nullWhen] === null ? null : made(each.part, row);
      }
      return object;
    });
}

function made({ cells }: Part, row: readonly unknown[]): Record<string, unknown> {
  const object: Record<string, unknown> = {};
  for (const cell of cells) put(object, cell, row);
  return object;
}

function put(object: Record<string, unknown>, { at, key, decoder }: Cell, row: readonly unknown[]): void {
  const value = row[at];
  object[key] = decoder === null || value === null ? value : decoder.mapFromDriverValue(value);
}
