/**
 * A number with a given count of significant digits, thousands separated, no digit invented and no trailing zeros
 * after the point: 1234.5 to 3 digits is `1,230`, 0.04567 is `0.0457`.
 */
export function significant(value: number, digits: number): string {
  if (!Number.isFinite(value)) return '–';
  if (value === 0) return '0';
  const rounded = Number(value.toPrecision(digits));
  const places = Math.max(0, Math.min(12, digits - 1 - Math.floor(Math.log10(Math.abs(rounded)))));
  return grouped(rounded, places);
}

/** A number to at most `places` decimals, thousands separated, no trailing zeros. */
export function grouped(value: number, places: number): string {
  const fixed = Math.abs(value).toFixed(places);
  const [whole = '0', rest = ''] = fixed.split('.');
  const kept = rest.replace(/0+$/, '');
  const text = whole.replace(/\B(?=(\d{3})+(?!\d))/g, ',') + (kept === '' ? '' : `.${kept}`);
  return value < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}
