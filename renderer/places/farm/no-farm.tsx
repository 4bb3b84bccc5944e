import { Page } from '../../app/page.tsx';
import { Empty } from '../../app/states.tsx';

/** What is shown when no farm is open. */
export function NoFarm() {
  return (
    <Page title="No farm is open">
      <Empty title="Open a farm or make a new one">A farm is one file on this computer.</Empty>
    </Page>
  );
}
