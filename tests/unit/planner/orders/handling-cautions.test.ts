import { describe, expect, test } from 'vitest';
import { cautionsOfPackage, type HandledMaterial, isHeavyPackage } from '../../../../planner/orders/handling-cautions.ts';
import file from '../../../../resources/cautions.json' with { type: 'json' };

const material = (name: string, kind: string, more: Partial<HandledMaterial> = {}): HandledMaterial => ({
  name,
  kind,
  dusty: false,
  animalOrigin: 'none',
  registrationNumber: null,
  ...more,
});

describe('a line shows the cautions of what is bought', () => {
  test.each([
    [material('Perlite, coarse', 'substrate'), null, ['dust-perlite-silica']],
    [material('Calcitic limestone, ground', 'liming', { dusty: true }), 22.7, ['lime-sulfur-ash', 'saturated-weight-lifting']],
    [material('Wood ash', 'soil'), null, ['lime-sulfur-ash']],
    [material('Feather meal', 'fertilizer'), 10, ['fertilizer-storage']],
    [material('Drum, 200 L', 'hardware'), null, ['food-grade-containers']],
    [material('Compost of manure', 'compost', { animalOrigin: 'composted' }), 20, ['compost-heat', 'saturated-weight-lifting']],
    [material('Straw', 'mulch'), null, []],
  ] as const)('%o of %s kg: %j', (of, package_kg, cautions) => {
    expect(cautionsOfPackage(of, package_kg)).toEqual(cautions);
  });
  test('every one of them has a text', () => {
    const all = material('Lime, sand, board, drum, meal, battery', 'hardware', { animalOrigin: 'raw', registrationNumber: '1' });
    const named = [
      ...cautionsOfPackage(all, 50),
      ...cautionsOfPackage(material('', 'pump'), 0),
      ...cautionsOfPackage(material('', 'tubing'), 0),
    ];
    expect(named).toHaveLength(11);
    expect(named.filter((id) => !file.cautions.some((each) => each.id === id))).toEqual([]);
  });
  test('a package of unknown weight is not called heavy, one just over two thirds of 23 kg is', () => {
    expect([null, 15, 16, 16.1, 40].map(isHeavyPackage)).toEqual([false, false, false, true, true]);
  });
});
