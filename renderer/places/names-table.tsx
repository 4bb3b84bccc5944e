import { go } from '../app/address.ts';
import { Empty, Shown } from '../app/states.tsx';
import { api } from '../client/api.ts';
import { type OutputOf, useRead } from '../client/use-read.ts';
import { type Column, choice, text } from '../table/column.ts';
import { Grid } from '../table/grid.tsx';
import { say } from '../words/say.ts';

type Named = OutputOf<typeof api.find.names>[number];

const kinds = [
  { value: 'bed', text: say('Bed') },
  { value: 'crop', text: say('Crop') },
  { value: 'planting', text: say('Planting') },
  { value: 'material', text: say('Material') },
  { value: 'design', text: say('Design') },
  { value: 'supplier', text: say('Supplier') },
] as const;

const columns: readonly Column<Named>[] = [
  choice('kind', say('Kind'), kinds),
  text('name', say('Name')),
  text('detail', say('Detail'), { width: 320 }),
];

const shownIn: Readonly<Record<string, readonly Named['kind'][]>> = {
  beds: ['bed', 'design'],
  season: ['planting'],
  soil: ['material'],
  orders: ['material', 'supplier'],
  harvest: ['planting'],
  crops: ['crop'],
  designs: ['design'],
};

/** What the farm has by name, where a place has no page of its own yet. */
export function NamesTable({ place }: { readonly place: string }) {
  const names = useRead(api.find.names, undefined);
  return (
    <Shown reading={names}>
      {(all) => (
        <Grid
          name={say('Names {place}', { place })}
          rows={all.filter((each) => shownIn[place]?.includes(each.kind) ?? true)}
          columns={columns}
          rowId={(row) => `${row.kind} ${row.id}`}
          onOpen={(row) => go('library', { tab: `${row.kind}s`, [row.kind]: row.id })}
          empty={<Empty title={say('Nothing here yet')}>{say('Add beds and plantings first; they appear here.')}</Empty>}
        />
      )}
    </Shown>
  );
}
