import { M_PER_FOOT } from '../../planner/units/constants.ts';
import type { UnitSystem } from '../../planner/units/system.ts';

/**
 * A length for a scale bar: the largest of 1, 2 or 5 times a power of ten, in the reader's unit (whole inches below a
 * foot), that is not longer than what there is room for.
 */
export function roundLength_m(room_m: number, system: UnitSystem): number {
  const unit_m = system === 'metric' ? 1 : room_m < M_PER_FOOT ? M_PER_FOOT / 12 : M_PER_FOOT;
  const room = room_m / unit_m;
  const power = 10 ** Math.floor(Math.log10(room));
  const step = [5, 2, 1].find((each) => each * power <= room * (1 + 1e-9)) ?? 1;
  return step * power * unit_m;
}
