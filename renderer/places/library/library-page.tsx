import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function LibraryPage() {
  return (
    <Page title="Library">
      <NamesTable place="library" />
    </Page>
  );
}
