import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function BedsPage() {
  return (
    <Page title="Beds">
      <NamesTable place="beds" />
    </Page>
  );
}
