import { useState } from 'react';
import { FieldHarvest } from './field-harvest.tsx';
import { FieldQueue } from './field-queue.tsx';
import { FieldTasks } from './field-tasks.tsx';
import { Pair } from './pair.tsx';
import { useField } from './use-field.ts';

const states = {
  asking: 'Asking the computer…',
  here: 'Connected to the computer.',
  away: 'The computer is out of reach. Entries wait on this phone.',
  unpaired: 'Not connected.',
} as const;

/** A phone in the field: this week's work and the harvest, read and logged; entries wait here when the computer is out of reach. */
export function FieldPage() {
  const field = useField();
  const [tab, setTab] = useState<'week' | 'harvest'>('week');
  const waiting = field.queue.length;
  return (
    <div className="field-shell">
      <header className="field-head">
        <h1>In the field</h1>
        <p role="status" data-state={field.state}>
          {states[field.state]}
          {waiting === 0 ? '' : ` ${waiting} ${waiting === 1 ? 'entry waits' : 'entries wait'}.`}
        </p>
      </header>
      <main>
        {field.state === 'unpaired' ? <Pair onPaired={() => void field.ask()} /> : null}
        <FieldQueue queue={field.queue} onConfirm={field.confirm} onDrop={field.drop} />
        {field.week === undefined ? null : (
          <>
            <nav className="field-tabs" aria-label="What to do">
              <button type="button" aria-pressed={tab === 'week'} onClick={() => setTab('week')}>
                This week
              </button>
              <button type="button" aria-pressed={tab === 'harvest'} onClick={() => setTab('harvest')}>
                Harvest
              </button>
            </nav>
            {tab === 'week' ? (
              <FieldTasks week={field.week} queue={field.queue} onLog={field.log} />
            ) : (
              <FieldHarvest week={field.week} onLog={field.log} />
            )}
          </>
        )}
      </main>
    </div>
  );
}
