import { formOfBed, outlineOfBed } from '../../planner/beds/bed-spec.ts';
import { explainBedWater } from '../../planner/beds/bed-water.ts';
import { explainFootprint } from '../../planner/beds/footprint.ts';
import { explainPerimeter } from '../../planner/beds/perimeter.ts';
import { explainVolume } from '../../planner/beds/volume.ts';
import { explainWallArea } from '../../planner/beds/wall-area.ts';
import { explainWeedBarrier } from '../../planner/beds/weed-barrier.ts';
import { explainBedLoad, weighedLayers } from '../../planner/soil/bed-figures.ts';
import { explainBedWeight } from '../../planner/soil/bed-weight.ts';
import { explainLoose } from '../../planner/soil/settling.ts';
import type { Working } from '../../planner/working.ts';
import type { LoadedBed } from './load-beds.ts';

/** The workings of a bed's headline figures; null where the bed has no such figure. */
export function bedWorkings(bed: LoadedBed) {
  const { spec, recipe, figures, design } = bed;
  if (figures === null) return null;
  const form = formOfBed(spec);
  const outline = outlineOfBed(spec);
  const weighed = weighedLayers(recipe, figures.layers);
  const overlap_m = design.barrierOverlap_m;
  return {
    area: explainFootprint(outline),
    perimeter: explainPerimeter(outline),
    volume: explainVolume(form, spec.fillDepth_m),
    walls: form.solid === 'straight' || form.solid === 'tapered' ? explainWallArea(form) : null,
    barrier: overlap_m === null ? null : explainWeedBarrier({ outline, reach_m: overlap_m, overlap_m: 0 }),
    water: explainBedWater(spec) ?? null,
    weight: weighed === undefined ? null : explainBedWeight(weighed),
    load: explainBedLoad(spec, recipe) ?? null,
    layers: figures.layers.map((layer, at): Working => {
      const part = recipe[at];
      return explainLoose(layer.settled_L, part?.settlingShare ?? 0, part?.name ?? `Layer ${at + 1}`);
    }),
  };
}
