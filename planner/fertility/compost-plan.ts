import { library, type Working } from '../working.ts';
import { type CompostMix, type CompostPart, compostMix } from './compost-mix.ts';
import { type CarbonNitrogenPart, twoCompostGoals } from './compost-second-part.ts';

/** Where a heap should start: C:N 20 to 40, best 25 to 35; moisture 40 to 65 %, best 45 to 60. */
export const COMPOST_GOALS = {
  carbonToNitrogen: { least: 20, most: 40, bestLeast: 25, bestMost: 35 },
  moistureShare: { least: 0.4, most: 0.65, bestLeast: 0.45, bestMost: 0.6 },
} as const;

export type GoalReading = 'best' | 'acceptable' | 'too-low' | 'too-high';

type Goal = { readonly least: number; readonly most: number; readonly bestLeast: number; readonly bestMost: number };

export function goalReading(value: number, goal: Goal): GoalReading {
  if (value < goal.least) return 'too-low';
  if (value > goal.most) return 'too-high';
  return value >= goal.bestLeast && value <= goal.bestMost ? 'best' : 'acceptable';
}

/** Several parts as one, by mass, so that further materials can be set against them. */
export function combinedPart(parts: readonly CompostPart[]): CompostPart {
  const mix = compostMix(parts);
  const dry_kg = mix.mix_kg * (1 - mix.moistureShare);
  const nitrogen_kg = parts.reduce((sum, part) => sum + part.part_kg * (1 - part.moistureShare) * part.nShareOfDry, 0);
  return {
    part_kg: mix.mix_kg,
    moistureShare: mix.moistureShare,
    nShareOfDry: nitrogen_kg / dry_kg,
    carbonToNitrogen: mix.carbonToNitrogen,
  };
}

export type CompostSuggestion =
  | { readonly state: 'found'; readonly second_kg: number; readonly third_kg: number; readonly mix: CompostMix }
  | { readonly state: 'out-of-reach'; readonly because: string };

/** How much of two further materials brings what is there to a C:N and a moisture. Source: see {@link twoCompostGoals}. */
export function suggestParts(
  there: readonly CompostPart[],
  second: CarbonNitrogenPart,
  third: CarbonNitrogenPart,
  goalMoistureShare: number,
  goalCarbonToNitrogen: number,
): CompostSuggestion {
  const first = combinedPart(there);
  const found = twoCompostGoals(first.part_kg, [first, second, third], goalMoistureShare, goalCarbonToNitrogen);
  if (!found.feasible)
    return {
      state: 'out-of-reach',
      because:
        found.because === 'negative-mass'
          ? 'These two materials cannot bring the heap to both goals together: one of them would have to be taken out. Choose a drier or wetter, or a richer or poorer one.'
          : 'These two materials act alike on the heap: there is no single answer. Choose two that differ.',
    };
  const { second_kg, third_kg } = found;
  return {
    state: 'found',
    second_kg,
    third_kg,
    mix: compostMix([...there, { ...second, part_kg: second_kg }, { ...third, part_kg: third_kg }]),
  };
}

/** The working of a heap's C:N. */
export function explainCompostMix(parts: readonly (CompostPart & { readonly name: string })[]): Working {
  const mix = compostMix(parts);
  return {
    title: 'C:N of the heap',
    formula: 'R = Σ Q C (1 − M) / Σ Q N (1 − M)',
    symbols: parts.map((part) => ({
      symbol: 'Q',
      name: `${part.name}: C:N ${Math.round(part.carbonToNitrogen)}, moisture ${Math.round(100 * part.moistureShare)} %`,
      figure: { value: part.part_kg, unit: 'kg' },
      origin: library('the material’s analysis'),
    })),
    steps: [
      { text: 'Mass of the heap', figures: 'Σ Q', result: { value: mix.mix_kg, unit: 'kg' } },
      { text: 'Moisture', figures: 'Σ Q M / Σ Q', result: { value: mix.moistureShare, unit: 'share' } },
    ],
    result: { value: mix.carbonToNitrogen, unit: '' },
    sources: ['Cornell Waste Management Institute, Composting in Schools'],
    notes: ['Analyses differ from load to load: test or judge by heat and smell.'],
  };
}
