import { useMemo, useState } from 'react';
import { addDays, type IsoDate, isIsoDate, isoWeek } from '../../../planner/calendar.ts';
import { setQuery, useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { PdfButton } from '../../print/pdf-button.tsx';
import { say } from '../../words/say.ts';
import { AddTask } from './add-task.tsx';
import { CalendarLink } from './calendar-link.tsx';
import { NothingNow } from './nothing-now.tsx';
import { TaskLine } from './task-line.tsx';
import { laterOf, type Task, weekDays } from './week-days.ts';
import { weekOnPaper } from './week-on-paper.ts';
import { WhatElse } from './what-else.tsx';

/** What to sow, set out, feed, harvest and clear this week, and what is late. */
export function WeekPage() {
  const reader = useReader();
  const [asked] = useQueryValue('week');
  const monday = asked !== undefined && isIsoDate(asked) ? asked : null;
  const week = useRead(api.week.list, { monday, weeks: 1 });
  const [adding, setAdding] = useState(false);
  const done = useChange(api.week.done);
  const skip = useChange(api.week.skip);
  const open = useChange(api.week.open);
  const move = useChange(api.week.move);
  const failure = done.failure ?? skip.failure ?? open.failure ?? move.failure;
  const from = week.state === 'ready' ? week.data.from : null;
  const goTo = (to: IsoDate | undefined) => setQuery({ week: to });
  return (
    <Page
      title={say('This week')}
      lead={
        from === null
          ? undefined
          : say('Week {week}: {from} to {addDays}', {
              week: isoWeek(from).week,
              from: reader.date(from),
              addDays: reader.date(addDays(from, 6)),
            })
      }
      actions={
        <>
          <Button name={say('The week before')} onClick={() => (from === null ? undefined : goTo(addDays(from, -7)))}>
            ←
          </Button>
          <Button onClick={() => goTo(undefined)}>{say('This week')}</Button>
          <Button name={say('The week after')} onClick={() => (from === null ? undefined : goTo(addDays(from, 7)))}>
            →
          </Button>
          {from === null ? null : <CalendarLink from={from} />}
          <Button icon="print" onClick={() => window.print()}>
            {say('Print')}
          </Button>
          {week.state === 'ready' ? (
            <PdfButton title={say('This week')} make={async () => weekOnPaper(week.data.tasks, week.data.from, reader)} />
          ) : null}
          <Button weight="main" icon="add" onClick={() => setAdding(true)}>
            {say('Add task')}
          </Button>
        </>
      }
    >
      {failure === undefined ? null : <p className="failed">{failure.message}</p>}
      <Shown reading={week}>
        {(data) => (
          <Week
            tasks={data.tasks}
            from={data.from}
            today={data.today}
            onDone={(tasks, date) => void done.run({ tasks, date }, say('Done. Later dates follow the real one.'))}
            onSkip={(tasks) => void skip.run({ tasks }, say('Skipped.'))}
            onOpen={(task) => void open.run({ task }, say('Open again.'))}
            onMove={(tasks, to) => void move.run({ tasks, to }, say('Moved.'))}
          />
        )}
      </Shown>
      {adding && from !== null ? <AddTask due={from} onClose={() => setAdding(false)} /> : null}
    </Page>
  );
}

function Week(props: {
  readonly tasks: readonly Task[];
  readonly from: IsoDate;
  readonly today: IsoDate;
  readonly onDone: (tasks: Task[], date: IsoDate) => void;
  readonly onSkip: (tasks: Task[]) => void;
  readonly onOpen: (task: Task) => void;
  readonly onMove: (tasks: Task[], to: IsoDate) => void;
}) {
  const days = useMemo(() => weekDays(props.tasks, props.from), [props.tasks, props.from]);
  const reader = useReader();
  const late = days.late.filter((task) => task.state === 'open');
  const doneDate = props.today;
  const line = (task: Task) => (
    <TaskLine
      key={task.key}
      task={task}
      today={props.today}
      onDone={(date) => props.onDone([task], date)}
      onSkip={() => props.onSkip([task])}
      onOpen={() => props.onOpen(task)}
      onMove={(to) => props.onMove([task], to)}
    />
  );
  return (
    <div className="week-columns">
      <div>
        {props.tasks.length === 0 ? <NothingNow from={props.from} /> : null}
        {late.length === 0 ? null : (
          <section className="week-day">
            <h2>
              {say('Late ({late})', { late: late.length })}{' '}
              <Button weight="quiet" onClick={() => props.onMove(late, laterOf(props.from, props.today))}>
                {say('Move all to {more}', { more: props.from > props.today ? say('this week') : say('today') })}
              </Button>
            </h2>
            {late.map(line)}
          </section>
        )}
        {days.days.map(({ date, tasks }) =>
          tasks.length === 0 ? null : (
            <section key={date} className="week-day">
              <h2>
                {reader.date(date, 'long')}
                {date === props.today ? say(' · today') : ''}
                {date <= doneDate && tasks.some((task) => task.state === 'open') ? (
                  <>
                    {' '}
                    <Button
                      weight="quiet"
                      icon="check"
                      onClick={() =>
                        props.onDone(
                          tasks.filter((task) => task.state === 'open'),
                          date,
                        )
                      }
                    >
                      {say('All done')}
                    </Button>
                  </>
                ) : null}
              </h2>
              {tasks.map(line)}
            </section>
          ),
        )}
      </div>
      <aside className="stack no-print">
        <WhatElse from={props.from} />
        <Cautions ids={['saturated-weight-lifting', 'heat-and-sun']} folded />
      </aside>
    </div>
  );
}
