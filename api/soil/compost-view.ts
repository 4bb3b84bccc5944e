import type { compostBatches } from '../../db/repositories/compost.ts';
import type { material } from '../../db/schema/materials.ts';
import { daysBetween, type IsoDate } from '../../planner/calendar.ts';
import { type CompostPart, compostMix } from '../../planner/fertility/compost-mix.ts';
import { HEAT_BAND_F, type HeatMethod, heatRule } from '../../planner/fertility/heat-rule.ts';

type MaterialRow = typeof material.$inferSelect;

/** A material as a part of a heap; `null` where its C:N, nitrogen or moisture is not known. */
export function partOf(row: MaterialRow, part_kg: number): (CompostPart & { readonly name: string }) | null {
  if (row.cToN === null || row.nShare === null || row.moistureShare === null || row.moistureShare >= 1) return null;
  return {
    name: row.name,
    part_kg,
    moistureShare: row.moistureShare,
    nShareOfDry: row.nShare / (1 - row.moistureShare),
    carbonToNitrogen: row.cToN,
  };
}

const heatMethods: Readonly<Record<string, HeatMethod>> = {
  'turned-windrow': 'turned-windrow',
  'static-aerated': 'static-aerated',
  'in-vessel': 'in-vessel',
};

/** A heap with its starting mix, its log, and where it stands against the time and temperature rule. */
export function compostView({ batch, ingredients, readings }: ReturnType<typeof compostBatches>[number]) {
  const parts = ingredients.flatMap((each) => partOf(each.material, each.amount_kg) ?? []);
  const mix = parts.length === 0 || parts.length < ingredients.length ? null : compostMix(parts);
  const method = heatMethods[batch.method];
  const started = batch.startedDate as IsoDate;
  const rule =
    method === undefined
      ? null
      : heatRule({
          method,
          log: readings.map((each) => ({ day: daysBetween(started, each.date as IsoDate), temperature_C: each.temperature_C })),
          turnings: readings.filter((each) => each.turned).length,
          band: HEAT_BAND_F,
        });
  return {
    ...batch,
    batchId: batch.id,
    ingredients: ingredients.map((each) => ({
      materialId: each.material.id,
      name: each.material.name,
      amount_kg: each.amount_kg,
      animalOrigin: each.material.animalOrigin,
    })),
    withAnimal: ingredients.some((each) => each.material.animalOrigin !== 'none'),
    mix,
    readings,
    rule,
    lastReading: readings.at(-1)?.date ?? null,
  };
}

export type CompostView = ReturnType<typeof compostView>;
