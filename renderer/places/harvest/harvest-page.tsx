import './harvest.css';
import { useQueryValue } from '../../app/address.ts';
import { tabsOf } from '../../app/place-tabs.ts';
import { Shown } from '../../app/states.tsx';
import { Tabs } from '../../app/tabs.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { HoursTab } from './hours-tab.tsx';
import { LogTab } from './log-tab.tsx';
import { PricesTab } from './prices-tab.tsx';
import { SalesTab } from './sales-tab.tsx';
import { UnitsTab } from './units-tab.tsx';
import { YieldsTab } from './yields-tab.tsx';

const known = tabsOf.harvest;

type TabName = (typeof known)[number]['name'];

export function HarvestPage() {
  const [asked, setTab] = useQueryValue('tab');
  const now = useRead(api.soilTests.today, undefined);
  const tab: TabName = known.find((each) => each.name === asked)?.name ?? 'log';
  const tabs = <Tabs tabs={known} chosen={tab} onChoose={setTab} label={say('Harvest')} />;
  return (
    <Shown reading={now}>
      {({ today }) => {
        switch (tab) {
          case 'log':
            return <LogTab tabs={tabs} today={today} />;
          case 'sales':
            return <SalesTab tabs={tabs} today={today} />;
          case 'prices':
            return <PricesTab tabs={tabs} today={today} />;
          case 'hours':
            return <HoursTab tabs={tabs} today={today} />;
          case 'yields':
            return <YieldsTab tabs={tabs} />;
          case 'units':
            return <UnitsTab tabs={tabs} />;
        }
      }}
    </Shown>
  );
}
