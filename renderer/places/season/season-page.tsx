import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function SeasonPage() {
  return (
    <Page title="Season">
      <NamesTable place="season" />
    </Page>
  );
}
