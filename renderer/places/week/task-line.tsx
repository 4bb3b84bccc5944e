import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { useReader } from '../../client/reader.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { say } from '../../words/say.ts';
import { taskDetails } from './task-details.ts';
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
          aria-label={say('Done: {task}', { task: task.title })}
          title={task.due > today ? say('Not yet due') : say('Done today')}
          onClick={() => props.onDone(today)}
        />
      ) : (
        <span aria-hidden="true">{task.state === 'done' ? '✓' : '–'}</span>
      )}
      <div>
        <span className="task-title">{task.title}</span> <span className="small faint">{taskDetails(task, reader)}</span>
      </div>
      <div className="row no-print">
        {task.state !== 'open' ? (
          <Button weight="quiet" onClick={props.onOpen}>
            {say('Open again')}
          </Button>
        ) : asking === null ? (
          <>
            <Button
              weight="quiet"
              onClick={() => setAsking('done')}
              aria-label={say('Done on another day: {task}', { task: task.title })}
            >
              {say('Done on…')}
            </Button>
            <Button weight="quiet" onClick={() => setAsking('move')} aria-label={say('Move: {task}', { task: task.title })}>
              {say('Move')}
            </Button>
            <Button weight="quiet" onClick={props.onSkip} aria-label={say('Skip: {task}', { task: task.title })}>
              {say('Skip')}
            </Button>
            {task.plantingId === null ? null : (
              <Button
                weight="quiet"
                icon="season"
                name={say('Show on the board: {task}', { task: task.title })}
                onClick={() => go('season', { planting: task.plantingId ?? '' })}
              />
            )}
          </>
        ) : (
          <>
            <DateField label={asking === 'done' ? say('Done on') : say('Move to')} value={date} onChange={setDate} />
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
              {asking === 'done' ? say('Done') : say('Move')}
            </Button>
            <Button weight="quiet" onClick={() => setAsking(null)}>
              {say('Cancel')}
            </Button>
          </>
        )}
      </div>
    </div>
  );
}
