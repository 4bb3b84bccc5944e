import { refuse } from '../errors.ts';

export type ContainerClass = { readonly name: string; readonly min_in3: number; readonly max_in3: number };

/**
 * Nursery container classes by volume, cubic inches. A class is a range, not a gallon count: "#5" holds 3.4 to 5.4 gal.
 * Source: ANSI Z60.1-2014, American Standard for Nursery Stock, container class table (memory).
 */
export const containerClasses: readonly ContainerClass[] = [
  { name: '#SP3', min_in3: 20, max_in3: 30 },
  { name: '#SP4', min_in3: 51, max_in3: 63 },
  { name: '#SP5', min_in3: 93, max_in3: 136 },
  { name: '#1', min_in3: 152, max_in3: 251 },
  { name: '#2', min_in3: 320, max_in3: 474 },
  { name: '#3', min_in3: 628, max_in3: 742 },
  { name: '#5', min_in3: 785, max_in3: 1242 },
  { name: '#7', min_in3: 1337, max_in3: 1790 },
  { name: '#10', min_in3: 2080, max_in3: 2646 },
  { name: '#15', min_in3: 2768, max_in3: 3696 },
  { name: '#20', min_in3: 4520, max_in3: 5152 },
  { name: '#25', min_in3: 5775, max_in3: 6861 },
  { name: '#45', min_in3: 9356, max_in3: 11434 },
  { name: '#65', min_in3: 13514, max_in3: 16517 },
  { name: '#95-100', min_in3: 20790, max_in3: 25410 },
];

/** The class by its name. @throws InputError when there is none of that name */
export function containerClass(name: string): ContainerClass {
  const found = containerClasses.find((each) => each.name === name);
  return (
    found ??
    refuse(
      'containerClass',
      'unknown-class',
      `"${name}" is no container class. Known are ${containerClasses.map((each) => each.name).join(', ')}.`,
    )
  );
}

/** The class that a volume falls in; undefined between classes. */
export function classOfVolume(volume_in3: number): ContainerClass | undefined {
  return containerClasses.find((each) => volume_in3 >= each.min_in3 && volume_in3 <= each.max_in3);
}
