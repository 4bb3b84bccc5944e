import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function HarvestPage() {
  return (
    <Page title="Harvest">
      <NamesTable place="harvest" />
    </Page>
  );
}
