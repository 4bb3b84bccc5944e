import { describe, expect, test } from 'vitest';
import { folderOf, joined, nameOf, withEnding } from '../../../renderer/places/farm/file-path.ts';
import { readPlace } from '../../../renderer/places/farm/read-place.ts';
import { startersFor } from '../../../renderer/places/farm/starter-designs.ts';

describe('a place pasted from a map', () => {
  test.each([
    ['47.61, -122.33', 47.61, -122.33],
    ['47.61° N, 122.33° W', 47.61, -122.33],
    ['-33.9 151.2', -33.9, 151.2],
    ['47.6, −122.3', 47.6, -122.3],
    ['33.9 S 151.2 E', -33.9, 151.2],
  ])('%s is read', (text, latitude_deg, longitude_deg) => {
    expect(readPlace(text)).toEqual({ latitude_deg, longitude_deg });
  });
  test.each(['47.61', '', '12.5, 3, 4', '91, 0', '10, 181', '47.6 E, 122 N', 'by the river', '47°36′'])(
    '%s is left as text',
    (text) => {
      expect(readPlace(text)).toBeUndefined();
    },
  );
});

describe('the path of a farm file as text', () => {
  test('is taken apart and put together with either separator', () => {
    expect(folderOf('/home/kim/Farm.bedwright')).toBe('/home/kim');
    expect(folderOf('/Farm.bedwright')).toBe('/');
    expect(folderOf('C:\\Farm.bedwright')).toBe('C:\\');
    expect(folderOf('Farm')).toBe('');
    expect(nameOf('C:\\Farms\\Pit field.bedwright')).toBe('Pit field');
    expect(withEnding(' Pit ')).toBe('Pit.bedwright');
    expect(withEnding('Pit.bedwright')).toBe('Pit.bedwright');
    expect(joined('/', 'a')).toBe('/a');
    expect(joined('C:\\Farms', 'a')).toBe('C:\\Farms\\a');
  });
});

test('the designs to begin with come in round sizes of either system, and fill no higher than they are deep', () => {
  for (const system of ['us', 'metric'] as const)
    for (const { values, layers } of startersFor(system)) {
      expect(values.fillDepth_m).toBeLessThan(values.depth_m);
      expect(layers.length > 0).toBe(values.fillDepth_m > 0);
    }
  expect(startersFor('metric').map(({ values }) => values.length_m)).toEqual([2.4, 15, 0.55]);
});
