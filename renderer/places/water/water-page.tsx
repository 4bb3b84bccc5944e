import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function WaterPage() {
  return (
    <Page title="Water">
      <NamesTable place="water" />
    </Page>
  );
}
