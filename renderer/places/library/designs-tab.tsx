import type { ReactNode } from 'react';
import { go, useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { say } from '../../words/say.ts';
import { DesignSheet } from '../beds/design-sheet.tsx';
import { DesignsTab as Designs } from '../beds/designs-tab.tsx';

/** Ways to build a bed, the same list and sheet as in Beds. */
export function DesignsTab({ tabs }: { readonly tabs: ReactNode }) {
  const [designId, setDesignId] = useQueryValue('design');
  return (
    <Page
      title={say('Library')}
      tabs={tabs}
      actions={
        <Button weight="main" icon="add" onClick={() => setDesignId('new')}>
          {say('New design')}
        </Button>
      }
      sheet={
        designId === undefined ? null : (
          <DesignSheet
            designId={designId === 'new' ? undefined : designId}
            onClose={() => setDesignId(undefined)}
            onMade={setDesignId}
            onBuild={() => go('beds', { view: 'designs' })}
          />
        )
      }
    >
      <Designs onOpen={setDesignId} onNew={() => setDesignId('new')} />
    </Page>
  );
}
