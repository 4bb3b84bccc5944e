/**
 * Round numbers from at or below `low` to at or above `high`, about `count` steps apart: steps of 1, 2 or 5 times a power of
 * ten, so that a reader can halve between two of them. Nothing between the ends gives 0 and 1.
 */
export function roundTicks(low: number, high: number, count: number): readonly number[] {
  if (!(high > low)) return low === 0 || !Number.isFinite(low) ? [0, 1] : roundTicks(Math.min(0, low), Math.max(0, low), count);
  const rough = (high - low) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough * (1 - 1e-9)) ?? 10 * power;
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const first = Math.floor(low / step + 1e-9);
  const last = Math.ceil(high / step - 1e-9);
  return Array.from({ length: last - first + 1 }, (_, at) => Number(((first + at) * step).toFixed(digits)));
}
