import { z } from 'zod';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { rememberedSetting, rememberSetting } from '../../db/repositories/farm.ts';
import { USUAL_WALL_FACTOR } from '../../planner/water/container-water.ts';

const NAME = 'water.choices';

/** What the grower sets for the water of the whole farm. */
export const waterChoices = z.object({
  wallFactor: z.number('The wall’s factor is a number from 0 to 0.5.').min(0, 'At least 0.').max(0.5, 'At most 0.5.'),
  exposure: z.number('The exposure is a number from 0.8 to 1.5.').min(0.8, 'At least 0.8.').max(1.5, 'At most 1.5.'),
  shadeShare: z.number().min(0, 'At least 0 %.').max(0.9, 'At most 90 %.'),
  confidence: z.number().min(0.5, 'At least 50 %.').max(1, 'At most 100 %.'),
  standing_days: z.int('Whole days.').min(1, 'At least one day.').max(14, 'At most 14 days.'),
  run_h_per_day: z.number().min(0.1, 'At least a tenth of an hour.').max(24, 'A day has 24 hours.'),
  ecw_dS_per_m: z.number().min(0, 'Zero or more.').max(20, 'At most 20 dS/m.').nullable(),
  saltYieldShare: z.number().min(0.5, 'At least 50 %.').max(1, 'At most 100 %.'),
});

export type WaterChoices = z.infer<typeof waterChoices>;

/** Standing water turns out mosquitoes in about a week: three days leave a margin. See the caution. */
const usual: WaterChoices = {
  wallFactor: USUAL_WALL_FACTOR,
  exposure: 1,
  shadeShare: 0,
  confidence: 0.9,
  standing_days: 3,
  run_h_per_day: 6,
  ecw_dS_per_m: null,
  saltYieldShare: 0.9,
};

export function choicesOfFarm(db: FarmDb): WaterChoices {
  const kept = waterChoices.partial().safeParse(rememberedSetting(db, NAME) ?? {});
  const known = Object.fromEntries(Object.entries(kept.success ? kept.data : {}).filter(([, value]) => value !== undefined));
  return { ...usual, ...known };
}

export const keepChoices = (db: FarmDb, choices: WaterChoices): void => rememberSetting(db, NAME, choices);
