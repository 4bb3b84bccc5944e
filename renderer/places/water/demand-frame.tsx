import type { ReactNode } from 'react';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { say } from '../../words/say.ts';
import { type Demand, type Overview, useDemand, useDemandChoice } from './demand-data.ts';

/** Season and weather year over every tab of the demand; says what to do where there is no weather or no bed. */
export function DemandFrame({
  children,
  withYear = true,
  more,
}: {
  readonly children: (demand: Demand, overview: Overview) => ReactNode;
  readonly withYear?: boolean;
  /** Further choices beside season and year. */
  readonly more?: (demand: Demand) => ReactNode;
}) {
  const reading = useDemand();
  return (
    <Shown reading={reading}>
      {(overview) =>
        overview.season === null ? (
          <Empty title={say('No season yet')} action={<Button onClick={() => go('season', {})}>{say('Start a season')}</Button>}>
            {say('The demand for water is that of a season’s plantings.')}
          </Empty>
        ) : (
          <div className="stack">
            <Choices overview={overview} withYear={withYear} more={overview.demand === null ? null : more?.(overview.demand)} />
            {overview.beds === 0 ? (
              <Empty title={say('No beds yet')} action={<Button onClick={() => go('beds', {})}>{say('Build beds')}</Button>}>
                {say('The demand for water is that of the beds and what grows on them.')}
              </Empty>
            ) : overview.demand === null ? (
              <Empty
                title={say('No whole year of weather')}
                action={<Button onClick={() => go('water', { tab: 'weather' })}>{say('Read a weather file')}</Button>}
              >
                {say(
                  'The demand is reckoned from a weather record: at least one calendar year without a gap in temperatures and rain.',
                )}
              </Empty>
            ) : (
              children(overview.demand, overview)
            )}
          </div>
        )
      }
    </Shown>
  );
}

function Choices({
  overview,
  withYear,
  more,
}: {
  readonly overview: Overview;
  readonly withYear: boolean;
  readonly more: ReactNode;
}) {
  const { setSeason, setYear } = useDemandChoice();
  const years = overview.record?.years ?? [];
  const hot = overview.record?.hottest?.from.slice(0, 4);
  return (
    <div className="row no-print">
      <ChoiceField
        label={say('Plan of season')}
        value={overview.season?.id ?? ''}
        choices={overview.seasons.map(({ id, name }) => ({ value: id, text: name }))}
        onChange={setSeason}
      />
      {withYear && overview.demand !== null ? (
        <ChoiceField
          label={say('In the weather of')}
          value={String(overview.demand.year)}
          choices={years.map((year) => ({
            value: String(year),
            text: String(year) === hot ? say('{year} (hottest week)', { year }) : String(year),
          }))}
          onChange={setYear}
        />
      ) : null}
      {more}
    </div>
  );
}
