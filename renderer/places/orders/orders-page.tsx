import { useQueryValue } from '../../app/address.ts';
import { tabsOf } from '../../app/place-tabs.ts';
import { Tabs } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { BudgetTab } from './budget-tab.tsx';
import { ListTab } from './list-tab.tsx';
import { NeedsTab } from './needs-tab.tsx';
import { PurchasesTab } from './purchases-tab.tsx';
import { WithSeason } from './season-pick.tsx';
import { StockTab } from './stock-tab.tsx';

const tabs = tabsOf.orders;

/** What must be bought, where it costs least, what is on hand, and what was spent. */
export function OrdersPage() {
  const [wanted, setTab] = useQueryValue('tab');
  const tab = tabs.find((each) => each.name === wanted)?.name ?? 'needs';
  const bar = <Tabs label={say('Parts of orders')} tabs={tabs} chosen={tab} onChoose={setTab} />;
  return (
    <WithSeason wish="newest">
      {(season, choice) => {
        const head = { tabs: bar, choice, season };
        switch (tab) {
          case 'needs':
            return <NeedsTab {...head} />;
          case 'list':
            return <ListTab {...head} />;
          case 'purchases':
            return <PurchasesTab {...head} />;
          case 'stock':
            return <StockTab {...head} />;
          case 'budget':
            return <BudgetTab {...head} />;
          default:
            return null;
        }
      }}
    </WithSeason>
  );
}
