import type { ReactNode } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { tabsOf } from '../../app/place-tabs.ts';
import { Tabs } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { BenchTab } from './bench-tab.tsx';
import { BoardTab } from './board-tab.tsx';
import { DemandTab } from './demand-tab.tsx';
import { PlantingsTab } from './plantings-tab.tsx';
import { ProposalTab } from './proposal/proposal-tab.tsx';
import { ReportTab } from './report-tab.tsx';
import { SeasonGate } from './season-gate.tsx';

const tabs = tabsOf.season;

/** What goes in which bed, and when. */
export function SeasonPage() {
  const [wanted, setTab] = useQueryValue('tab');
  const tab = tabs.find((each) => each.name === wanted)?.name ?? 'board';
  const bar = <Tabs label={say('Parts of the season')} tabs={tabs} chosen={tab} onChoose={setTab} />;
  return <SeasonGate>{tabOf(tab, bar)}</SeasonGate>;
}

function tabOf(tab: (typeof tabs)[number]['name'], bar: ReactNode): ReactNode {
  switch (tab) {
    case 'board':
      return <BoardTab tabs={bar} />;
    case 'plantings':
      return <PlantingsTab tabs={bar} />;
    case 'demand':
      return <DemandTab tabs={bar} />;
    case 'bench':
      return <BenchTab tabs={bar} />;
    case 'proposal':
      return <ProposalTab tabs={bar} />;
    case 'report':
      return <ReportTab tabs={bar} />;
  }
}
