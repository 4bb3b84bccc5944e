import { addDays, type IsoDate } from '../../../planner/calendar.ts';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';

const SHOWN = 12;

/** What the weeks ahead bring, and what the plan falls short of this week. */
export function WhatElse({ from }: { readonly from: IsoDate }) {
  const reader = useReader();
  const ahead = useRead(api.week.list, { monday: addDays(from, 7), weeks: 3 });
  const seasons = useRead(api.seasons.list, undefined);
  return (
    <>
      <section className="panel">
        <h3>In the three weeks after</h3>
        <Shown reading={ahead}>
          {({ tasks }) => {
            const open = tasks.filter((task) => task.state === 'open' && !task.late && task.kind !== 'harvest');
            return open.length === 0 ? (
              <p className="soft small">Nothing but harvest.</p>
            ) : (
              <ul className="small">
                {open.slice(0, SHOWN).map((task) => (
                  <li key={task.key}>
                    {reader.date(task.due)} {task.title}
                  </li>
                ))}
                {open.length > SHOWN ? <li className="faint">and {open.length - SHOWN} more</li> : null}
              </ul>
            );
          }}
        </Shown>
      </section>
      <section className="panel">
        <h3>Short of demand this week</h3>
        {seasons.state === 'ready' && seasons.data.length > 0 ? (
          <Short from={from} />
        ) : (
          <p className="soft small">No season yet.</p>
        )}
        <Button weight="quiet" onClick={() => go('season', { tab: 'demand' })}>
          Demand
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
          <p className="soft small">Nothing is short this week.</p>
        ) : (
          <ul className="small">
            {short.map((row) => (
              <li key={`${row.cropId} ${row.unit}`}>
                {row.cropName}: {Number((-row.over).toPrecision(2))} {row.unit} of {Number(row.wanted.toPrecision(2))}
              </li>
            ))}
          </ul>
        );
      }}
    </Shown>
  );
}
