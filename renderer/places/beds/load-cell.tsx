import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import type { BedRow } from './bed-types.ts';

/** The load on the floor, marked when it is over the limit that was entered for it. */
export function LoadCell({ row }: { readonly row: BedRow }) {
  const reader = useReader();
  if (row.load_kg_per_m2 === null) return <span className="faint">–</span>;
  const text = reader.number(row.load_kg_per_m2, 'kg_per_m2');
  return row.isOverLimit ? (
    <span className="state-mark" data-tone="stop" title={say('Over the limit entered for its floor')}>
      {text}
    </span>
  ) : (
    text
  );
}
