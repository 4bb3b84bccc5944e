import type { ReactNode } from 'react';
import { useMemo } from 'react';
import { setQuery } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, count, date, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { BoardData } from './board-data.ts';
import { type PlantingLine, plantingLines } from './planting-lines.ts';
import { SeasonChoice, useSeasonId } from './season-choice.tsx';

const columns: readonly Column<PlantingLine>[] = [
  text('crop', say('Crop'), { width: 160 }),
  count('number', say('No.'), { width: 60 }),
  text('beds', say('Beds'), { width: 140 }),
  count('plants', say('Plants'), { total: 'sum' }),
  date('sow', say('Sow')),
  date('inBed', say('Into the bed'), { edit: true }),
  date('firstHarvest', say('First harvest'), { edit: true }),
  date('lastHarvest', say('Last harvest'), { edit: true }),
  date('free', say('Bed free'), { edit: true }),
  text('state', say('State')),
  text('against', say('Against it'), { width: 280 }),
];
const rowId = (row: PlantingLine): string => row.plantingId;

const fields = {
  inBed: 'inBedDate',
  firstHarvest: 'firstHarvestDate',
  lastHarvest: 'lastHarvestDate',
  free: 'clearDate',
} as const;

/** Every planting of the season as a table. */
export function PlantingsTab({ tabs }: { readonly tabs: ReactNode }) {
  const [seasonId] = useSeasonId();
  const board = useRead(api.plantings.board, { seasonId });
  return <Shown reading={board}>{(data) => <PlantingsOf data={data} tabs={tabs} />}</Shown>;
}

function PlantingsOf({ data, tabs }: { readonly data: BoardData; readonly tabs: ReactNode }) {
  const lines = useMemo(() => plantingLines(data), [data]);
  const set = useChange(api.plantings.set);
  return (
    <Page title={say('Season')} tabs={tabs} actions={<SeasonChoice seasonId={data.season.id} />}>
      <Grid
        name="Plantings"
        rows={lines}
        columns={columns}
        rowId={rowId}
        onOpen={(row) => setQuery({ tab: 'board', planting: row.plantingId })}
        onEdit={async (edits) => {
          for (const [plantingId, own] of Map.groupBy(edits, (edit) => edit.row.plantingId)) {
            const values = Object.fromEntries(own.map((edit) => [fields[edit.key as keyof typeof fields], edit.value]));
            const revision = own[0]?.row.revision ?? 0;
            if ((await set.run({ plantingId, revision, values }, say('The plan is changed.'))) === undefined) return;
          }
        }}
        failure={set.failure}
        empty={<Empty title={say('No plantings yet')}>{say('Add one on the board.')}</Empty>}
      />
    </Page>
  );
}
