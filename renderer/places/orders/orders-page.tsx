import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function OrdersPage() {
  return (
    <Page title="Orders">
      <NamesTable place="orders" />
    </Page>
  );
}
