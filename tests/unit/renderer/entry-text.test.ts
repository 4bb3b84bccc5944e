import { describe, expect, test } from 'vitest';
import { matchPlantings, plantingText, readAmount } from '../../../renderer/places/harvest/entry-text.ts';
import type { PlantingChoice } from '../../../renderer/places/harvest/harvest-types.ts';

const aPlanting = (crop: string, codes: readonly string[], inWindow = true, number = 1) =>
  ({
    plantingId: `${crop}-${codes.join('')}`,
    crop,
    number,
    beds: codes.map((code) => ({ bedId: code, code })),
    inWindow,
    state: 'growing',
    yieldUnit: 'kg',
  }) as unknown as PlantingChoice;

const plantings = [
  aPlanting('Lettuce, leaf', ['A-03']),
  aPlanting('Tomato', ['B-12', 'B-13']),
  aPlanting('Carrot', ['A-30'], false),
  aPlanting('Lettuce, leaf', ['D-07'], true, 2),
];

describe('finding a planting by typing', () => {
  test('a bed code is found with and without its dash', () => {
    expect(matchPlantings(plantings, 'a03').map(plantingText)).toEqual(['A-03 Lettuce, leaf']);
    expect(matchPlantings(plantings, 'B-13').map(plantingText)).toEqual(['B-12, B-13 Tomato']);
  });
  test('words narrow it down in any order', () => {
    expect(matchPlantings(plantings, 'lett d').map(plantingText)).toEqual(['D-07 Lettuce, leaf no. 2']);
  });
  test('what is in its harvest weeks stands first', () => {
    expect(matchPlantings(plantings, 'a').at(-1)?.crop).toBe('Carrot');
    expect(matchPlantings(plantings, 'zucchini')).toEqual([]);
  });
});

describe('reading an amount', () => {
  test('a number alone leaves the unit as it is', () => expect(readAmount('2.5', ['kg'])).toEqual({ amount: 2.5, unit: null }));
  test('a known unit may be written behind it', () => {
    expect(readAmount('12 bunches', ['kg', 'bunch'])).toEqual({ amount: 12, unit: 'bunch' });
    expect(readAmount('3kg', ['kg'])).toEqual({ amount: 3, unit: 'kg' });
  });
  test('nothing, nonsense and unknown units are not read', () => {
    for (const text of ['', 'x', '0', '-3', '4 parsecs']) expect(readAmount(text, ['kg']), text).toBeNull();
  });
});
