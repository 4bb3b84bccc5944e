import { useMemo } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { TabHead } from '../orders/tab-head.ts';
import { type EarningRow, earningColumns, type GroupBy } from './earning-columns.tsx';
import { LinePartsPanel } from './line-parts-panel.tsx';
import { MissingPrices } from './missing-prices.tsx';
import { StandSheet } from './stand-sheet.tsx';

const groups: readonly { readonly name: GroupBy; readonly title: string; readonly one: string }[] = [
  { name: 'bed', title: say('Beds'), one: say('Bed') },
  { name: 'block', title: say('Blocks'), one: say('Block') },
  { name: 'design', title: say('Designs'), one: say('Design') },
  { name: 'crop', title: say('Crops'), one: say('Crop') },
  { name: 'planting', title: say('Plantings'), one: say('Planting') },
  { name: 'outlet', title: say('Outlets'), one: say('Outlet') },
];

const keys = { area: 'ground', 'bed-days': say('ground and time'), plants: 'plants', hours: 'hours', income: 'income' } as const;
const methods = { 'straight-line': say('by the straight line'), 'capital-recovery': say('by capital recovery') } as const;
const idOf = (row: EarningRow): string => row.id;

/** Income, cost and margin by bed, block, design, crop, planting or outlet; the rows add up to the season. */
export function EarnedTab({ tabs, choice, season }: TabHead) {
  const [wanted, setBy] = useQueryValue('by');
  const [cropId, setCropId] = useQueryValue('crop');
  const group = groups.find((each) => each.name === wanted) ?? groups[0];
  const by = group?.name ?? 'bed';
  const view = useRead(api.costs.view, { seasonId: season.seasonId, by });
  const reader = useReader();
  const isMissing = view.state === 'ready' && view.data.unpriced.length > 0;
  const columns = useMemo(
    () => earningColumns(season.seasonId, by, group?.one ?? say('Bed'), reader, isMissing),
    [season.seasonId, by, group?.one, reader, isMissing],
  );
  return (
    <Page
      title={say('Costs')}
      lead={
        by === 'crop'
          ? say('Open a crop for its break-even, chance and what matters most.')
          : say('Every cost of the season is in exactly one row.')
      }
      tabs={tabs}
      actions={
        <>
          {choice}
          <label className="row small">
            {say('By')}
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
            <Empty title={say('Nothing earned or spent yet')}>
              {say('Enter harvests and sales at Harvest, purchases at Orders, hours at Harvest.')}
            </Empty>
          ) : (
            <>
              <Totals found={found} />
              <MissingPrices missing={found.unpriced} />
              <Grid
                key={found.by}
                name={say('What {group} earned', { group: group?.title.toLowerCase() ?? 'beds' })}
                rows={found.by === by ? found.rows : []}
                columns={columns}
                rowId={idOf}
                {...(by === 'crop' ? { onOpen: (row: EarningRow) => setCropId(row.id === '' ? undefined : row.id) } : {})}
              />
              <LinePartsPanel seasonId={season.seasonId} />
              <p className="soft small">
                {say(
                  'Parts and fill {methods}{more}; shared items by {keys} unless a cost says otherwise. Ground on which nothing stood keeps its own cost. Change both at Farm.',
                  {
                    methods: methods[found.method.parts],
                    more:
                      found.method.parts === 'capital-recovery'
                        ? say(' at {interest} % a year', { interest: reader.number(found.method.interest_share, 'share', 2) })
                        : '',
                    keys: keys[found.method.overheadKey],
                  },
                )}
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
  const missing = found.unpriced.length > 0;
  const perHour = totals.labour_h > 0 ? (totals.margin_minor + totals.labour_minor) / totals.labour_h : null;
  return (
    <dl className="figures">
      <div>
        <dt>{say('Income')}</dt>
        <dd>{reader.money(totals.income_minor)}</dd>
      </div>
      <div>
        <dt>{missing ? say('Contribution, at most') : say('Contribution')}</dt>
        <dd>{reader.money(totals.contribution_minor)}</dd>
      </div>
      <div>
        <dt>{missing ? say('All costs, at least') : say('All costs')}</dt>
        <dd>{reader.money(totals.cost_minor)}</dd>
      </div>
      <div>
        <dt>{missing ? say('Margin, at most') : say('Margin')}</dt>
        <dd>{reader.money(totals.margin_minor)}</dd>
      </div>
      <div>
        <dt>{missing ? say('For an hour worked, at most') : say('For an hour worked')}</dt>
        <dd>{perHour === null ? '–' : reader.money(Math.round(perHour))}</dd>
      </div>
      <div>
        <dt>
          {missing
            ? say('Margin a {sign}, at most', { sign: reader.sign('m2') })
            : say('Margin a {sign}', { sign: reader.sign('m2') })}
        </dt>
        <dd>{totals.area_m2 > 0 ? reader.money(Math.round(totals.margin_minor / reader.scale(totals.area_m2, 'm2'))) : '–'}</dd>
      </div>
    </dl>
  );
}
