import { say } from './say.ts';

export const monthNames = [
  say('January'),
  say('February'),
  say('March'),
  say('April'),
  say('May'),
  say('June'),
  say('July'),
  say('August'),
  say('September'),
  say('October'),
  say('November'),
  say('December'),
] as const;

export const shortMonthNames = [
  say('Jan'),
  say('Feb'),
  say('Mar'),
  say('Apr'),
  say('May'),
  say('Jun'),
  say('Jul'),
  say('Aug'),
  say('Sep'),
  say('Oct'),
  say('Nov'),
  say('Dec'),
] as const;

/** Months as choices of a field or column, by their number. */
export const monthChoices = monthNames.map((name, at) => ({ value: String(at + 1), text: name }));
