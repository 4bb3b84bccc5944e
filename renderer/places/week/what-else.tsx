import { useState } from 'react';
import { addDays, type IsoDate } from '../../../planner/calendar.ts';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

const SHOWN = 12;

/** What the weeks ahead bring, and what the plan falls short of this week. */
export function WhatElse({ from }: { readonly from: IsoDate }) {
  const reader = useReader();
  const ahead = useRead(api.week.list, { monday: addDays(from, 7), weeks: 3 });
  const seasons = useRead(api.seasons.list, undefined);
  return (
    <>
      <section className="panel">
        <h2>{say('In the three weeks after')}</h2>
        <Shown reading={ahead}>
          {({ tasks }) => {
            const open = tasks.filter((task) => task.state === 'open' && !task.late && task.kind !== 'harvest');
            return open.length === 0 ? (
              <p className="soft small">{say('Nothing but harvest.')}</p>
            ) : (
              <ul className="small">
                {open.slice(0, SHOWN).map((task) => (
                  <li key={task.key}>
                    {reader.date(task.due)} {task.title}
                  </li>
                ))}
                {open.length > SHOWN ? <li className="faint">{say('and {open} more', { open: open.length - SHOWN })}</li> : null}
              </ul>
            );
          }}
        </Shown>
      </section>
      <section className="panel">
        <h2>{say('Water')}</h2>
        {seasons.state === 'ready' && seasons.data.length > 0 ? (
          <WaterOnDemand from={from} />
        ) : (
          <p className="soft small">{say('No season yet.')}</p>
        )}
      </section>
      <section className="panel">
        <h2>{say('Short of demand this week')}</h2>
        {seasons.state === 'ready' && seasons.data.length > 0 ? (
          <Short from={from} />
        ) : (
          <p className="soft small">{say('No season yet.')}</p>
        )}
        <Button weight="quiet" onClick={() => go('season', { tab: 'demand' })}>
          {say('Demand')}
        </Button>
      </section>
    </>
  );
}

function Short({ from }: { readonly from: IsoDate }) {
  const demand = useRead(api.demand.list, { seasonId: null });
  return (
    <Shown reading={demand}>
      {({ balance }) => {
        const short = balance.filter((row) => row.week === from && row.over < 0);
        return short.length === 0 ? (
          <p className="soft small">{say('Nothing is short this week.')}</p>
        ) : (
          <ul className="small">
            {short.map((row) => (
              <li key={`${row.cropId} ${row.unit}`}>
                {say('{cropName}: {over} {unit} of {wanted}', {
                  cropName: row.cropName,
                  over: Number((-row.over).toPrecision(2)),
                  unit: row.unit,
                  wanted: Number(row.wanted.toPrecision(2)),
                })}
              </li>
            ))}
          </ul>
        );
      }}
    </Shown>
  );
}

/** The balance over many years takes a moment on a large farm, so it is worked out when asked for. */
function WaterOnDemand({ from }: { readonly from: IsoDate }) {
  const [asked, setAsked] = useState(false);
  return asked ? (
    <WaterThisWeek from={from} />
  ) : (
    <div className="row">
      <Button onClick={() => setAsked(true)}>{say('How often, how long')}</Button>
      <Button weight="quiet" onClick={() => go('water')}>
        {say('Water')}
      </Button>
    </div>
  );
}

/** How often each line runs this month, and the round by hand: from the water balance over all years on record. */
function WaterThisWeek({ from }: { readonly from: IsoDate }) {
  const reader = useReader();
  const water = useRead(api.waterDemand.intervals, { seasonId: null, month: Number(from.slice(5, 7)) });
  return (
    <Shown reading={water}>
      {({ groups }) => (
        <ul className="small">
          {groups
            .filter((group) => group.beds > 0)
            .map((group) => (
              <li key={group.groupId}>
                {group.name}:{' '}
                {group.days === null || group.run_L <= 0
                  ? say('see Water')
                  : say('every {days, plural, one {# day} other {# days}}, {run}{more}', {
                      days: group.days,
                      run: reader.print(group.run_L, 'L'),
                      more: group.run_min === null ? '' : `, ${reader.print(group.run_min, 'min')}`,
                    })}
              </li>
            ))}
        </ul>
      )}
    </Shown>
  );
}
