import { say } from '../words/say.ts';
import type { Queued } from './field-types.ts';

/** What waits on this phone. A refused entry says why and stays until it is meant or taken out. */
export function FieldQueue({
  queue,
  onConfirm,
  onDrop,
}: {
  readonly queue: readonly Queued[];
  readonly onConfirm: (id: string) => void;
  readonly onDrop: (id: string) => void;
}) {
  if (queue.length === 0) return null;
  return (
    <section aria-label={say('Waiting on this phone')}>
      <ul className="field-list">
        {queue.map(({ entry, text, refused }) => (
          <li key={entry.id} className="field-card" data-refused={refused === undefined ? undefined : ''}>
            <p>
              <strong>{text}</strong>
            </p>
            {refused === undefined ? (
              <p className="soft">{say('Waits to be sent.')}</p>
            ) : (
              <>
                <p className="field-fault">{refused}</p>
                <div className="row">
                  <button type="button" onClick={() => onConfirm(entry.id)}>
                    {say('It is right, send it')}
                  </button>
                  <button type="button" onClick={() => onDrop(entry.id)}>
                    {say('Take it out')}
                  </button>
                </div>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
