import { announce } from '../client/announce.ts';
import { client } from '../client/api.ts';
import { failureOf } from '../client/failure.ts';
import { say } from '../words/say.ts';

/** Which columns of a table are shown and how it is sorted: kept in the farm file, so that it goes where the farm goes. */
export type Remembered = {
  readonly hidden: Readonly<Record<string, boolean>>;
  readonly sort: readonly { readonly id: string; readonly desc: boolean }[];
};

/** What the names of these settings begin with in the farm file. */
export const TABLE_PREFIX = 'table.';
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
  return understood(parsed);
}

function understood(parsed: unknown): Partial<Remembered> {
  if (!isRecord(parsed)) return {};
  const hidden = isRecord(parsed['hidden'])
    ? Object.fromEntries(Object.entries(parsed['hidden']).map(([id, on]) => [id, on === true]))
    : undefined;
  const sort = Array.isArray(parsed['sort'])
    ? parsed['sort'].filter(isRecord).flatMap(({ id, desc }) => (typeof id === 'string' ? [{ id, desc: desc === true }] : []))
    : undefined;
  return { ...(hidden === undefined ? {} : { hidden }), ...(sort === undefined ? {} : { sort }) };
}

/** What the open farm keeps, by table; undefined while none is open, when this computer keeps it. */
let ofFarm: Map<string, Partial<Remembered>> | undefined;

export const remembered = {
  /** Takes what the farm file keeps, once: from then on this window knows best. */
  takeFrom(settings: Readonly<Record<string, unknown>>): void {
    ofFarm ??= new Map(
      Object.entries(settings).map(([name, value]) => [name.slice(TABLE_PREFIX.length), understood(value)] as const),
    );
  },
  /** What is kept of a table; a farm that keeps nothing of it yet begins as this computer had it before. */
  get: (table: string): Partial<Remembered> => ofFarm?.get(table) ?? readRemembered(window.localStorage.getItem(keyOf(table))),
  set(table: string, value: Remembered): void {
    if (ofFarm === undefined) {
      window.localStorage.setItem(keyOf(table), JSON.stringify(value));
      return;
    }
    ofFarm.set(table, value);
    client.farm.remember
      .mutate({
        name: `${TABLE_PREFIX}${table}`,
        value: { hidden: { ...value.hidden }, sort: value.sort.map((each) => ({ ...each })) },
      })
      .catch((error: unknown) =>
        announce(say('The columns of this table were not kept: {why}', { why: failureOf(error).message }), 'now'),
      );
  },
};
