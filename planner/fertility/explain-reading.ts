import { entry, source, type Working } from '../working.ts';
import { classBounds_mg_per_kg, type TestMethod, testClass } from './test-class.ts';

/** The working of a nutrient's reading: what was entered, what it is in mg/kg, and the bounds of the method's classes. */
export function explainReading(input: {
  readonly nutrient: string;
  readonly method: TestMethod;
  readonly entered: string;
  readonly value_mg_per_kg: number;
}): Working {
  const reading = testClass(input.method, input.nutrient, input.value_mg_per_kg);
  const bounds = classBounds_mg_per_kg(input.method, input.nutrient);
  return {
    title: `${input.nutrient} by ${input.method}`,
    formula: 'class = the first whose upper bound lies above the value',
    symbols: [
      {
        symbol: 'x',
        name: `entered as ${input.entered}`,
        figure: { value: input.value_mg_per_kg, unit: 'ppm' },
        origin: entry('the laboratory sheet'),
      },
      ...bounds.map(({ name, below_mg_per_kg }) => ({
        symbol: '<',
        name: name.replace('-', ' '),
        figure: { value: below_mg_per_kg, unit: 'ppm' },
        origin: source(reading?.source ?? ''),
      })),
    ],
    steps: [
      {
        text: reading === null ? 'No scale is known for it' : `Reads ${reading.class.replace('-', ' ')}`,
        figures: 'x against the bounds',
        result: { value: input.value_mg_per_kg, unit: 'ppm' },
      },
    ],
    result: { value: input.value_mg_per_kg, unit: 'ppm' },
    sources: reading === null ? [] : [reading.source],
    notes: ['Figures of another method lie on another scale and are never compared.', 'Your laboratory’s own classes go first.'],
  };
}
