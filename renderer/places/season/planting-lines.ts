import type { IsoDate } from '../../../planner/calendar.ts';
import { checkPlan } from '../../../planner/season/check-plan.ts';
import type { BoardData } from './board-data.ts';
import { worstByPlanting } from './lifted.ts';

export type PlantingLine = {
  readonly plantingId: string;
  readonly crop: string;
  readonly number: number;
  readonly beds: string;
  readonly plants: number;
  readonly sow: IsoDate | null;
  readonly inBed: IsoDate;
  readonly firstHarvest: IsoDate;
  readonly lastHarvest: IsoDate;
  readonly free: IsoDate;
  readonly state: string;
  readonly against: string;
  readonly revision: number;
};

/** The plan as rows of a table, with the weightiest thing against each planting. */
export function plantingLines(data: BoardData): readonly PlantingLine[] {
  const codes = new Map(data.beds.map((bed) => [bed.id, bed.code]));
  const plans = new Map(data.plantings.map((planting) => [planting.id, planting]));
  const worst = worstByPlanting(checkPlan({ beds: data.beds, plantings: data.plantings, rules: data.rules }));
  return data.rows.flatMap((row): PlantingLine[] => {
    const plan = plans.get(row.plantingId);
    if (plan === undefined) return [];
    return [
      {
        plantingId: row.plantingId,
        crop: plan.crop.cropName,
        number: row.number,
        beds: [...new Set(plan.spans.map((span) => codes.get(span.bedId) ?? ''))].join(', '),
        plants: row.plants,
        sow: plan.sow,
        inBed: plan.inBed,
        firstHarvest: plan.firstHarvest,
        lastHarvest: plan.lastHarvest,
        free: plan.free,
        state: row.state,
        against: worst.get(row.plantingId)?.message ?? '',
        revision: row.revision,
      },
    ];
  });
}
