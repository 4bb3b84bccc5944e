import { useSyncExternalStore } from 'react';
import { announcements } from '../client/announce.ts';
import { BrokeOff } from './broke-off.tsx';

/** The last result, at the foot of the window and read out; it stays until the next one. */
export function ResultLine() {
  const { text, urgency, at } = useSyncExternalStore(announcements.subscribe, announcements.latest);
  return (
    <footer className="shell-foot">
      <span role="status" aria-live={urgency === 'now' ? 'assertive' : 'polite'} data-urgency={urgency}>
        <span key={at}>{text}</span>
      </span>
      <BrokeOff />
    </footer>
  );
}
