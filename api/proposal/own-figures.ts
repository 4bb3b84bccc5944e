import { z } from 'zod';
import { rememberedSetting, rememberSetting } from '../../db/repositories/farm.ts';
import type { Ctx } from '../procedure.ts';

const share = z.number().min(0).max(2);
const amount = z.number().min(0).max(1e9);

/** What the grower says otherwise than records and library, for one crop. */
const cropFigures = z.object({
  yield_per_m2: amount.nullable(),
  plant_h_per_m2: amount.nullable(),
  care_h_per_m2_week: amount.nullable(),
  harvest_h_per_unit: amount.nullable(),
  direct_minor_per_m2: amount.nullable(),
  shelf_weeks: z.int().min(0).max(52).nullable(),
  leaveOut: z.boolean(),
});

export const ownFigures = z.object({
  caution: share,
  labour_h_per_week: amount.nullable(),
  overtime_h_per_week: amount,
  overtimePremium_share: share,
  pump_h_per_day: z.number().min(0).max(24),
  mostCrops: z.int().min(1).max(500).nullable(),
  crops: z.record(z.string().max(80), cropFigures),
});
export type OwnFigures = z.output<typeof ownFigures>;
export type OwnCropFigures = z.output<typeof cropFigures>;

/** Pumps run so long a day at the most, unless the grower says otherwise. Common practice, no source. */
const PUMP_H_PER_DAY = 2;

export const usualFigures: OwnFigures = {
  caution: 0.5,
  labour_h_per_week: null,
  overtime_h_per_week: 8,
  overtimePremium_share: 0.5,
  pump_h_per_day: PUMP_H_PER_DAY,
  mostCrops: null,
  crops: {},
};

export const noOwnCropFigures: OwnCropFigures = {
  yield_per_m2: null,
  plant_h_per_m2: null,
  care_h_per_m2_week: null,
  harvest_h_per_unit: null,
  direct_minor_per_m2: null,
  shelf_weeks: null,
  leaveOut: false,
};

const NAME = 'proposal-figures';

/** The grower's own figures for proposals; the usual ones where there are none, or where they were kept in another form. */
export function rememberedFigures({ db }: Pick<Ctx, 'db'>): OwnFigures {
  const read = ownFigures.safeParse(rememberedSetting(db, NAME));
  return read.success ? read.data : usualFigures;
}

export const rememberFigures = (farm: Ctx['farm'], figures: OwnFigures): void =>
  farm.unrecorded(() => rememberSetting(farm.db, NAME, figures));
