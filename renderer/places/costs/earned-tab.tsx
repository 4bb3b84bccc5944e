import { useMemo } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { Grid } from '../../table/grid.tsx';
import type { TabHead } from '../orders/tab-head.ts';
import { type EarningRow, earningColumns, type GroupBy } from './earning-columns.tsx';
import { StandSheet } from './stand-sheet.tsx';

const groups: readonly { readonly name: GroupBy; readonly title: string; readonly one: string }[] = [
  { name: 'bed', title: 'Beds', one: 'Bed' },
  { name: 'block', title: 'Blocks', one: 'Block' },
  { name: 'design', title: 'Designs', one: 'Design' },
  { name: 'crop', title: 'Crops', one: 'Crop' },
  { name: 'planting', title: 'Plantings', one: 'Planting' },
  { name: 'outlet', title: 'Outlets', one: 'Outlet' },
];

const keys = { area: 'ground', 'bed-days': 'ground and time', plants: 'plants', hours: 'hours', income: 'income' } as const;
const methods = { 'straight-line': 'by the straight line', 'capital-recovery': 'by capital recovery' } as const;
const idOf = (row: EarningRow): string => row.id;

/** Income, cost and margin by bed, block, design, crop, planting or outlet; the rows add up to the season. */
export function EarnedTab({ tabs, choice, season }: TabHead) {
  const [wanted, setBy] = useQueryValue('by');
  const [cropId, setCropId] = useQueryValue('crop');
  const group = groups.find((each) => each.name === wanted) ?? groups[0];
  const by = group?.name ?? 'bed';
  const view = useRead(api.costs.view, { seasonId: season.seasonId, by });
  const reader = useReader();
  const columns = useMemo(
    () => earningColumns(season.seasonId, by, group?.one ?? 'Bed', reader),
    [season.seasonId, by, group?.one, reader],
  );
  return (
    <Page
      title="Costs"
      lead={
        by === 'crop'
          ? 'Open a crop for its break-even, chance and what matters most.'
          : 'Every cost of the season is in exactly one row.'
      }
      tabs={tabs}
      actions={
        <>
          {choice}
          <label className="row small">
            By
            <select value={by} onChange={(event) => setBy(event.target.value)}>
              {groups.map((each) => (
                <option key={each.name} value={each.name}>
                  {each.title}
                </option>
              ))}
            </select>
          </label>
        </>
      }
      sheet={
        cropId === undefined || by !== 'crop' ? null : (
          <StandSheet key={cropId} seasonId={season.seasonId} cropId={cropId} onClose={() => setCropId(undefined)} />
        )
      }
    >
      <Shown reading={view}>
        {(found) =>
          found.rows.length === 0 ? (
            <Empty title="Nothing earned or spent yet">
              Enter harvests and sales at Harvest, purchases at Orders, hours at Harvest.
            </Empty>
          ) : (
            <>
              <Totals found={found} />
              <Grid
                key={found.by}
                name={`What ${group?.title.toLowerCase() ?? 'beds'} earned`}
                rows={found.by === by ? found.rows : []}
                columns={columns}
                rowId={idOf}
                {...(by === 'crop' ? { onOpen: (row: EarningRow) => setCropId(row.id === '' ? undefined : row.id) } : {})}
              />
              <p className="soft small">
                Parts and fill {methods[found.method.parts]}
                {found.method.parts === 'capital-recovery'
                  ? ` at ${(found.method.interest_share * 100).toFixed(1)} % a year`
                  : ''}
                ; shared items by {keys[found.method.overheadKey]} unless a cost says otherwise. Ground on which nothing stood
                keeps its own cost. Change both at Farm.
              </p>
            </>
          )
        }
      </Shown>
    </Page>
  );
}

function Totals({ found }: { readonly found: OutputOf<typeof api.costs.view> }) {
  const reader = useReader();
  const { totals } = found;
  const perHour = totals.labour_h > 0 ? (totals.margin_minor + totals.labour_minor) / totals.labour_h : null;
  return (
    <dl className="figures">
      <div>
        <dt>Income</dt>
        <dd>{reader.money(totals.income_minor)}</dd>
      </div>
      <div>
        <dt>Contribution</dt>
        <dd>{reader.money(totals.contribution_minor)}</dd>
      </div>
      <div>
        <dt>All costs</dt>
        <dd>{reader.money(totals.cost_minor)}</dd>
      </div>
      <div>
        <dt>Margin</dt>
        <dd>{reader.money(totals.margin_minor)}</dd>
      </div>
      <div>
        <dt>For an hour worked</dt>
        <dd>{perHour === null ? '–' : reader.money(Math.round(perHour))}</dd>
      </div>
      <div>
        <dt>Margin a {reader.sign('m2')}</dt>
        <dd>{totals.area_m2 > 0 ? reader.money(Math.round(totals.margin_minor / reader.scale(totals.area_m2, 'm2'))) : '–'}</dd>
      </div>
    </dl>
  );
}
