import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { tabsOf } from '../../app/place-tabs.ts';
import { Tabs } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { CropsTab } from './crops-tab.tsx';
import { DesignsTab } from './designs-tab.tsx';
import { MaterialsTab } from './materials-tab.tsx';
import { OffersTab } from './offers-tab.tsx';
import { SuppliersTab } from './suppliers-tab.tsx';

const tabs = tabsOf.library;

/** What ships with the program and the grower's own numbers over it. */
export function LibraryPage() {
  const [wanted, setTab] = useQueryValue('tab');
  const tab = tabs.find((each) => each.name === wanted)?.name ?? 'crops';
  const bar = <Tabs label={say('Parts of the library')} tabs={tabs} chosen={tab} onChoose={setTab} />;
  switch (tab) {
    case 'crops':
      return <CropsTab tabs={bar} />;
    case 'materials':
      return <MaterialsTab tabs={bar} />;
    case 'designs':
      return <DesignsTab tabs={bar} />;
    case 'suppliers':
      return <SuppliersTab tabs={bar} />;
    case 'offers':
      return <OffersTab tabs={bar} />;
    default:
      return <Page title={say('Library')}>{null}</Page>;
  }
}
