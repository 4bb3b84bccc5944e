const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const iso = (year: number, month: number, day: number): string =>
  `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;

/**
 * Reads the ways a date is written without doubt: `2026-03-09`, `9 Mar 2026`, `Mar 9, 2026`. `3/9/2026` is refused,
 * since it is March in one country and September in another.
 */
export function readDate(text: string): string | undefined {
  const isoForm = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (isoForm !== null) return iso(Number(isoForm[1]), Number(isoForm[2]), Number(isoForm[3]));
  const dayFirst = /^(\d{1,2})\.?\s+([A-Za-z]{3})[a-z]*\.?,?\s+(\d{4})$/.exec(text);
  const monthFirst = /^([A-Za-z]{3})[a-z]*\.?\s+(\d{1,2}),?\s+(\d{4})$/.exec(text);
  const [day, month, year] = dayFirst
    ? [dayFirst[1], dayFirst[2], dayFirst[3]]
    : monthFirst
      ? [monthFirst[2], monthFirst[1], monthFirst[3]]
      : [];
  const at = months.indexOf((month ?? '').toLowerCase());
  return at < 0 ? undefined : iso(Number(year), at + 1, Number(day));
}
