import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Tabs } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { BedWaterSheet } from './bed-water-sheet.tsx';
import { DemandTabBody, demandTabs } from './demand-tabs.tsx';
import { LineTabBody, lineTabs } from './line-tabs.tsx';

const tabs = [...demandTabs, ...lineTabs];

export function WaterPage() {
  const [asked, setTab] = useQueryValue('tab');
  const [bedId, setBedId] = useQueryValue('bed');
  const ofLine = lineTabs.find((each) => each.name === asked)?.name;
  const ofDemand = demandTabs.find((each) => each.name === asked)?.name ?? 'demand';
  const sheet =
    ofLine !== undefined || bedId === undefined ? null : <BedWaterSheet bedId={bedId} onClose={() => setBedId(undefined)} />;
  return (
    <Page
      title={say('Water')}
      tabs={<Tabs label={say('Water')} tabs={tabs} chosen={ofLine ?? ofDemand} onChoose={setTab} />}
      sheet={sheet}
    >
      {ofLine === undefined ? <DemandTabBody name={ofDemand} /> : <LineTabBody name={ofLine} />}
    </Page>
  );
}
