import type { ReactNode } from 'react';
import { useQueryValue } from '../../../app/address.ts';
import { Page } from '../../../app/page.tsx';
import { Empty, Shown } from '../../../app/states.tsx';
import { Tabs } from '../../../app/tabs.tsx';
import { api } from '../../../client/api.ts';
import { useReader } from '../../../client/reader.tsx';
import { useRead } from '../../../client/use-read.ts';
import { ChoiceField } from '../../../fields/choice-field.tsx';
import { say } from '../../../words/say.ts';
import { SeasonChoice, useSeasonId } from '../season-choice.tsx';
import { CountedView } from './counted-view.tsx';
import { goalTitle } from './goal-words.ts';
import { KeptView } from './kept-view.tsx';
import type { Overview } from './proposal-types.ts';
import { ProposeForm } from './propose-form.tsx';
import { WhatIfView } from './what-if-view.tsx';

const parts = [
  { name: 'propose', title: say('Proposal') },
  { name: 'what-if', title: say('What if') },
  { name: 'counted', title: say('What it counts with') },
] as const;

/** The optimiser's place on the Season page: propose, compare, accept; what if; the figures behind it. */
export function ProposalTab({ tabs }: { readonly tabs: ReactNode }) {
  const [chosenSeason] = useSeasonId();
  const overview = useRead(api.proposals.overview, { seasonId: chosenSeason });
  const [wanted, setPart] = useQueryValue('part');
  const part = parts.find((each) => each.name === wanted)?.name ?? 'propose';
  return (
    <Page
      title={say('Season')}
      tabs={tabs}
      lead={say('What could stand where and when, and how good that is. Nothing is changed until you accept it.')}
      actions={overview.state === 'ready' ? <SeasonChoice seasonId={overview.data.seasonId} /> : null}
    >
      <Shown reading={overview}>
        {(data) => (
          <div className="stack">
            <Tabs tabs={parts} chosen={part} onChoose={setPart} label={say('Parts of the proposal')} />
            {part === 'propose' ? <Propose seasonId={data.seasonId} overview={data} /> : null}
            {part === 'what-if' ? <WhatIfView seasonId={data.seasonId} overview={data} /> : null}
            {part === 'counted' ? <CountedView overview={data} /> : null}
          </div>
        )}
      </Shown>
    </Page>
  );
}

function Propose({ seasonId, overview }: { readonly seasonId: string; readonly overview: Overview }) {
  const reader = useReader();
  const [chosen, setChosen] = useQueryValue('proposal');
  const proposalId = overview.kept.find((kept) => kept.proposalId === chosen)?.proposalId ?? overview.kept[0]?.proposalId;
  if (overview.beds.length === 0)
    return <Empty title={say('No beds to plan yet')}>{say('Build beds first, then come back for a proposal.')}</Empty>;
  return (
    <div className="stack">
      <ProposeForm seasonId={seasonId} onKept={setChosen} />
      {overview.crops.every(({ ordered, marketMost }) => ordered + marketMost === 0) ? (
        <Empty title={say('Nobody has asked for anything yet')}>
          {say(
            'A proposal grows for what is asked for. Enter this season’s standing orders and what the market takes, with prices.',
          )}
        </Empty>
      ) : null}
      {overview.kept.length > 1 && proposalId !== undefined ? (
        <ChoiceField
          label={say('Proposal shown')}
          value={proposalId}
          choices={overview.kept.map(({ proposalId: value, madeAt, goal, margin_minor }) => ({
            value,
            text: `${goalTitle(goal)}: ${reader.money(margin_minor)} (${reader.date(madeAt.slice(0, 10))} ${madeAt.slice(11, 16)})`,
          }))}
          onChange={setChosen}
        />
      ) : null}
      {proposalId === undefined ? (
        <p className="soft">
          {say('{free} plantings of this season may be changed by a proposal; {standing} are pinned or begun and stay.', {
            free: overview.free,
            standing: overview.standing,
          })}
        </p>
      ) : (
        <Kept key={proposalId} proposalId={proposalId} overview={overview} />
      )}
    </div>
  );
}

function Kept({ proposalId, overview }: { readonly proposalId: string; readonly overview: Overview }) {
  const view = useRead(api.proposals.view, { proposalId });
  return <Shown reading={view}>{(data) => <KeptView view={data} overview={overview} />}</Shown>;
}
