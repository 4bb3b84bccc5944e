import { useEffect, useState } from 'react';

/** Milliseconds of work before the page is let breathe. */
const SLICE_MS = 12;

export type Gradually<Row> = { readonly rows: readonly Row[]; readonly done: boolean };

/**
 * Takes rows from a generator a few at a time, so that long work leaves the page alive. `make` must be stable
 * (`useCallback`): a new one begins anew.
 */
export function useGradually<Row>(make: () => Generator<Row, void>): Gradually<Row> {
  const [state, setState] = useState<Gradually<Row>>({ rows: [], done: false });
  useEffect(() => {
    const rows: Row[] = [];
    const source = make();
    let timer: ReturnType<typeof setTimeout>;
    const slice = (): void => {
      const until = performance.now() + SLICE_MS;
      let next = source.next();
      while (next.done !== true) {
        rows.push(next.value);
        if (performance.now() > until) break;
        next = source.next();
      }
      setState({ rows: [...rows], done: next.done === true });
      if (next.done !== true) timer = setTimeout(slice);
    };
    slice();
    return () => clearTimeout(timer);
  }, [make]);
  return state;
}
