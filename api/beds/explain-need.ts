import { formOfBed } from '../../planner/beds/bed-spec.ts';
import { explainLoose } from '../../planner/soil/settling.ts';
import { explainTopUp } from '../../planner/soil/top-up.ts';
import { entry, practice, type Working } from '../../planner/working.ts';
import type { BedNeed } from './fill-needs-of-farm.ts';
import type { LoadedBed } from './load-beds.ts';

/** How a need of a bed came about: its layer of the recipe, or the drop and what fills it. */
export function explainNeed(bed: LoadedBed, need: BedNeed): Working | null {
  if (need.kind === 'top-up') {
    const input = {
      form: formOfBed(bed.spec),
      surface_m: bed.spec.fillDepth_m,
      drop_m: need.drop_m ?? 0,
      settlingShare: bed.recipe.at(-1)?.settlingShare ?? 0,
    };
    const from =
      need.basis === 'measured'
        ? entry('measured')
        : practice('expected from settling since it was last filled: common practice, no source');
    return explainTopUp(input, from);
  }
  const at = bed.recipe.findIndex(
    (part, index) => part.materialId === need.materialId && bed.figures?.layers[index]?.loose_L === need.loose_L,
  );
  const layer = bed.figures?.layers[at];
  return layer === undefined ? null : explainLoose(layer.settled_L, bed.recipe[at]?.settlingShare ?? 0, need.material);
}
