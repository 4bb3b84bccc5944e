import { useCallback, useSyncExternalStore } from 'react';
import { isPlace, type PlaceName } from './place-names.ts';

/** Where the reader is: the place from the path, everything else of it from the query, so that the address says all. */
export type Address = { readonly place: PlaceName; readonly tab: string | undefined; readonly query: URLSearchParams };

const MOVED = 'bedwright:moved';

/** Stands for the farm in the address of a window in which none is open yet; the program knows none by this key. */
export const NO_FARM = 'none';

export function readAddress(href: string): Address {
  const url = new URL(href);
  const [first = '', second] = url.pathname.split('/').filter((part) => part !== '');
  return { place: isPlace(first) ? first : 'week', tab: second, query: url.searchParams };
}

/** The address of a place; the open farm stays in it. `undefined` values leave a name out. */
export function addressOf(
  place: string,
  query: Readonly<Record<string, string | undefined>> = {},
  from = window.location.href,
): string {
  const here = new URL(from);
  const next = new URL(`/${place}`, here.origin === 'null' ? 'http://local' : here.origin);
  const farm = here.searchParams.get('farm');
  if (farm !== null) next.searchParams.set('farm', farm);
  for (const [name, value] of Object.entries(query)) if (value !== undefined && value !== '') next.searchParams.set(name, value);
  return next.pathname + next.search;
}

/** Goes to a place (`go('beds', { bed: id })`, `go('library/materials')`). */
export function go(place: string, query: Readonly<Record<string, string | undefined>> = {}): void {
  window.history.pushState(null, '', addressOf(place, query));
  window.dispatchEvent(new Event(MOVED));
}

/** Changes names of the query where the reader is, without a new step back. */
export function setQuery(changes: Readonly<Record<string, string | undefined>>): void {
  const url = new URL(window.location.href);
  for (const [name, value] of Object.entries(changes)) {
    if (value === undefined || value === '') url.searchParams.delete(name);
    else url.searchParams.set(name, value);
  }
  window.history.replaceState(null, '', url.pathname + url.search);
  window.dispatchEvent(new Event(MOVED));
}

function subscribe(listener: () => void): () => void {
  window.addEventListener('popstate', listener);
  window.addEventListener(MOVED, listener);
  return () => {
    window.removeEventListener('popstate', listener);
    window.removeEventListener(MOVED, listener);
  };
}

export function useAddress(): Address {
  return readAddress(useSyncExternalStore(subscribe, () => window.location.href));
}

/** One name of the address's query as state: a place's selection lives in the address. */
export function useQueryValue(name: string): readonly [string | undefined, (value: string | undefined) => void] {
  const value = useAddress().query.get(name) ?? undefined;
  const set = useCallback((next: string | undefined) => setQuery({ [name]: next }), [name]);
  return [value, set];
}
