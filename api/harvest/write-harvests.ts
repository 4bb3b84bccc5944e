import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import {
  addHarvests,
  bedsOfPlanting,
  lotCodesLike,
  markHarvesting,
  plantingFacts,
  recordHarvest,
  saleUnitsOfFarm,
  setSaleUnit,
} from '../../db/repositories/harvests.ts';
import { setLabourOfHarvest } from '../../db/repositories/labour.ts';
import { priceFor } from '../../db/repositories/sales.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { harvestFaults } from '../../planner/costs/harvest-check.ts';
import { lotCode } from '../../planner/costs/lot-code.ts';
import { netOfUnit_kg } from '../../planner/costs/units-of-sale.ts';
import { InputError } from '../../planner/errors.ts';
import { Refusal } from '../errors.ts';

export type HarvestInput = {
  readonly date: IsoDate;
  readonly plantingId: string;
  readonly bedId: string | null;
  readonly amount: number;
  readonly unit: string;
  /** What one unit weighs, where the reader says so now; kept for the crop. */
  readonly unit_kg: number | null;
  readonly unitSource: string;
  readonly grade: string;
  readonly outletId: string | null;
  readonly price_minor: number | null;
  readonly culls_kg: number;
  readonly cullReason: string;
  readonly labour_min: number | null;
  readonly picker: string;
  readonly conditions: string;
  readonly note: string;
  readonly confirmed: boolean;
};

export type Clock = { readonly today: IsoDate; readonly now: string };

/**
 * Writes one harvest with its lot and the time it took. The lot's code is made by rule; the price comes from the outlet's list where
 * none is given.
 * @throws InputError at the field; Refusal when the planting is gone
 */
export function writeHarvest(
  db: FarmDb,
  input: HarvestInput,
  clock: Clock,
): { readonly harvestId: string; readonly lot: string } {
  const facts = plantingFacts(db, input.plantingId);
  if (facts === undefined) throw new Refusal({ code: 'not-found', what: 'planting' });
  const beds = bedsOfPlanting(db, input.plantingId);
  const bed = beds.find((each) => each.bedId === input.bedId) ?? (beds.length === 1 ? beds[0] : undefined);
  const net_kg = input.unit_kg ?? netOfUnit_kg(input.unit, facts.cropId, saleUnitsOfFarm(db));
  const faults = harvestFaults(
    { ...input, net_kg },
    {
      name: `${facts.crop} ${facts.number}`,
      inBed: facts.inBed as IsoDate,
      cleared: facts.cleared as IsoDate | null,
      yieldUnit: facts.yieldUnit,
      record: recordHarvest(db, facts.cropId, input.unit),
      expected: facts.yieldTypical,
    },
    clock.today,
  );
  if (faults.length > 0) throw new InputError(faults);
  if (input.unit_kg !== null)
    setSaleUnit(db, {
      id: newId(),
      cropId: facts.cropId,
      unit: input.unit,
      net_kg: input.unit_kg,
      source: input.unitSource || 'own weighing',
    });
  const place = bed?.code ?? beds[0]?.block ?? '';
  const stem = lotCode({ crop: facts.crop, date: input.date, place }, new Set());
  const code = lotCode({ crop: facts.crop, date: input.date, place }, lotCodesLike(db, stem));
  const harvestId = newId();
  const lotId = newId();
  addHarvests(
    db,
    [
      {
        id: harvestId,
        date: input.date,
        plantingId: input.plantingId,
        bedId: bed?.bedId ?? null,
        amount: input.amount,
        unit: input.unit,
        weight_kg: net_kg === null ? null : input.amount * net_kg,
        culls_kg: input.culls_kg,
        cullReason: input.cullReason,
        grade: input.grade,
        outletId: input.outletId,
        price_minor: input.price_minor ?? listPrice(db, input, facts.cropId) ?? facts.price_minor,
        labour_min: input.labour_min,
        lotId,
        picker: input.picker,
        conditions: input.conditions,
        note: input.note,
        createdAt: clock.now,
      },
    ],
    [{ id: lotId, code, date: input.date }],
  );
  writeTime(db, harvestId, input, bed?.bedId ?? null);
  markHarvesting(db, [input.plantingId], () => input.date);
  return { harvestId, lot: code };
}

/** The time a harvest took as hours worked, at the farm's wage. */
export function writeTime(
  db: FarmDb,
  harvestId: string,
  input: Pick<HarvestInput, 'date' | 'labour_min' | 'plantingId' | 'picker'>,
  bedId: string | null,
): void {
  const minutes = input.labour_min;
  setLabourOfHarvest(
    db,
    harvestId,
    minutes === null || minutes <= 0
      ? null
      : {
          id: newId(),
          date: input.date,
          task: 'harvest',
          minutes,
          wage_minor_per_h: farmOfFile(db)?.wage_minor_per_h ?? 0,
          plantingId: input.plantingId,
          bedId,
          harvestId,
          who: input.picker,
        },
  );
}

function listPrice(db: FarmDb, input: HarvestInput, cropId: string): number | null {
  if (input.outletId === null) return null;
  return priceFor(db, { outletId: input.outletId, cropId, unit: input.unit, grade: input.grade, date: input.date });
}
