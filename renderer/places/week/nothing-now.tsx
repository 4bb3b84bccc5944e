import { addDays, type IsoDate, mondayOf } from '../../../planner/calendar.ts';
import { go, setQuery } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Empty } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

const WEEKS_AHEAD = 52;

/** A week without work says when the next work comes, and goes there. */
export function NothingNow({ from }: { readonly from: IsoDate }) {
  const reader = useReader();
  const ahead = useRead(api.week.list, { monday: addDays(from, 7), weeks: WEEKS_AHEAD });
  const next = ahead.state === 'ready' ? ahead.data.tasks.find((task) => task.state === 'open' && !task.late) : undefined;
  if (next === undefined) {
    return (
      <Empty
        title={say('Nothing to do this week')}
        action={<Button onClick={() => go('season')}>{say('Plan plantings')}</Button>}
      >
        {say('Plan plantings in Season, or add a task of your own.')}
      </Empty>
    );
  }
  return (
    <Empty
      title={say('Nothing to do this week')}
      action={<Button onClick={() => setQuery({ week: mondayOf(next.due as IsoDate) })}>{say('Go to that week')}</Button>}
    >
      {say('The next work is on {due}: {next}.', { due: reader.date(next.due, 'long'), next: next.title })}
    </Empty>
  );
}
