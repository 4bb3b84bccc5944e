import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { run } from '../../api/jobs/orders/least-cost.ts';
import { problemOfSeason } from '../../api/orders/problem-of-season.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

const seasonId = 'season-2027';
const TODAY = '2026-11-25';
const voice = { progress: () => undefined, best: () => undefined, shouldStop: () => false };
let program: TestProgram;

beforeEach(() => {
  program = aProgram({ beds: 24, years: 1 });
});
afterEach(() => program.end());

const problem = () =>
  problemOfSeason(program.farm.db, seasonId, TODAY as IsoDate, { mostSuppliers: null, inTime: false }).problem;

async function cheapest() {
  const { plan } = await run(problem(), voice);
  if (plan.state !== 'found') throw new Error('expected a list');
  return plan.bought;
}

const needsOf = async (materialId: string) =>
  (await program.api.orders.needs({ seasonId })).needs.filter((need) => need.materialId === materialId);
const purchase = async (purchaseId: string) =>
  (await program.api.orders.purchases()).filter((line) => line.purchaseId === purchaseId);

/** The cheapest list, all of it ordered. */
async function allOrdered(): Promise<readonly string[]> {
  await program.api.orders.keepList({ seasonId, bought: [...(await cheapest())] });
  const purchaseIds: string[] = [];
  for (const list of await program.api.orders.list({ seasonId })) {
    for (const row of list.rows) await program.api.orders.tick({ shoppingLineId: row.shoppingLineId, ticked: true });
    purchaseIds.push((await program.api.orders.order({ seasonId, supplierId: list.supplierId, date: TODAY })).purchaseId);
  }
  return purchaseIds;
}

describe('what is ordered and not here yet', () => {
  test('is not bought again, as much as when it lies in stock', async () => {
    expect((await cheapest()).length).toBeGreaterThan(3);
    const purchaseIds = await allOrdered();
    expect(await cheapest()).toEqual([]);
    for (const purchaseId of purchaseIds) {
      const lines = (await purchase(purchaseId)).map(({ lineId, packages }) => ({ lineId, packages }));
      await program.api.orders.receive({ purchaseId, date: TODAY, lines });
    }
    expect(await cheapest()).toEqual([]);
  });

  test('stands at its needs with the day by which it should be here, and less of it once a part came', async () => {
    const [purchaseId = ''] = await allOrdered();
    const line = (await purchase(purchaseId)).find(({ packages }) => packages >= 2);
    if (line === undefined) throw new Error('expected a line of two packages');
    const before = await needsOf(line.materialId);
    const ordered = before[0]?.onTheWay ?? 0;
    expect(ordered).toBeGreaterThanOrEqual(line.amount);
    expect(new Set(before.map((need) => need.onTheWay)).size).toBe(1);
    const lead = program.farm.sqlite
      .prepare<[string], number>(
        'SELECT coalesce(o.lead_days, s.lead_days) FROM offer o JOIN supplier s ON s.id = o.supplier_id JOIN purchase_line l ON l.offer_id = o.id WHERE l.id = ?',
      )
      .pluck()
      .get(line.lineId);
    expect(before[0]?.expectedDate).toBe(new Date(Date.parse(TODAY) + 86_400_000 * (lead ?? 0)).toISOString().slice(0, 10));
    const onHand = before[0]?.onHand ?? 0;
    await program.api.orders.receive({ purchaseId, date: TODAY, lines: [{ lineId: line.lineId, packages: 1 }] });
    const [after] = await needsOf(line.materialId);
    expect(after?.onTheWay).toBeCloseTo(ordered - line.packageAmount, 6);
    expect(after?.onHand).toBeCloseTo(onHand + line.packageAmount, 6);
    expect(await cheapest()).toEqual([]);
    // what goes back had come: it is bought again and not waited for
    await program.api.orders.sendBack({ purchaseId, lineId: line.lineId, packages: 1, date: TODAY, reason: 'torn' });
    const [sentBack] = await needsOf(line.materialId);
    expect(sentBack?.onTheWay).toBeCloseTo(ordered - line.packageAmount, 6);
    expect(sentBack?.onHand).toBeCloseTo(onHand, 6);
  });

  test('is in the working of a list line', async () => {
    const bought = await cheapest();
    await program.api.orders.keepList({ seasonId, bought: [...bought] });
    const [list] = await program.api.orders.list({ seasonId });
    const row = list?.rows[0];
    if (list === undefined || row === undefined) throw new Error('expected a list');
    await program.api.orders.tick({ shoppingLineId: row.shoppingLineId, ticked: true });
    await program.api.orders.order({ seasonId, supplierId: list.supplierId, date: TODAY });
    await program.api.orders.keepList({ seasonId, bought: [{ offerId: row.offerId, packages: 1 }] });
    const again = (await program.api.orders.list({ seasonId })).flatMap((each) => each.rows).find(({ ticked }) => !ticked);
    const working = await program.api.orders.explainLine({ seasonId, shoppingLineId: again?.shoppingLineId ?? '' });
    expect(working.symbols.find(({ symbol }) => symbol === 'on the way')?.figure.value).toBeCloseTo(row.amount, 6);
    expect(working.steps[1]?.result?.value).toBe(0);
  });

  test('is bought again once it is called off, with neither delivery nor tax where nothing came', async () => {
    const wanted = await cheapest();
    const [purchaseId = '', ...rest] = await allOrdered();
    const lines = await purchase(purchaseId);
    await program.api.orders.callOff({ purchaseId, date: TODAY });
    for (const line of await purchase(purchaseId))
      expect(line).toMatchObject({ state: 'called-off', open: 0, total_minor: 0, delivery_minor: 0, tax_minor: 0 });
    const again = await cheapest();
    const offers = new Set(wanted.map(({ offerId }) => offerId));
    expect(again.length).toBeGreaterThan(0);
    for (const { offerId } of again) expect(offers).toContain(offerId);
    await expect(program.api.orders.callOff({ purchaseId, date: TODAY })).rejects.toThrow('here already');
    await expect(program.api.orders.callOff({ purchaseId: 'no', date: TODAY })).rejects.toThrow('purchase');
    await program.api.undo.undo();
    expect(await purchase(purchaseId)).toEqual(lines);
    expect(await cheapest()).toEqual([]);
    expect(rest.every((id) => id !== purchaseId)).toBe(true);
  });

  test('called off after a part came: that part stays, with its delivery', async () => {
    const [purchaseId = ''] = await allOrdered();
    const line = (await purchase(purchaseId)).find(({ packages }) => packages >= 2);
    if (line === undefined) throw new Error('expected a line of two packages');
    await program.api.orders.receive({ purchaseId, date: TODAY, lines: [{ lineId: line.lineId, packages: 1 }] });
    await program.api.orders.callOff({ purchaseId, date: TODAY });
    const after = await purchase(purchaseId);
    expect(after.find(({ lineId }) => lineId === line.lineId)).toMatchObject({ state: 'here', packages: 1, open: 0 });
    expect(after[0]?.delivery_minor).toBe(line.delivery_minor);
    expect((await needsOf(line.materialId))[0]?.onTheWay ?? 0).toBeLessThan(line.amount);
  });
});
