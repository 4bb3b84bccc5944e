import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function FarmPage() {
  return (
    <Page title="Farm">
      <NamesTable place="farm" />
    </Page>
  );
}
