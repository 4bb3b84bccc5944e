import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { useReader } from '../../client/reader.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { laterOf, type Task } from './week-days.ts';

/** One thing to do: done (on which day), skipped, moved. */
export function TaskLine(props: {
  readonly task: Task;
  readonly today: IsoDate;
  readonly onDone: (date: IsoDate) => void;
  readonly onSkip: () => void;
  readonly onOpen: () => void;
  readonly onMove: (to: IsoDate) => void;
}) {
  const { task, today } = props;
  const reader = useReader();
  const [asking, setAsking] = useState<'done' | 'move' | null>(null);
  const [date, setDate] = useState<IsoDate | null>(laterOf(task.due, today));
  return (
    <div className="task" data-state={task.state} data-late={task.late ? '' : undefined}>
      {task.state === 'open' ? (
        <button
          type="button"
          className="task-box"
          disabled={task.due > today && !task.late}
          aria-label={`Done: ${task.title}`}
          title={task.due > today ? 'Not yet due' : 'Done today'}
          onClick={() => props.onDone(today)}
        />
      ) : (
        <span aria-hidden="true">{task.state === 'done' ? '✓' : '–'}</span>
      )}
      <div>
        <span className="task-title">{task.title}</span>{' '}
        <span className="small faint">
          {[
            task.places !== '' && !task.title.includes(task.places) ? `for ${task.places}` : '',
            task.late ? `was due ${reader.date(task.due)}` : '',
            task.state === 'done' && task.doneDate !== null ? `done ${reader.date(task.doneDate)}` : '',
            task.state === 'skipped' ? 'skipped' : '',
            task.note,
          ]
            .filter((part) => part !== '')
            .join(', ')}
        </span>
      </div>
      <div className="row no-print">
        {task.state !== 'open' ? (
          <Button weight="quiet" onClick={props.onOpen}>
            Open again
          </Button>
        ) : asking === null ? (
          <>
            <Button weight="quiet" onClick={() => setAsking('done')} aria-label={`Done on another day: ${task.title}`}>
              Done on…
            </Button>
            <Button weight="quiet" onClick={() => setAsking('move')} aria-label={`Move: ${task.title}`}>
              Move
            </Button>
            <Button weight="quiet" onClick={props.onSkip} aria-label={`Skip: ${task.title}`}>
              Skip
            </Button>
            {task.plantingId === null ? null : (
              <Button
                weight="quiet"
                icon="season"
                name={`Show on the board: ${task.title}`}
                onClick={() => go('season', { planting: task.plantingId ?? '' })}
              />
            )}
          </>
        ) : (
          <>
            <DateField label={asking === 'done' ? 'Done on' : 'Move to'} value={date} onChange={setDate} />
            <Button
              weight="main"
              disabled={date === null}
              onClick={() => {
                if (date === null) return;
                if (asking === 'done') props.onDone(date);
                else props.onMove(date);
                setAsking(null);
              }}
            >
              {asking === 'done' ? 'Done' : 'Move'}
            </Button>
            <Button weight="quiet" onClick={() => setAsking(null)}>
              Cancel
            </Button>
          </>
        )}
      </div>
    </div>
  );
}
