import { z } from 'zod';
import { refuse } from '../../planner/errors.ts';
import { aims, weights } from '../../planner/season/optimise/goals.ts';
import type { Change } from '../../planner/season/optimise/what-if.ts';
import type { BuiltSeason } from '../../planner/season/proposal/build-instance.ts';
import type { FarmSeason } from '../../planner/season/proposal/farm-season.ts';
import type { Variant } from '../jobs/season/compare.ts';

const factor = z.number('Give a number.').min(0, 'A factor cannot be negative.').max(100, 'A hundredfold at most.');
const cropId = z.string().max(80);

/** One thing different, in the page's words. */
const changeEntry = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('price'), cropId, factor }),
  z.object({ kind: z.literal('wage'), wage_minor_per_h: z.number().min(0).max(1e9) }),
  z.object({ kind: z.literal('water'), factor }),
  z.object({ kind: z.literal('labour'), factor }),
  z.object({ kind: z.literal('beds'), bedId: z.string().max(80), count: z.int().min(1).max(500) }),
  z.object({ kind: z.literal('without'), cropId }),
]);
export type ChangeEntry = z.output<typeof changeEntry>;

export const variantEntry = z.object({
  name: z.string().min(1).max(120),
  goal: z.object({ aim: z.enum(aims), weight: z.enum(weights) }),
  changes: z.array(changeEntry).max(10),
});
export type VariantEntry = z.output<typeof variantEntry>;

/** The page's variants with crops and beds by their place in the season. @throws InputError at the one that names what is not there */
export function variantsOf(farm: FarmSeason, built: BuiltSeason, entries: readonly VariantEntry[]): Variant[] {
  return entries.map(({ name, goal, changes }, v) => ({
    name,
    goal,
    changes: changes.map((entry, k) => changeOf(farm, built, entry, `variants.${v}.changes.${k}`)),
  }));
}

function changeOf(farm: FarmSeason, built: BuiltSeason, entry: ChangeEntry, path: string): Change {
  const crop = (id: string): number => {
    const at = farm.crops.findIndex(({ needs }) => needs.cropId === id);
    return at >= 0 ? at : refuse(`${path}.cropId`, 'no-such-crop', 'This crop is not among those the proposal counts with.');
  };
  switch (entry.kind) {
    case 'price':
      return { kind: 'price', crop: crop(entry.cropId), factor: entry.factor };
    case 'without':
      return { kind: 'without', crop: crop(entry.cropId) };
    case 'beds': {
      const unit = built.pieces.findIndex(({ bedId }) => bedId === entry.bedId);
      return unit >= 0
        ? { kind: 'beds', unit, count: entry.count }
        : refuse(`${path}.bedId`, 'no-such-bed', 'This bed is no longer there.');
    }
    case 'water':
      return { kind: 'water', zone: null, factor: entry.factor };
    case 'wage':
    case 'labour':
      return entry;
  }
}
