import { requirePositive, requireRange } from '../errors.ts';

export type HandBed = { readonly bedId: string; readonly need_L: number };

export type HandRound = {
  readonly beds: readonly { readonly bedId: string; readonly need_L: number; readonly cans: number }[];
  readonly cans: number;
  /** Walks from the tap with two cans. */
  readonly walks: number;
  readonly water_L: number;
};

/** Part of a can that is still worth carrying to a bed. Common practice, no source. */
const STEP = 0.5;

/**
 * A watering round by hand: each bed's need in half cans, rounded up, in the order given; two cans a walk.
 * Common practice, no source.
 * @throws InputError for a can without size
 */
export function handRound(beds: readonly HandBed[], can_L: number): HandRound {
  requirePositive('can_L', can_L, 'L');
  const rows = beds.map(({ bedId, need_L }) => {
    requireRange('need_L', need_L, 0, 1e6, 'L');
    return { bedId, need_L, cans: Math.ceil(need_L / can_L / STEP - 1e-9) * STEP };
  });
  const cans = rows.reduce((sum, row) => sum + row.cans, 0);
  return { beds: rows.filter((row) => row.cans > 0), cans, walks: Math.ceil(cans / 2), water_L: cans * can_L };
}
