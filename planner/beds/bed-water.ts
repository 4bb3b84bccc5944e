import type { Working } from '../working.ts';
import { basinWater_L, explainBasinWater } from './basin-water.ts';
import { type BedSpec, basinOfBed, formOfBed, withBedFields } from './bed-spec.ts';
import { explainReservoirWater, reservoirWater_L } from './reservoir-water.ts';

/** Water that stands in the bed's basin or reservoir when filled; 0 where it has neither. @throws InputError */
export function bedWater_L(spec: BedSpec): number {
  return withBedFields(() => {
    const basin = basinInput(spec);
    if (basin !== undefined) return basinWater_L(basin);
    const reservoir = reservoirInput(spec);
    return reservoir === undefined ? 0 : reservoirWater_L(reservoir);
  });
}

export function explainBedWater(spec: BedSpec): Working | undefined {
  return withBedFields(() => {
    const basin = basinInput(spec);
    if (basin !== undefined) return explainBasinWater(basin);
    const reservoir = reservoirInput(spec);
    return reservoir === undefined ? undefined : explainReservoirWater(reservoir);
  });
}

function basinInput(spec: BedSpec) {
  const basin = basinOfBed(spec);
  return basin === undefined ? undefined : { basin, bag: formOfBed(spec), level_m: spec.basinFill_m ?? basin.depth_m };
}

function reservoirInput(spec: BedSpec) {
  if (spec.watering !== 'reservoir' || spec.reservoirVoid_share === null) return undefined;
  return { bed: formOfBed(spec), overflow_m: spec.overflow_m ?? spec.reservoirDepth_m ?? 0, voidShare: spec.reservoirVoid_share };
}
