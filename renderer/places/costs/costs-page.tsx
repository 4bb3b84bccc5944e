import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function CostsPage() {
  return (
    <Page title="Costs">
      <NamesTable place="costs" />
    </Page>
  );
}
