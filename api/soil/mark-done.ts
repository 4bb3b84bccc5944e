import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import {
  addApplications,
  applicationBedsOfIds,
  bedsLeft,
  type NewApplication,
  removeApplication,
  setApplicationCost,
  stockValue,
} from '../../db/repositories/applications.ts';
import { addStockMoves, type NewStockMove } from '../../db/repositories/bed-history.ts';
import { roundMoney, splitMoney } from '../../planner/money.ts';
import { kgPerBaseUnit } from '../../planner/soil/base-unit.ts';
import { nothingCame } from '../orders/ledger-of-material.ts';

export type DoneFacts = {
  readonly date: string;
  readonly time: string;
  readonly who: string;
  readonly method: string;
  readonly incorporatedDate: string | null;
  readonly weather: string;
  readonly lotId: string | null;
  readonly note: string;
};

/**
 * Turns planned doses into a record of what was put on, and takes the material out of stock at what it cost on average.
 * Doses of an application that are not among `ids` stay planned.
 */
export function markDone(
  db: FarmDb,
  ids: readonly string[],
  facts: DoneFacts,
): { readonly beds: number; readonly cost_minor: number } {
  const rows = applicationBedsOfIds(db, ids).filter((row) => row.application.state === 'planned');
  let cost_minor = 0;
  for (const [applicationId, doses] of Map.groupBy(rows, (row) => row.application.id)) {
    const first = doses[0];
    if (first === undefined) continue;
    const { id: _, revision: __, ...head } = first.application;
    const done: NewApplication = { ...head, ...facts, id: newId(), state: 'done', method: facts.method || head.method };
    addApplications(db, [done], []);
    cost_minor += writeUse(db, done.id, doses, facts);
    if (bedsLeft(db, applicationId) === 0) removeApplication(db, applicationId);
  }
  return { beds: rows.length, cost_minor };
}

type Dose = ReturnType<typeof applicationBedsOfIds>[number];

/** Moves the doses to the done application and uses the stock. Used at the average cost of what was on hand. */
export function writeUse(
  db: FarmDb,
  applicationId: string,
  doses: readonly Dose[],
  facts: Pick<DoneFacts, 'date' | 'who' | 'lotId'>,
): number {
  const material = doses[0]?.material;
  if (material === undefined) return 0;
  const perUnit = kgPerBaseUnit(material);
  const total_kg = doses.reduce((sum, dose) => sum + dose.amount_kg, 0);
  const hand = stockValue(db, material.id);
  const amount = perUnit === null ? 0 : total_kg / perUnit;
  const unit_minor = hand.amount > 0 ? hand.value_minor / hand.amount : 0;
  const value_minor = roundMoney(unit_minor * Math.min(amount, Math.max(0, hand.amount)));
  const { parts_minor } = splitMoney(
    value_minor,
    doses.map((dose) => dose.amount_kg),
  );
  const unpriced = !material.own && nothingCame(db, material.id, facts.date);
  const moves = doses.flatMap((dose, at): NewStockMove[] => {
    const cost = parts_minor[at] ?? 0;
    setApplicationCost(db, dose.applicationBedId, applicationId, cost);
    if (perUnit === null) return [];
    return [
      {
        id: newId(),
        materialId: material.id,
        date: facts.date,
        kind: 'use',
        amount: -dose.amount_kg / perUnit,
        value_minor: -cost,
        lotId: facts.lotId,
        bedId: dose.bedId,
        plantingId: dose.plantingId,
        applicationId,
        who: facts.who,
        reason: 'application',
        // more was used than the books held: counted stock will tell
        flagged: amount > hand.amount + 1e-9,
        unpriced,
      },
    ];
  });
  addStockMoves(db, moves);
  return value_minor;
}
