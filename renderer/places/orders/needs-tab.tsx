import { type ReactNode, useMemo, useState } from 'react';
import { go, useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { editsByRow } from '../../table/edits-by-row.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import { AddNeed } from './add-need.tsx';
import { BedPlans } from './bed-plans.tsx';
import { type NeedRow, needColumns } from './need-columns.tsx';
import { NeedSheet } from './need-sheet.tsx';
import { NoPrice } from './no-price.tsx';
import { OpenNeeds } from './open-needs.tsx';
import { StandIns } from './stand-ins.tsx';
import type { TabHead } from './tab-head.ts';

const idOf = (row: NeedRow): string => row.key;

/** Everything the season needs, gathered with its reason: to be bound to a supplier, left out or added to. */
export function NeedsTab({ tabs, choice, season }: TabHead) {
  const needs = useRead(api.orders.needs, { seasonId: season.seasonId });
  const set = useChange(api.orders.setNeeds);
  const remove = useChange(api.orders.removeNeed);
  const [opened, setOpen] = useQueryValue('need');
  const open = needs.state === 'ready' ? needs.data.needs.find((row) => row.key === opened) : undefined;
  const [adding, setAdding] = useState(false);
  const [standing, setStanding] = useState(false);
  const [planning, setPlanning] = useState(false);
  const [selected, setSelected] = useState<readonly string[]>([]);
  const edit = (edits: readonly Edit<NeedRow>[]) =>
    set.run({
      seasonId: season.seasonId,
      choices: editsByRow(edits).map(({ row, values }) => ({
        key: row.key,
        materialId: row.materialId,
        amount: row.changed ? row.amount : null,
        supplierId: 'supplierId' in values ? ((values['supplierId'] as string | null) ?? null) : row.supplierId,
        left: 'left' in values ? values['left'] === true : row.left,
        standIns: 'standInsAllowed' in values ? values['standInsAllowed'] === true : row.standInsAllowed,
        wantedDate: chosenDay(row, values),
      })),
    });
  const byHand = (rows: readonly NeedRow[]) => rows.filter((row) => selected.includes(row.key) && row.needChoiceId !== null);
  return (
    <Page
      title={say('Orders')}
      lead={say('What the season needs, gathered from beds, parts, doses, plantings and your own additions.')}
      tabs={tabs}
      actions={
        <>
          {choice}
          <Button icon="add" onClick={() => setAdding(true)}>
            {say('Add a need')}
          </Button>
          <Button onClick={() => setPlanning(true)}>{say('Beds to build')}</Button>
          <Button onClick={() => setStanding(true)}>{say('Stand-ins')}</Button>
          <Button weight="main" onClick={() => go('orders', { tab: 'list', season: season.seasonId })}>
            {say('Find the cheapest list')}
          </Button>
        </>
      }
      sheet={
        open === undefined ? null : (
          <NeedSheet
            key={`${open.key} ${open.amount}`}
            row={open}
            seasonId={season.seasonId}
            onClose={() => setOpen(undefined)}
          />
        )
      }
    >
      <NoPrice seasonId={season.seasonId} />
      <Shown reading={needs}>
        {(found) => (
          <NeedsGrid
            found={found}
            onEdit={edit}
            failure={set.failure}
            onSelect={setSelected}
            onOpen={(row) => setOpen(row.key)}
            tools={
              byHand(found.needs).length === 0 ? undefined : (
                <Button
                  icon="bin"
                  onClick={() => {
                    for (const row of byHand(found.needs))
                      void remove.run({ needChoiceId: row.needChoiceId ?? '' }, say('Took the need away.'));
                  }}
                >
                  {say('Take away')}
                </Button>
              )
            }
          />
        )}
      </Shown>
      {adding ? <AddNeed seasonId={season.seasonId} onClose={() => setAdding(false)} /> : null}
      {planning ? <BedPlans onClose={() => setPlanning(false)} /> : null}
      {standing ? <StandIns onClose={() => setStanding(false)} /> : null}
    </Page>
  );
}

/** The day the grower wants it; `null` where it is the computed one. */
function chosenDay(row: NeedRow, values: Readonly<Record<string, unknown>>): string | null {
  const day = 'wanted' in values ? ((values['wanted'] as string | null) ?? row.computedWanted) : row.wanted;
  return day === row.computedWanted ? null : day;
}

type Found = OutputOf<typeof api.orders.needs>;

function NeedsGrid(props: {
  readonly found: Found;
  readonly onEdit: (edits: readonly Edit<NeedRow>[]) => Promise<unknown>;
  readonly failure: ReturnType<typeof useChange>['failure'];
  readonly onSelect: (ids: readonly string[]) => void;
  readonly onOpen: (row: NeedRow) => void;
  readonly tools: ReactNode;
}) {
  const reader = useReader();
  const { found } = props;
  const isChanged = found.needs.some((row) => row.changed);
  const isToCome = found.needs.some((row) => row.onTheWay > 0);
  const columns = useMemo(
    () => needColumns(reader, found.suppliers, { isChanged, isToCome }),
    [reader, found.suppliers, isChanged, isToCome],
  );
  return (
    <>
      <Grid
        name="Needs"
        rows={found.needs}
        columns={columns}
        rowId={idOf}
        onEdit={props.onEdit}
        failure={props.failure}
        onSelect={props.onSelect}
        onOpen={props.onOpen}
        tools={props.tools}
        empty={
          <Empty title={say('Nothing is needed')}>
            {say('Beds that want filling, worn parts, planned doses and plantings show here.')}
          </Empty>
        }
      />
      <OpenNeeds open={found.open} />
    </>
  );
}
