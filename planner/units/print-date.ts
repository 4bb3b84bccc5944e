import { dayNumber, type IsoDate, isIsoDate } from '../calendar.ts';

const forms = {
  short: { day: 'numeric', month: 'short', year: 'numeric' },
  day: { day: 'numeric', month: 'short' },
  month: { month: 'short', year: 'numeric' },
  long: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

/** Short in text, long as a heading; a day of a known year and a month of a year along an axis. */
export type DateForm = keyof typeof forms;

const kept = new Map<string, Intl.DateTimeFormat>();

function formatter(locale: string, form: DateForm): Intl.DateTimeFormat {
  const key = `${locale} ${form}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat(locale, { ...forms[form], timeZone: 'UTC' });
  kept.set(key, made);
  return made;
}

/** A calendar date in the reader's manner. Text that is no calendar date is shown as it stands. */
export function printDate(iso: string, locale: string, form: DateForm = 'short'): string {
  return isIsoDate(iso) ? formatter(locale, form).format(dayNumber(iso as IsoDate) * 86_400_000) : iso;
}

/** A finished text with its calendar dates in the reader's manner: `due 2027-03-02` becomes `due Mar 2, 2027`. */
export function printDatesIn(text: string, locale: string): string {
  return text.replaceAll(/(?<![\w-])\d{4}-\d{2}-\d{2}(?![\w-])/g, (iso) => printDate(iso, locale));
}
