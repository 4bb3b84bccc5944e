import { useState } from 'react';
import { say } from '../words/say.ts';
import { FieldHarvest } from './field-harvest.tsx';
import { FieldQueue } from './field-queue.tsx';
import { FieldTasks } from './field-tasks.tsx';
import { Pair } from './pair.tsx';
import { useField } from './use-field.ts';

const states = {
  asking: say('Asking the computer…'),
  here: say('Connected to the computer.'),
  away: say('The computer is out of reach. Entries wait on this phone.'),
  unpaired: say('Not connected.'),
} as const;

/** A phone in the field: this week's work and the harvest, read and logged; entries wait here when the computer is out of reach. */
export function FieldPage() {
  const field = useField();
  const [tab, setTab] = useState<'week' | 'harvest'>('week');
  const waiting = field.queue.length;
  return (
    <div className="field-shell">
      <header className="field-head">
        <h1>{say('In the field')}</h1>
        <p role="status" data-state={field.state}>
          {states[field.state]}
          {waiting === 0 ? '' : ` ${waiting} ${say('{waiting, plural, one {entry waits} other {entries wait}}', { waiting })}.`}
        </p>
      </header>
      <main>
        {field.state === 'unpaired' ? <Pair onPaired={() => void field.ask()} /> : null}
        <FieldQueue queue={field.queue} onConfirm={field.confirm} onDrop={field.drop} />
        {field.week === undefined || field.state === 'unpaired' ? null : (
          <>
            <nav className="field-tabs" aria-label={say('What to do')}>
              <button type="button" aria-pressed={tab === 'week'} onClick={() => setTab('week')}>
                {say('This week')}
              </button>
              <button type="button" aria-pressed={tab === 'harvest'} onClick={() => setTab('harvest')}>
                {say('Harvest')}
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
