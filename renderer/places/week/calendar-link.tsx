import type { IsoDate } from '../../../planner/calendar.ts';
import { farmOfAddress } from '../../client/farm-of-address.ts';
import { Icon } from '../../look/icon.tsx';
import { languageSpoken } from '../../words/language.ts';
import { say } from '../../words/say.ts';

const WEEKS = 12;

/** The work of the next weeks as a calendar file that calendar programs open. */
export function CalendarLink({ from }: { readonly from: IsoDate }) {
  const farm = farmOfAddress(window.location.search);
  const query = new URLSearchParams({
    from,
    weeks: String(WEEKS),
    language: languageSpoken().code,
    ...(farm === undefined ? {} : { farm }),
  });
  return (
    <a
      className="button"
      data-weight="plain"
      href={`/export/work?${query}`}
      download
      title={say('Calendar file of {wEEKS} weeks', { wEEKS: WEEKS })}
    >
      <Icon name="week" />
      {say('Calendar')}
    </a>
  );
}
