/** Which columns of a table are shown and how it is sorted, kept on this computer. */
export type Remembered = {
  readonly hidden: Readonly<Record<string, boolean>>;
  readonly sort: readonly { readonly id: string; readonly desc: boolean }[];
};

const keyOf = (table: string): string => `bedwright.table.${table}`;

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** Reads what was kept; what is not understood (an older program's form, damage) counts as nothing kept. */
export function readRemembered(stored: string | null): Partial<Remembered> {
  if (stored === null) return {};
  let parsed: unknown;
  try {
    parsed = JSON.parse(stored);
  } catch (error) {
    if (error instanceof SyntaxError) return {};
    throw error;
  }
  if (!isRecord(parsed)) return {};
  const hidden = isRecord(parsed['hidden'])
    ? Object.fromEntries(Object.entries(parsed['hidden']).map(([id, on]) => [id, on === true]))
    : undefined;
  const sort = Array.isArray(parsed['sort'])
    ? parsed['sort'].filter(isRecord).flatMap(({ id, desc }) => (typeof id === 'string' ? [{ id, desc: desc === true }] : []))
    : undefined;
  return { ...(hidden === undefined ? {} : { hidden }), ...(sort === undefined ? {} : { sort }) };
}

export const remembered = {
  get: (table: string): Partial<Remembered> => readRemembered(window.localStorage.getItem(keyOf(table))),
  set: (table: string, value: Remembered): void => window.localStorage.setItem(keyOf(table), JSON.stringify(value)),
};
