export const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Months as choices of a field or column, by their number. */
export const monthChoices = monthNames.map((name, at) => ({ value: String(at + 1), text: name }));
