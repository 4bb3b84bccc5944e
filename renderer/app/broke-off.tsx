import { api } from '../client/api.ts';
import { useChange } from '../client/use-change.ts';
import { useRead } from '../client/use-read.ts';
import { say } from '../words/say.ts';
import { addressOf, go } from './address.ts';

/** At the foot of the window, after the program broke off: that it did, until the reader looked or put it away. */
export function BrokeOff() {
  const reports = useRead(api.program.reports, undefined);
  const see = useChange(api.program.seeReports);
  if (reports.state !== 'ready' || reports.data.every((report) => report.seen)) return null;
  return (
    <span className="foot-note">
      {say('The program broke off when it ran last. What was entered is kept.')}{' '}
      <a
        href={addressOf('farm', { tab: 'program' })}
        onClick={(event) => {
          event.preventDefault();
          void see.run(undefined);
          go('farm', { tab: 'program' });
        }}
      >
        {say('See the report')}
      </a>{' '}
      <button type="button" className="foot-button" disabled={see.busy} onClick={() => void see.run(undefined)}>
        {say('Put this away')}
      </button>
    </span>
  );
}
