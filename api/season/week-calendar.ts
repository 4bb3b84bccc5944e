import ical, { ICalCalendarMethod } from 'ical-generator';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { addDays, isIsoDate, mondayOf } from '../../planner/calendar.ts';
import type { Download, MakeDownload } from '../http/downloads.ts';
import { speakerOf } from '../words/speaker.ts';
import { weekTasks } from './week-tasks.ts';

/** A year of work and no more goes into one file. */
const MOST_DAYS = 400;

/**
 * Work to do as a calendar file. Each task keeps its own UID, so that a later export takes the place of an earlier one in
 * a calendar program; whole days, no alarm. After RFC 5545.
 */
export const weekCalendar: MakeDownload = ({ db, program, today, now }, query): Download => {
  const asked = query['from'] ?? '';
  const from = isIsoDate(asked) ? asked : mondayOf(today);
  const weeks = Math.min(Math.max(Number(query['weeks'] ?? 4) || 4, 1), Math.floor(MOST_DAYS / 7));
  const { language, say } = speakerOf(program.places.resources, query['language'] ?? 'en', farmOfFile(db)?.language ?? 'en-US');
  const calendar = ical({
    name: 'Bedwright',
    prodId: { company: 'Bedwright', product: say('Work of the season'), language: language.toUpperCase() },
  });
  calendar.method(ICalCalendarMethod.PUBLISH);
  for (const task of weekTasks(db, today, from, addDays(from, 7 * weeks))) {
    if (task.state !== 'open') continue;
    calendar.createEvent({
      id: `${task.key}@bedwright`,
      stamp: new Date(now),
      start: task.due,
      end: addDays(task.due, 1),
      allDay: true,
      summary: say(task.title),
      ...(task.places === '' ? {} : { location: task.places }),
      ...(task.note === '' ? {} : { description: say(task.note) }),
    });
  }
  return { name: `work-from-${from}.ics`, type: 'text/calendar; charset=utf-8', body: plainCalendar(calendar.toString()) };
};

/** Without the properties that only one maker's programs read. */
const plainCalendar = (text: string): string => text.replace(/^X-(?!WR-)[^\r\n]*\r?\n/gm, '');
