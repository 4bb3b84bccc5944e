import { entry, library, type Working } from '../working.ts';
import { looseVolume_L } from './bed-dose.ts';
import { measuredDose } from './measures.ts';

export type DoseInput = {
  readonly material: string;
  readonly dose_kg: number;
  readonly density_kg_per_m3: number | null;
  readonly scoop_L: number;
  readonly area_m2: number | null;
  /** Where the weight came from: the blend, the pH plan, an entry. */
  readonly reason: string;
  readonly source: string;
};

/** The working of a dose: its weight, the loose volume by density, and that volume in the grower's measures. */
export function explainDose(input: DoseInput): Working {
  const { dose_kg, density_kg_per_m3, scoop_L, area_m2 } = input;
  const volume_L = density_kg_per_m3 === null ? null : looseVolume_L(dose_kg, density_kg_per_m3);
  const measured = volume_L === null ? null : measuredDose(volume_L, scoop_L);
  return {
    title: `${input.material} for the bed`,
    formula: 'V = m ÷ ρ;  measures = V ÷ scoop, the rest in spoons',
    symbols: [
      { symbol: 'm', name: 'weight', figure: { value: dose_kg, unit: 'kg' }, origin: { kind: 'computed', text: input.reason } },
      ...(density_kg_per_m3 === null
        ? []
        : [
            {
              symbol: 'ρ',
              name: 'loose density as handled',
              figure: { value: density_kg_per_m3, unit: 'kg_per_m3' },
              origin: library(input.source === '' ? 'the material' : input.source),
            },
          ]),
      { symbol: 'scoop', name: 'your scoop', figure: { value: scoop_L, unit: 'L' }, origin: entry('the feeding plan') },
    ],
    steps: [
      ...(area_m2 === null || area_m2 <= 0
        ? []
        : [{ text: 'Rate by area', figures: 'm ÷ A', result: { value: dose_kg / area_m2, unit: 'kg_per_m2' } }]),
      ...(volume_L === null ? [] : [{ text: 'Loose volume', figures: 'm ÷ ρ', result: { value: volume_L, unit: 'L' } }]),
      ...(measured === null
        ? []
        : [
            {
              text: 'As measured on the card',
              figures: 'whole and quarter scoops, spoons, teaspoons',
              result: { value: measured.volume_L, unit: 'L' },
            },
          ]),
    ],
    result: { value: dose_kg, unit: 'kg' },
    sources: [input.source === '' ? 'the material’s own entry' : input.source],
    notes:
      volume_L === null
        ? ['No density is known: weigh it, or enter its weight by the scoop in the library.']
        : ['Densities of loose materials differ: weigh one scoop of yours and enter it in the library.'],
  };
}
