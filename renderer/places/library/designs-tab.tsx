import type { ReactNode } from 'react';
import { Page } from '../../app/page.tsx';
import { NamesTable } from '../names-table.tsx';

export function DesignsTab({ tabs }: { readonly tabs: ReactNode }) {
  return (
    <Page title="Library" tabs={tabs}>
      <NamesTable place="designs" />
    </Page>
  );
}
