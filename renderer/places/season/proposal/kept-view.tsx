import { useMemo, useState } from 'react';
import type { IsoDate } from '../../../../planner/calendar.ts';
import { useQueryValue } from '../../../app/address.ts';
import { Button } from '../../../app/button.tsx';
import { Tabs } from '../../../app/tabs.tsx';
import { api } from '../../../client/api.ts';
import { useReader } from '../../../client/reader.tsx';
import { useChange } from '../../../client/use-change.ts';
import { useRead } from '../../../client/use-read.ts';
import { familyMarks } from '../../../look/family-mark.tsx';
import { Grid } from '../../../table/grid.tsx';
import { say } from '../../../words/say.ts';
import { FigureTable } from './figure-table.tsx';
import { goalTitle } from './goal-words.ts';
import { moveColumns } from './move-columns.tsx';
import { bedsThatChange, countKinds, type MoveRow, moveRows } from './move-rows.ts';
import { PlanStrips } from './plan-strips.tsx';
import { ProposalCharts } from './proposal-charts.tsx';
import type { Overview, ProposalView } from './proposal-types.ts';
import { BestPossible } from './search-progress.tsx';
import { ShortOrders } from './short-orders.tsx';
import { monthTicks, strips } from './strip-rows.ts';

const looks = [
  { name: 'beds', title: say('Bed by bed') },
  { name: 'list', title: say('List of changes') },
  { name: 'orders', title: say('Orders') },
  { name: 'charts', title: say('Hours, water, worth') },
] as const;

const rowId = (row: MoveRow): string => row.key;

/** A kept proposal against the plan as it is now, to be accepted whole or bed by bed. */
export function KeptView({ view, overview }: { readonly view: ProposalView; readonly overview: Overview }) {
  const reader = useReader();
  const { moves, result } = view;
  const [wanted, setLook] = useQueryValue('look');
  const look = looks.find((each) => each.name === wanted)?.name ?? 'beds';
  const order = useMemo(() => overview.beds.map(({ bedId }) => bedId), [overview.beds]);
  const open = useMemo(() => bedsThatChange(moves, order), [moves, order]);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const chosen = useMemo(() => new Set(open.filter((bedId) => !left.has(bedId))), [open, left]);
  const accept = useChange(api.proposals.accept);
  const forget = useChange(api.proposals.forget);
  const counts = countKinds(moves);

  const toggle = (bedId: string): void =>
    setLeft((now) => new Set(now.has(bedId) ? [...now].filter((each) => each !== bedId) : [...now, bedId]));
  const names = useMemo(() => namesOf(overview, view, (iso) => reader.date(iso)), [overview, view, reader]);
  const rows = useMemo(() => moveRows(moves, names.bed, names.crop), [moves, names]);
  const takeOver = (): void => {
    const all = chosen.size === open.length;
    void accept.run(
      { proposalId: view.proposalId, bedIds: [...chosen] },
      say('{more} is in your plan. One undo takes it back.', {
        more: all ? say('The whole proposal') : say('The proposal for {chosen} beds', { chosen: chosen.size }),
      }),
    );
  };
  return (
    <div className="stack">
      <section className="panel stack" aria-label={say('What the proposal comes to')}>
        <div className="row proposal-title">
          <h2>{goalTitle(view.goal)}</h2>
          <span className="soft small">
            {say('made {madeAt} {madeAt2}, {effort} search', {
              madeAt: reader.date(view.madeAt.slice(0, 10)),
              madeAt2: view.madeAt.slice(11, 16),
              effort: view.effort,
            })}
          </span>
          <Button
            weight="quiet"
            className="button"
            onClick={() =>
              void forget.run(
                { seasonId: view.seasonId, proposalId: view.proposalId },
                say('The proposal was thrown away. Your plan is as it was.'),
              )
            }
          >
            {say('Throw away')}
          </Button>
        </div>
        <p>
          <strong>
            <BestPossible found={{ ...result, margin_minor: result.reached_minor }} />
          </strong>{' '}
          {open.length === 0
            ? say('Your plan is this proposal already.')
            : say(
                '{new} plantings are new, {moves} move to another bed, {shifts} keep their bed at another time, {stays} stay, {goes} go.',
                { new: counts.new, moves: counts.moves, shifts: counts.shifts, stays: counts.stays, goes: counts.goes },
              )}
        </p>
        <ChosenFigures view={view} chosen={chosen} open={open} />
        <div className="row">
          <Button weight="main" onClick={takeOver} disabled={accept.busy || chosen.size === 0}>
            {chosen.size === open.length
              ? say('Accept all of it')
              : say('Accept {chosen} of {open} beds', { chosen: chosen.size, open: open.length })}
          </Button>
          <Button weight="quiet" onClick={() => setLeft(new Set())} disabled={left.size === 0}>
            {say('Tick every bed')}
          </Button>
          <Button weight="quiet" onClick={() => setLeft(new Set(open))} disabled={chosen.size === 0}>
            {say('Tick none')}
          </Button>
          <span className="soft small">{say('Pinned plantings, and what is sown already, stay as they are.')}</span>
        </div>
        {accept.failure === undefined ? null : (
          <p role="alert" className="failed">
            {accept.failure.message}
          </p>
        )}
      </section>
      <Tabs tabs={looks} chosen={look} onChoose={setLook} label={say('Ways to look at the proposal')} />
      {look === 'list' ? <Grid name="Changes of the proposal" rows={rows} columns={moveColumns} rowId={rowId} /> : null}
      {look === 'orders' ? <ShortOrders view={view} /> : null}
      {look === 'charts' ? <ProposalCharts view={view} /> : null}
      {look === 'beds' ? (
        <PlanStrips
          strips={strips(
            moves,
            overview.beds,
            { first: (result.weeks[0] ?? '2000-01-03') as IsoDate, weeks: result.weeks.length },
            names,
          )}
          months={monthTicks(result.weeks)}
          marks={familyMarks(overview.crops.map(({ family }) => family))}
          chosen={chosen}
          onToggle={toggle}
        />
      ) : null}
    </div>
  );
}

function namesOf(overview: Overview, view: ProposalView, date: (iso: string) => string) {
  const beds = new Map(overview.beds.map(({ bedId, code }) => [bedId, code]));
  const crops = new Map(view.result.crops.map(({ cropId, name }) => [cropId, name]));
  const families = new Map(overview.crops.map(({ cropId, family }) => [cropId, family]));
  return {
    bed: (bedId: string) => beds.get(bedId) ?? '',
    crop: (cropId: string) => crops.get(cropId) ?? cropId,
    family: (cropId: string) => families.get(cropId) ?? '',
    date,
  };
}

/** Present plan, proposal, and the plan with only the ticked beds taken over. */
function ChosenFigures({
  view,
  chosen,
  open,
}: {
  readonly view: ProposalView;
  readonly chosen: ReadonlySet<string>;
  readonly open: readonly string[];
}) {
  const some = chosen.size > 0 && chosen.size < open.length;
  const part = useRead(api.proposals.figuresWith, { proposalId: view.proposalId, bedIds: some ? [...chosen] : [] });
  return (
    <FigureTable
      caption={say('Present plan and proposal')}
      plans={[
        { name: say('Present plan'), figures: view.present },
        { name: say('Proposal'), figures: view.whole },
        ...(some && part.state === 'ready'
          ? [{ name: say('With {chosen} beds of it', { chosen: chosen.size }), figures: part.data }]
          : []),
      ]}
    />
  );
}
