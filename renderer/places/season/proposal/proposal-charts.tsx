import { Chart } from '../../../charts/chart.tsx';
import { useReader } from '../../../client/reader.tsx';
import { say } from '../../../words/say.ts';
import type { ProposalView } from './proposal-types.ts';
import { GapChart } from './search-progress.tsx';
import { dearestWeek, weekRows } from './week-rows.ts';

/** Hours, water and what one more of each is worth, week by week. */
export function ProposalCharts({ view }: { readonly view: ProposalView }) {
  const reader = useReader();
  const { result, present } = view;
  const rows = weekRows(result, present);
  const x = { name: say('Week of'), text: ({ monday }: { readonly monday: string }) => reader.date(monday, 'day') };
  const { shadow } = result;
  return (
    <div className="stack">
      <div className="columns">
        <Chart
          title={say('Hours by week')}
          rows={rows}
          x={x}
          unit="h"
          series={[
            { name: say('Proposal'), as: 'bar', read: ({ hours_h }) => hours_h },
            { name: say('Present plan'), as: 'line', read: ({ presentHours_h }) => presentHours_h },
            { name: say('Hours you have'), as: 'line', read: ({ mostHours_h }) => mostHours_h },
          ]}
        />
        {result.zoneNames.map((name, zone) => (
          <Chart
            key={name}
            title={say('Water by week, {name}', { name })}
            rows={rows}
            x={x}
            unit="L"
            series={[
              { name: say('Proposal'), as: 'bar', read: ({ water_L }) => water_L[zone] ?? 0 },
              { name: say('Present plan'), as: 'line', read: ({ presentWater_L }) => presentWater_L[zone] ?? 0 },
              ...(rows.some(({ mostWater_L }) => (mostWater_L[zone] ?? null) !== null)
                ? [
                    {
                      name: say('Most the line gives'),
                      as: 'line' as const,
                      read: ({ mostWater_L }: (typeof rows)[number]) => mostWater_L[zone] ?? null,
                    },
                  ]
                : []),
            ]}
          />
        ))}
      </div>
      {shadow === null ? null : (
        <section className="stack" aria-label={say('What one more is worth')}>
          <h2>{say('What one more is worth')}</h2>
          <p className="soft">
            {say('{dearestWeek} Prices hold for small changes, and where several limits meet at once others would be as right.', {
              dearestWeek:
                dearestWeek(
                  rows,
                  ({ hourWorth_minor }) => hourWorth_minor,
                  (minor, monday) =>
                    say('One more hour in the week of {monday} is worth {minor}.', {
                      monday: reader.date(monday),
                      minor: reader.money(minor),
                    }),
                ) ?? say('No week is short of hours: one more hour is worth nothing.'),
            })}
          </p>
          <div className="columns">
            {rows.some(({ hourWorth_minor }) => hourWorth_minor > 0) ? (
              <Chart
                title={say('One more hour')}
                rows={rows}
                x={x}
                unit="minor"
                series={[{ name: say('Worth of an hour'), as: 'bar', read: ({ hourWorth_minor }) => hourWorth_minor }]}
              />
            ) : null}
            <Chart
              title={say('One bed for that week, per square metre')}
              rows={rows}
              x={x}
              unit="minor"
              series={[{ name: say('What losing it costs'), as: 'bar', read: ({ bedWorth_minor }) => bedWorth_minor }]}
            />
            {result.zoneNames.map((name, zone) =>
              rows.some(({ waterWorth_minor }) => (waterWorth_minor[zone] ?? 0) > 0) ? (
                <Chart
                  key={name}
                  title={say('A hundred litres more, {name}', { name })}
                  rows={rows}
                  x={x}
                  unit="minor"
                  series={[
                    {
                      name: say('Worth of 100 L'),
                      as: 'bar',
                      read: ({ waterWorth_minor }) => 100 * (waterWorth_minor[zone] ?? 0),
                    },
                  ]}
                />
              ) : null,
            )}
          </div>
        </section>
      )}
      {result.gaps.length > 1 ? <GapChart gaps={result.gaps} /> : null}
    </div>
  );
}
