import { useQueryValue } from '../../app/address.ts';
import { tabsOf } from '../../app/place-tabs.ts';
import { Tabs } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { WithSeason } from '../orders/season-pick.tsx';
import { EarnedTab } from './earned-tab.tsx';
import { MapTab } from './map-tab.tsx';
import { OverheadsTab } from './overheads-tab.tsx';
import { PlanTab } from './plan-tab.tsx';
import { RecordsTab } from './records-tab.tsx';
import { SeasonsTab } from './seasons-tab.tsx';
import { TraceTab } from './trace-tab.tsx';

const tabs = tabsOf.costs;

/** Which beds and which crops paid for themselves, and the records behind it. */
export function CostsPage() {
  const [wanted, setTab] = useQueryValue('tab');
  const tab = tabs.find((each) => each.name === wanted)?.name ?? 'earned';
  const bar = <Tabs label={say('Parts of costs')} tabs={tabs} chosen={tab} onChoose={setTab} />;
  return (
    <WithSeason wish="begun">
      {(season, choice) => {
        const head = { tabs: bar, choice, season };
        switch (tab) {
          case 'earned':
            return <EarnedTab {...head} />;
          case 'plan':
            return <PlanTab {...head} />;
          case 'map':
            return <MapTab {...head} />;
          case 'seasons':
            return <SeasonsTab {...head} />;
          case 'overheads':
            return <OverheadsTab {...head} />;
          case 'trace':
            return <TraceTab {...head} />;
          case 'records':
            return <RecordsTab {...head} />;
          default:
            return null;
        }
      }}
    </WithSeason>
  );
}
