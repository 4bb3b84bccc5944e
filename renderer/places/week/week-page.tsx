import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function WeekPage() {
  return (
    <Page title="This week">
      <NamesTable place="week" />
    </Page>
  );
}
