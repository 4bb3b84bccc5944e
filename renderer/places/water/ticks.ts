/** Round numbers from 0 to a little over `most`, about `count` of them: steps of 1, 2 or 5 times a power of ten. */
export function ticksOf(most: number, count: number): readonly number[] {
  if (!(most > 0)) return [0, 1];
  const rough = most / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * power).find((each) => each >= rough) ?? 10 * power;
  const digits = Math.max(0, -Math.floor(Math.log10(step)));
  return Array.from({ length: Math.ceil(most / step - 1e-9) + 1 }, (_, at) => Number((at * step).toFixed(digits)));
}
