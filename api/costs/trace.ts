import type { FarmDb } from '../../db/file/open-farm.ts';
import { lotBalances } from '../../db/repositories/harvests.ts';
import {
  bedsUnder,
  bedsWithBatch,
  bedsWithLot,
  harvestsIntoLots,
  inputsOnBeds,
  lotOfCode,
  lotsOfBeds,
  plantingsOfSeedLot,
  salesOfLots,
  teaOnBeds,
  waterOfBeds,
} from '../../db/repositories/trace.ts';
import { addDays, type IsoDate } from '../../planner/calendar.ts';
import { Refusal } from '../errors.ts';

/** Inputs of this many days before a harvest are traced: the longest interval of raw manure (7 CFR 205.203(c)(1)). */
export const TRACE_BACK_DAYS = 120;

/** One step back: a lot to its harvests, beds, inputs, tea, water, seed; and where it went. @throws Refusal on an unknown code */
export function traceBack(db: FarmDb, code: string) {
  const lot = lotOfCode(db, code);
  if (lot === undefined) throw new Refusal({ code: 'not-found', what: 'lot' }, `There is no lot ${code}.`);
  const parents = (lot.parentCodes ?? []).flatMap((each) => lotOfCode(db, each)?.id ?? []);
  const lotIds = [lot.id, ...parents];
  const harvests = harvestsIntoLots(db, lotIds);
  const beds = bedsUnder(db, [...new Set(harvests.map((each) => each.plantingId))]);
  const bedIds = [
    ...new Set([...harvests.flatMap((each) => (each.bedId === null ? [] : [each.bedId])), ...beds.map((each) => each.bedId)]),
  ];
  const days = harvests.map((each) => each.date).sort();
  const from = addDays((days[0] ?? lot.date) as IsoDate, -TRACE_BACK_DAYS);
  const to = days.at(-1) ?? lot.date;
  return {
    lot: { code: lot.code, date: lot.date, parents: lot.parentCodes ?? [] },
    harvests,
    beds: [...new Map(beds.map((each) => [each.bedId, each.bed])).values()],
    inputs: inputsOnBeds(db, bedIds, from, to),
    tea: teaOnBeds(db, bedIds, from, to),
    water: waterOfBeds(db, bedIds, from, to),
    sales: salesOfLots(db, [lot.id]),
    since: from,
  };
}

export type TraceStart = { readonly kind: 'lot' | 'batch' | 'bed'; readonly id: string };

/** One step forward: an input lot, a compost batch or a bed to harvests, lots, buyers, and what is not sold. */
export function traceForward(db: FarmDb, start: TraceStart) {
  const beds =
    start.kind === 'bed'
      ? [{ bedId: start.id, bed: '', from: '0000-01-01' }]
      : start.kind === 'lot'
        ? bedsWithLot(db, start.id)
        : bedsWithBatch(db, start.id);
  const seeded = start.kind === 'lot' ? new Set(plantingsOfSeedLot(db, start.id)) : new Set<string>();
  const since = new Map(beds.map((each) => [each.bedId, each.from]));
  const found = lotsOfBeds(db, [...since.keys()], [...seeded]).filter(
    (lot) => seeded.has(lot.plantingId) || (since.has(lot.bedId) && lot.date >= (since.get(lot.bedId) ?? '')),
  );
  const lots = [...new Map(found.map((lot) => [lot.lotId, lot])).values()];
  const ids = lots.map((lot) => lot.lotId);
  const left = new Map(
    ids.length === 0 ? [] : lotBalances(db, { lotIds: ids }).map((lot) => [lot.lotId, lot.harvested - lot.gone]),
  );
  return {
    beds: beds.map((each) => ({ bed: each.bed, from: each.from })).filter((each) => each.bed !== ''),
    lots: lots.map((lot) => ({
      lot: lot.lot,
      date: lot.date,
      crop: lot.crop,
      amount: lot.amount,
      unit: lot.unit,
      left: left.get(lot.lotId) ?? 0,
    })),
    sales: salesOfLots(db, ids),
  };
}
