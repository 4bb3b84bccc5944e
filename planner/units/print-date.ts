import { dayNumber, type IsoDate, isIsoDate } from '../calendar.ts';

const forms = {
  short: { day: 'numeric', month: 'short', year: 'numeric' },
  long: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
} as const satisfies Record<string, Intl.DateTimeFormatOptions>;

const kept = new Map<string, Intl.DateTimeFormat>();

function formatter(locale: string, form: keyof typeof forms): Intl.DateTimeFormat {
  const key = `${locale} ${form}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat(locale, { ...forms[form], timeZone: 'UTC' });
  kept.set(key, made);
  return made;
}

/** A calendar date in the reader's manner. Text that is no calendar date is shown as it stands. */
export function printDate(iso: string, locale: string, form: keyof typeof forms = 'short'): string {
  return isIsoDate(iso) ? formatter(locale, form).format(dayNumber(iso as IsoDate) * 86_400_000) : iso;
}
