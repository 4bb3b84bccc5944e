import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function SoilPage() {
  return (
    <Page title="Soil">
      <NamesTable place="soil" />
    </Page>
  );
}
