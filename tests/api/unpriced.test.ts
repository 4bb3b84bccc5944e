import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { seasonLedger } from '../../api/costs/season-ledger.ts';
import { createApp } from '../../api/http/app.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

const planned = 'season-2027';
const worked = 'season-2026';
let program: TestProgram;

beforeEach(() => {
  program = aProgram({ beds: 24, years: 1 });
});
afterEach(() => program.end());

/** Takes every offer of a material away. */
const nobodySells = (materialId: string) =>
  program.farm.sqlite.prepare('UPDATE offer SET retired = 1 WHERE material_id = ?').run(materialId);

async function topUp() {
  const need = (await program.api.orders.needs({ seasonId: planned })).needs.find((each) => each.source === 'top-up');
  if (need === undefined) throw new Error('expected a top-up');
  return { ...need, bedId: need.key.split(':')[1] ?? '' };
}

const noStock = (materialId: string) =>
  program.api.stock.count({ date: '2026-11-20', who: 'AN', counts: [{ materialId, counted: 0 }] });

describe('a need that nobody sells', () => {
  test('is told with its amount, until an offer or enough stock of it is there', async () => {
    const { api } = program;
    const { materialId } = await topUp();
    await noStock(materialId);
    const before = await api.orders.unpriced({ seasonId: planned });
    nobodySells(materialId);
    const now = await api.orders.unpriced({ seasonId: planned });
    const found = now.find((each) => each.materialId === materialId);
    expect(now).toHaveLength(before.length + 1);
    const wanted = (await api.orders.needs({ seasonId: planned })).needs.filter((each) => each.materialId === materialId);
    expect(found?.needs).toBe(wanted.length);
    expect(found?.amount).toBeCloseTo(
      wanted.reduce((sum, each) => sum + each.amount, 0),
      6,
    );
    const app = createApp({ program: program.program, pages: program.folder });
    const csv = await (await app.fetch(new Request(`http://x/export/shopping-list.csv?season=${planned}`))).text();
    expect(csv).toContain('No price known');
    expect(csv).toContain(found?.material ?? 'nothing');
    const supplier = (await api.suppliers.list())[0];
    await api.suppliers.addOffer({
      materialId,
      supplierId: supplier?.id ?? '',
      name: 'loose',
      packageAmount: 1000,
      price_minor: 4000,
    });
    expect(await api.orders.unpriced({ seasonId: planned })).toHaveLength(before.length);
  });

  test('is no need of a price once it is left out', async () => {
    const { api } = program;
    const { materialId } = await topUp();
    await noStock(materialId);
    nobodySells(materialId);
    const found = (await api.orders.unpriced({ seasonId: planned })).find((each) => each.materialId === materialId);
    const choices = (found?.keys ?? []).map((key) => ({ key, materialId, amount: null, supplierId: null, left: true }));
    await api.orders.setNeeds({ seasonId: planned, choices });
    expect((await api.orders.unpriced({ seasonId: planned })).map((each) => each.materialId)).not.toContain(materialId);
  });
});

describe('a cost without a price', () => {
  const inView = async () => (await program.api.costs.view({ seasonId: worked, by: 'bed' })).unpriced;

  test('of a fill: the bed is marked, the sums stay what is known, and a price mends them; undo takes it back', async () => {
    const { api } = program;
    const before = await inView();
    const { materialId, bedId, amount } = await topUp();
    await noStock(materialId);
    nobodySells(materialId);
    const sumBefore = (await api.costs.view({ seasonId: worked, by: 'bed' })).totals.cost_minor;
    const done = await api.beds.recordFill({ bedIds: [bedId], date: '2026-11-25' });
    expect(done).toMatchObject({ priced_minor: 0, unpriced: 1 });
    const view = await api.costs.view({ seasonId: worked, by: 'bed' });
    expect(view.totals.cost_minor).toBe(sumBefore);
    expect(view.unpriced).toHaveLength(before.length + 1);
    const missing = view.unpriced.find((each) => each.materialId === materialId);
    expect(missing).toMatchObject({ things: 1, offer_minor: null });
    expect(missing?.amount).toBeCloseTo(amount, 6);
    expect(view.rows.filter((row) => row.atLeast).map((row) => row.id)).toContain(bedId);
    expect((await api.costs.explain({ seasonId: worked, by: 'bed', id: bedId })).notes.join(' ')).toContain('no price');
    for (const by of ['block', 'design', 'crop', 'planting', 'outlet'] as const)
      expect((await api.costs.view({ seasonId: worked, by })).rows.some((row) => row.atLeast)).toBe(true);
    expect((await api.costs.seasonSums({ seasonId: worked })).unpriced).toBe(
      seasonLedger(program.farm.db, worked).unpriced.length,
    );
    await expect(api.costs.priceUnknown({ materialId, price_minor: -1 })).rejects.toThrow('cannot be negative');
    await api.costs.priceUnknown({ materialId, price_minor: 6 });
    const mended = await api.costs.view({ seasonId: worked, by: 'bed' });
    expect(mended.unpriced).toHaveLength(before.length);
    expect((await api.beds.one({ bedId })).fills.at(-1)).toMatchObject({ cost_minor: Math.round(6 * amount), unpriced_L: 0 });
    await api.undo.undo();
    expect(await inView()).toHaveLength(before.length + 1);
  });

  test('of a part of a line, and of a bed, is told until it has one; a price of nothing is a price', async () => {
    const { api } = program;
    const before = await inView();
    nobodySells('hw-timer');
    const lineId = (await api.waterLines.list()).lines[0]?.lineId ?? '';
    const part = { lineId, materialId: 'hw-timer', amount: 2, installedDate: '2026-03-01', life_years: 5 };
    await api.waterLines.addPart(part);
    expect((await inView()).find((each) => each.materialId === 'hw-timer')).toMatchObject({ things: 1, amount: 2 });
    const marked = (await api.costs.view({ seasonId: worked, by: 'bed' })).rows.filter((row) => row.atLeast);
    expect(marked.length).toBeGreaterThanOrEqual(seasonLedger(program.farm.db, worked).fed.get(lineId)?.length ?? 1);
    await api.costs.priceUnknown({ materialId: 'hw-timer', price_minor: 0 });
    expect(await inView()).toHaveLength(before.length);
    await api.waterLines.addPart({ ...part, price_minor: 0 });
    expect(await inView()).toHaveLength(before.length);
  });

  test('of what was counted without a price is told when it is used, at its share of the stock', async () => {
    const { api } = program;
    const { materialId } = await api.materials.add({ name: 'Netting of the test', kind: 'cover', baseUnit: 'm2' });
    const counted = await api.stock.count({ date: '2026-05-01', who: 'AN', counts: [{ materialId, counted: 30 }] });
    expect(counted).toEqual({ corrected: 1, unpriced: 1 });
    await api.stock.count({ date: '2026-05-02', who: 'AN', counts: [{ materialId, counted: 60, unitCost_minor: 100 }] });
    await api.stock.use({ materialId, date: '2026-05-03', amount: 20 });
    expect((await inView()).find((each) => each.materialId === materialId)).toMatchObject({ things: 1, amount: 10 });
    await api.costs.priceUnknown({ materialId, price_minor: 100 });
    expect((await inView()).map((each) => each.materialId)).not.toContain(materialId);
    const { charges } = seasonLedger(program.farm.db, worked);
    expect(charges.some((charge) => charge.kind === 'inputs' && charge.amount_minor === 2000)).toBe(true);
  });

  test('of what was used and never came into the books costs what the grower says afterwards', async () => {
    const { api } = program;
    const { materialId } = await api.materials.add({ name: 'Twine of the test', kind: 'hardware', baseUnit: 'm' });
    await api.stock.use({ materialId, date: '2026-06-03', amount: 40, flagged: true });
    expect((await inView()).find((each) => each.materialId === materialId)).toMatchObject({ things: 1, amount: 40 });
    await api.costs.priceUnknown({ materialId, price_minor: 2.5 });
    expect((await inView()).map((each) => each.materialId)).not.toContain(materialId);
    const { charges } = seasonLedger(program.farm.db, worked);
    expect(charges.some((charge) => charge.kind === 'inputs' && charge.amount_minor === 100)).toBe(true);
  });
});

test('a material that was edited is wanted as before: it is not taken for soil dug on the farm', async () => {
  const { api } = program;
  const { materialId, key } = await topUp();
  const row = (await api.materials.list()).find((each) => each.id === materialId);
  await api.materials.setMany({ edits: [{ materialId, revision: row?.revision ?? 0, values: { moistDensity_kg_per_m3: 900 } }] });
  expect((await api.orders.needs({ seasonId: planned })).needs.map((each) => each.key)).toContain(key);
  const after = (await api.materials.list()).find((each) => each.id === materialId);
  expect(after?.own).toBe(false);
  expect(after?.source).toMatch(/in part your entry$/);
});
