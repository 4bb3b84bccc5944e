import { readNumber } from '../../../planner/units/parse-number.ts';
import { say } from '../../words/say.ts';
import type { PlantingChoice } from './harvest-types.ts';

/** How a planting is named where one is chosen: its beds, its crop, its number. */
export const plantingText = (planting: PlantingChoice): string =>
  `${planting.beds.map((bed) => bed.code).join(', ')} ${planting.crop}${planting.number > 1 ? say(' no. {number}', { number: planting.number }) : ''}`.trim();

const words = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[\s,]+/)
    .filter((word) => word !== '');
const plain = (text: string): string => text.toLowerCase().replaceAll('-', '');

/**
 * The plantings that every typed word fits, by bed code (with or without its dash) or crop. Those in their harvest weeks come first, then
 * those whose bed code begins with what was typed.
 */
export function matchPlantings(plantings: readonly PlantingChoice[], typed: string): readonly PlantingChoice[] {
  const asked = words(typed);
  const fits = plantings.filter((planting) => {
    const name = plain(plantingText(planting));
    return asked.every((word) => name.includes(plain(word)));
  });
  const first = plain(asked[0] ?? '');
  const rank = (planting: PlantingChoice): number =>
    (planting.inWindow ? 0 : 2) + (first !== '' && planting.beds.some((bed) => plain(bed.code).startsWith(first)) ? 0 : 1);
  return fits.toSorted((a, b) => rank(a) - rank(b) || plantingText(a).localeCompare(plantingText(b), 'en', { numeric: true }));
}

/** Reads `2.5`, `2.5 kg` or `12 bunch`: the amount, and the unit where one of the known ones was written. */
export function readAmount(
  text: string,
  units: readonly string[],
  locale = 'en-US',
): { readonly amount: number; readonly unit: string | null } | null {
  const parts = /^\s*([\d.,\s]+?)\s*([a-z][\w\s/-]*)?\s*$/i.exec(text);
  const amount = readNumber(parts?.[1] ?? '', locale);
  if (amount === undefined || !(amount > 0)) return null;
  const written = parts?.[2]?.trim().toLowerCase();
  if (written === undefined) return { amount, unit: null };
  const unit = units.find(
    (each) => each.toLowerCase() === written || `${each.toLowerCase()}s` === written || `${each.toLowerCase()}es` === written,
  );
  return unit === undefined ? null : { amount, unit };
}
