import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Tabs } from '../../app/tabs.tsx';
import { LineTabBody, lineTabs } from './line-tabs.tsx';

export function WaterPage() {
  const [asked, setTab] = useQueryValue('tab');
  const tab = lineTabs.find((each) => each.name === asked)?.name ?? 'line';
  return (
    <Page title="Water" tabs={<Tabs label="Water" tabs={lineTabs} chosen={tab} onChoose={setTab} />}>
      <LineTabBody name={tab} />
    </Page>
  );
}
