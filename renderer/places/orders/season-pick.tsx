import type { ReactNode } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

export type PickedSeason = OutputOf<typeof api.costs.seasons>[number];

/** Which season is looked at when the address names none: the newest, or the newest that has begun. */
export type SeasonWish = 'newest' | 'begun';

/** The season of the address, or the one wished for, with the choice to show above the page. */
export function WithSeason({
  wish,
  children,
}: {
  readonly wish: SeasonWish;
  readonly children: (season: PickedSeason, choice: ReactNode) => ReactNode;
}) {
  const seasons = useRead(api.costs.seasons, undefined);
  const [chosen, choose] = useQueryValue('season');
  return (
    <Shown reading={seasons}>
      {(all) => {
        const usual = (wish === 'begun' ? all.filter((each) => each.state !== 'planning').at(-1) : undefined) ?? all.at(-1);
        const season = all.find((each) => each.seasonId === chosen) ?? usual;
        if (season === undefined) return <Empty title={say('No season yet')}>{say('Make a season at Season first.')}</Empty>;
        const choice = (
          <label className="row small">
            {say('Season')}
            <select value={season.seasonId} onChange={(event) => choose(event.target.value)}>
              {all.map((each) => (
                <option key={each.seasonId} value={each.seasonId}>
                  {each.name}
                </option>
              ))}
            </select>
          </label>
        );
        return children(season, choice);
      }}
    </Shown>
  );
}
