import { Button } from '../app/button.tsx';
import { say } from '../words/say.ts';

/** Why a block or an edit was not taken in; nothing was changed. */
export function GridFaults({ messages, onClear }: { readonly messages: readonly string[]; readonly onClear: () => void }) {
  if (messages.length === 0) return null;
  return (
    <div className="grid-faults" role="alert">
      <div>
        <p>
          <strong>{say('Not taken in; nothing was changed.')}</strong>
        </p>
        <ul>
          {messages.map((message) => (
            <li key={message}>{message}</li>
          ))}
        </ul>
      </div>
      <Button weight="quiet" icon="close" name={say('Close this list')} onClick={onClear} />
    </div>
  );
}
