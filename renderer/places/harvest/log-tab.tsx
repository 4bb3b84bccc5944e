import { type ReactNode, useMemo, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { editsByRow } from '../../table/edits-by-row.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import { EntryLine } from './entry-line.tsx';
import type { HarvestLogRow } from './harvest-types.ts';
import { ImportDialog } from './import-dialog.tsx';
import { logColumns } from './log-columns.ts';
import { PeriodFields } from './period-fields.tsx';
import { usePeriod } from './use-period.ts';

type Values = InputOf<typeof api.harvest.setMany>['edits'][number]['values'];

const rowId = (row: HarvestLogRow): string => row.harvestId;

/** The entry line, and below it the log: corrected in place, taken away by selection, undone like anything else. */
export function LogTab({ tabs, today }: { readonly tabs: ReactNode; readonly today: IsoDate }) {
  const [date, setDate] = useState<IsoDate>(today);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [importing, setImporting] = useState(false);
  const period = usePeriod(today);
  const choices = useRead(api.harvest.choices, { date });
  const log = useRead(api.harvest.log, { from: period.from, to: period.to });
  const change = useChange(api.harvest.setMany);
  const remove = useChange(api.harvest.remove);
  const outlets = choices.state === 'ready' ? choices.data.outlets : undefined;
  const columns = useMemo(() => logColumns(outlets ?? []), [outlets]);
  const edit = (edits: readonly Edit<HarvestLogRow>[]) =>
    change.run({
      edits: editsByRow(edits).map(({ row, values }) => ({
        harvestId: row.harvestId,
        revision: row.revision,
        values: values as Values,
      })),
    });
  const takeAway = async (): Promise<void> => {
    const done = await remove.run(
      { harvestIds: [...chosen] },
      say('{chosen, plural, one {Took a harvest away.} other {Took # harvests away.}}', { chosen: chosen.length }),
    );
    if (done !== undefined) setChosen([]);
  };
  const tools =
    chosen.length === 0 ? null : (
      <Button weight="harm" disabled={remove.busy} onClick={() => void takeAway()}>
        {say('Take {chosen, plural, one {it} other {# lines}} away', { chosen: chosen.length })}
      </Button>
    );
  return (
    <Page
      title={say('Harvest')}
      lead={say('What was picked, where, how much, and where it goes.')}
      tabs={tabs}
      actions={<Button onClick={() => setImporting(true)}>{say('Bring in CSV')}</Button>}
    >
      <Shown reading={choices}>{(ready) => <EntryLine choices={ready} date={date} onDate={setDate} />}</Shown>
      <Cautions ids={['animals-flood-contamination', 'hose-sanitation-and-drinking', 'raw-manure']} folded />
      <PeriodFields period={period} />
      <Shown reading={log}>
        {({ rows, all, most }) => (
          <>
            {all > most ? (
              <p className="soft small">
                {say('The newest {most} of {all} lines are shown; choose fewer days to see the others.', { most, all })}
              </p>
            ) : null}
            <Grid
              name="Harvest log"
              rows={rows}
              columns={columns}
              rowId={rowId}
              onEdit={edit}
              onSelect={setChosen}
              failure={change.failure ?? remove.failure}
              tools={tools}
              empty={
                <Empty title={say('Nothing was logged in these days')}>
                  {say('Type a bed or a crop above, then the amount. Or choose other days.')}
                </Empty>
              }
            />
          </>
        )}
      </Shown>
      {importing ? <ImportDialog onClose={() => setImporting(false)} /> : null}
    </Page>
  );
}
