import { expect, test } from 'vitest';
import { numberFacts } from '../../../../planner/crops/crop-facts.ts';
import { parseQuantity } from '../../../../planner/units/parse.ts';
import { printForEntry } from '../../../../planner/units/print.ts';
import { unitOfFact } from '../../../../renderer/places/library/fact-unit.ts';

test('every figure of a crop prints and reads back in both systems', () => {
  for (const name of numberFacts) {
    const unit = unitOfFact(name);
    for (const system of ['us', 'metric'] as const) {
      const text = printForEntry(0.5, unit, system);
      const back = unit === '' ? Number(text) : parseQuantity(text, { unit, system, path: name });
      expect(back, `${name} as ${text}`).toBeCloseTo(0.5, 5);
    }
  }
});
