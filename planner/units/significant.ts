import { type NumberMarks, pointMarks } from './number-marks.ts';

/**
 * A number with a given count of significant digits, thousands separated, no digit invented and no trailing zeros
 * after the point: 1234.5 to 3 digits is `1,230`, 0.04567 is `0.0457`.
 */
export function significant(value: number, digits: number, marks: NumberMarks = pointMarks): string {
  if (!Number.isFinite(value)) return '–';
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(digits));
  const places = Math.max(0, Math.min(12, digits - 1 - Math.floor(Math.log10(Math.abs(rounded)))));
  return grouped(rounded, places, marks);
}

/** A number to at most `places` decimals, thousands separated, no trailing zeros. */
export function grouped(value: number, places: number, marks: NumberMarks = pointMarks): string {
  const fixed = Math.abs(value).toFixed(places);
  const [whole = '0', rest = ''] = fixed.split('.');
  const kept = rest.replace(/0+$/, '');
  const text = inGroups(whole, marks) + (kept === '' ? '' : `${marks.decimal}${kept}`);
  return value < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}

/** The digits before the decimal sign, with the marks between their groups. */
function inGroups(whole: string, { group, groupOf, groupsFour }: NumberMarks): string {
  if (group === '' || whole.length < (groupsFour ? 4 : 5)) return whole;
  const head = whole.slice(0, -3).replace(groupOf === 2 ? /\B(?=(\d{2})+$)/g : /\B(?=(\d{3})+$)/g, group);
  return `${head}${group}${whole.slice(-3)}`;
}
