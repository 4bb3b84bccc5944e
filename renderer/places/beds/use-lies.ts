import { useCallback, useMemo, useRef, useState } from 'react';
import type { BedRow, Lie } from './bed-types.ts';

type Draft = { readonly of: readonly BedRow[]; readonly lies: ReadonlyMap<string, Lie> };

/**
 * Where beds lie, with those being moved at their new place until the farm file has answered. A refused move goes back.
 * Steps by key are gathered and sent once the hand rests, as one step of undo.
 */
export function useLies(
  beds: readonly BedRow[],
  send: (places: readonly ({ readonly bedId: string } & Lie)[], what: string | undefined) => Promise<boolean>,
) {
  const [draft, setDraft] = useState<Draft>();
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);
  const lies = draft?.of === beds ? draft.lies : undefined;
  const now = useRef({ beds, lies, send });
  now.current = { beds, lies, send };

  const lieOf = useCallback((bed: BedRow): Lie => lies?.get(bed.bedId) ?? bed, [lies]);
  // the same set as long as the same beds move, so that the still ones are not painted again at each step
  const ids = lies === undefined ? '' : [...lies.keys()].join('\n');
  const moving = useMemo(() => new Set(ids === '' ? [] : ids.split('\n')), [ids]);

  const show = useCallback((next: ReadonlyMap<string, Lie>) => setDraft({ of: now.current.beds, lies: next }), []);
  const drop = useCallback(() => setDraft(undefined), []);
  const keep = useCallback(async (next: ReadonlyMap<string, Lie>, what?: string) => {
    setDraft({ of: now.current.beds, lies: next });
    const places = [...next].map(([bedId, lie]) => ({ bedId, x_m: lie.x_m, y_m: lie.y_m, turn_deg: lie.turn_deg }));
    if (places.length > 0 && !(await now.current.send(places, what))) setDraft(undefined);
  }, []);
  const keepSoon = useCallback(
    (next: ReadonlyMap<string, Lie>) => {
      setDraft({ of: now.current.beds, lies: next });
      clearTimeout(waiting.current);
      waiting.current = setTimeout(() => void keep(next), 500);
    },
    [keep],
  );
  return { lieOf, moving, show, drop, keep, keepSoon };
}
