import type { ReactNode } from 'react';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import { useSeasonId } from './season-choice.tsx';

/** Trays on the propagation bench, week by week, against the room there is. */
export function BenchTab({ tabs }: { readonly tabs: ReactNode }) {
  const reader = useReader();
  const [seasonId] = useSeasonId();
  const bench = useRead(api.demand.bench, { seasonId });
  const board = useRead(api.plantings.board, { seasonId });
  const set = useChange(api.seasons.set);
  return (
    <Page
      title={say('Season')}
      tabs={tabs}
      lead={say('A tray is 10 by 20 in (25 by 51 cm) and stands here from sowing to setting out.')}
    >
      <Shown reading={bench}>
        {({ have_m2, weeks }) => (
          <div className="stack">
            {board.state === 'ready' ? (
              <div style={{ maxWidth: '16rem' }}>
                <QuantityField
                  label={say('Bench there is')}
                  name="bench_m2"
                  value={have_m2}
                  onChange={(benchArea_m2) =>
                    void set.run(
                      { seasonId: board.data.season.id, revision: board.data.season.revision, values: { benchArea_m2 } },
                      say('Changed the bench.'),
                    )
                  }
                />
              </div>
            ) : null}
            {weeks.length === 0 ? (
              <Empty title={say('Nothing stands on the bench')}>
                {say('Raised plantings with a known germination appear here.')}
              </Empty>
            ) : (
              <Chart
                title={say('Bench taken by week')}
                rows={weeks}
                x={{ name: say('Week of'), text: (week) => reader.date(week.week) }}
                unit="m2"
                series={[
                  { name: say('Taken'), as: 'bar', read: (week) => week.bench_m2 },
                  ...(have_m2 === null ? [] : [{ name: say('There is'), as: 'line' as const, read: () => have_m2 }]),
                ]}
                note={
                  have_m2 !== null && weeks.some((week) => week.bench_m2 > have_m2)
                    ? say('Too small in {weeks} weeks.', { weeks: weeks.filter((week) => week.bench_m2 > have_m2).length })
                    : undefined
                }
              />
            )}
          </div>
        )}
      </Shown>
    </Page>
  );
}
