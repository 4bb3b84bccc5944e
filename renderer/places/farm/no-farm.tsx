import { Page } from '../../app/page.tsx';
import { say } from '../../words/say.ts';
import { OpenFarms } from './files-tab.tsx';
import { NewFarm } from './new-farm.tsx';

/** What is shown when no farm is open: make one, open one, or look about in the invented sample. */
export function NoFarm() {
  return (
    <Page
      title={say('Welcome')}
      lead={say('No farm is open in this window. A farm is one file on this computer; nothing leaves it.')}
    >
      <NewFarm />
      <OpenFarms here={undefined} />
    </Page>
  );
}
