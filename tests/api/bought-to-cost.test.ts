import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { seasonLedger } from '../../api/costs/season-ledger.ts';
import type { CostKind } from '../../planner/costs/spread-charges.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

const seasonId = 'season-2026';
const groupings = ['bed', 'block', 'design', 'crop', 'planting', 'outlet'] as const;
let program: TestProgram;

beforeEach(() => {
  program = aProgram({ beds: 24, years: 1 });
});
afterEach(() => program.end());

const chargesOf = (kind: CostKind) => seasonLedger(program.farm.db, seasonId).charges.filter((charge) => charge.kind === kind);
const sumOf = (kind: CostKind): number => chargesOf(kind).reduce((sum, charge) => sum + charge.amount_minor, 0);
const lineId = async (): Promise<string> => (await program.api.waterLines.list()).lines[0]?.lineId ?? '';

/** Puts something into stock as a count with a price, before it is used. */
const counted = (materialId: string, amount: number, unitCost_minor: number) =>
  program.api.stock.count({ date: '2026-01-02', who: 'AN', counts: [{ materialId, counted: amount, unitCost_minor }] });

/** The rows of every grouping add up to what was charged, in all and for the water lines. */
async function expectToAddUp() {
  const spent = seasonLedger(program.farm.db, seasonId).charges.reduce((sum, charge) => sum + charge.amount_minor, 0);
  for (const by of groupings) {
    const { rows, totals } = await program.api.costs.view({ seasonId, by });
    expect([by, totals.cost_minor]).toEqual([by, spent]);
    expect([by, rows.reduce((sum, row) => sum + row.lineParts_minor, 0)]).toEqual([by, sumOf('line-parts')]);
  }
}

describe('a part of a water line', () => {
  test('out of stock costs its average cost over its life, and is no input of the season', async () => {
    const { api } = program;
    const before = { parts: sumOf('line-parts'), inputs: sumOf('inputs') };
    await counted('hw-battery', 2, 20_000);
    await api.waterLines.addPart({
      lineId: await lineId(),
      materialId: 'hw-battery',
      amount: 1,
      installedDate: '2026-01-02',
      life_years: 10,
    });
    expect((await api.stock.list()).find((row) => row.materialId === 'hw-battery')?.onHand).toBeCloseTo(1, 9);
    // 20,000 over ten years, for 364 of 365 days
    expect(sumOf('line-parts') - before.parts).toBeCloseTo((2000 * 364) / 365, -1);
    expect(sumOf('line-parts') - before.parts).toBeGreaterThan(1990);
    expect(sumOf('inputs')).toBe(before.inputs);
    await expectToAddUp();
  });

  test('with a price of its own costs that', async () => {
    const before = sumOf('line-parts');
    await program.api.waterLines.addPart({
      lineId: await lineId(),
      materialId: 'hw-timer',
      amount: 1,
      installedDate: '2025-06-01',
      life_years: 4,
      price_minor: 8000,
    });
    expect(sumOf('line-parts') - before).toBe(2000);
    await expectToAddUp();
  });

  test('is shared among the beds of its line by the water each is to get; the working of a bed adds up to its row', async () => {
    const { api } = program;
    const id = await lineId();
    await api.waterLines.addPart({
      lineId: id,
      materialId: 'hw-pump-25',
      amount: 1,
      installedDate: '2025-06-01',
      life_years: 3,
      price_minor: 10_001,
    });
    const { fed, lineParts } = seasonLedger(program.farm.db, seasonId);
    expect(fed.get(id)?.length).toBeGreaterThan(2);
    const { rows } = await api.costs.view({ seasonId, by: 'bed' });
    const feeding = [...Map.groupBy(lineParts, (part) => part.lineId)].map(([line, parts]) => ({
      total_minor: parts.reduce((sum, part) => sum + part.cost_minor, 0),
      beds: fed.get(line) ?? [],
    }));
    for (const row of rows) {
      const exact = feeding.reduce((sum, { total_minor, beds }) => {
        const wants = (of: (bedId: string) => boolean) => beds.reduce((all, bed) => all + (of(bed.bedId) ? bed.weight : 0), 0);
        return sum + (total_minor * wants((bedId) => bedId === row.id)) / wants(() => true);
      }, 0);
      expect(Math.abs(row.lineParts_minor - exact)).toBeLessThan(2);
    }
    const bearing = rows.filter((row) => row.lineParts_minor !== 0);
    expect(bearing.length).toBeGreaterThan(2);
    for (const row of bearing) {
      const working = await api.costs.explain({ seasonId, by: 'bed', id: row.id });
      expect(working.result.value).toBe(row.margin_minor);
      expect(working.parts?.reduce((sum, part) => sum + part.result.value, 0)).toBe(row.lineParts_minor);
    }
  });

  test('each part’s cost has its working, and the parts of a line add up to its charge', async () => {
    const { api } = program;
    const parts = await api.costs.lineParts({ seasonId });
    expect(parts.length).toBeGreaterThan(3);
    expect(parts.reduce((sum, part) => sum + part.cost_minor, 0)).toBe(sumOf('line-parts'));
    for (const part of parts) {
      const { result } = await api.costs.explainLinePart({ seasonId, linePartId: part.linePartId });
      expect(Math.abs(result.value - part.cost_minor)).toBeLessThan(1);
    }
    await expect(api.costs.explainLinePart({ seasonId, linePartId: 'gone' })).rejects.toThrow('no longer there');
  });

  test('that came out costs no longer; an entry in error goes with its cost, and what it took lies in stock again', async () => {
    const { api } = program;
    const before = sumOf('line-parts');
    await counted('hw-battery', 1, 36_500);
    const { linePartId } = await api.waterLines.addPart({
      lineId: await lineId(),
      materialId: 'hw-battery',
      amount: 1,
      installedDate: '2026-06-01',
      life_years: 1,
    });
    await api.waterLines.endPart({ linePartId, date: '2026-06-11', reason: 'dead' });
    expect(sumOf('line-parts') - before).toBe(1000);
    await expect(api.waterLines.endPart({ linePartId, date: '2026-06-12', reason: 'dead' })).rejects.toThrow('no longer there');
    await api.waterLines.removePart({ linePartId });
    expect(sumOf('line-parts')).toBe(before);
    expect((await api.stock.list()).find((row) => row.materialId === 'hw-battery')?.onHand).toBe(1);
    await api.undo.undo();
    expect(sumOf('line-parts') - before).toBe(1000);
    expect((await api.stock.list()).find((row) => row.materialId === 'hw-battery')?.onHand).toBe(0);
  });
});

test('a part of a bed out of stock is paid for over its life and is no input besides', async () => {
  const { api } = program;
  const site = await api.beds.site();
  const bed = (await api.beds.list())[0];
  if (bed === undefined) throw new Error('expected beds');
  const part = (await api.beds.one({ bedId: bed.bedId })).parts.find((each) => each.removedDate === null);
  if (part === undefined || site.blocks.length === 0) throw new Error('expected a part');
  const inputs = sumOf('inputs');
  await counted(part.materialId, part.amount, 500);
  await api.beds.replacePart({
    partId: part.partId,
    date: '2026-11-01',
    reason: 'rotten',
    amount: part.amount,
    price_minor: null,
    life_years: 10,
  });
  expect(sumOf('inputs')).toBe(inputs);
  await expectToAddUp();
});

describe('what was bought and used', () => {
  test.each([
    ['pack-box', 'packing'],
    ['tray-128', 'inputs'],
    ['hw-cover', 'inputs'],
  ] as const)('%s reaches Costs as %s at its landed cost', async (materialId, kind) => {
    await counted(materialId, (await onHand(materialId)) + 10, 200);
    const before = sumOf(kind);
    const { cost_minor } = await program.api.stock.use({ materialId, date: '2026-12-30', amount: 10, reason: 'set out' });
    expect(cost_minor).toBeGreaterThan(0);
    expect(sumOf(kind) - before).toBe(cost_minor);
    await expectToAddUp();
  });

  test('starts used on a planting stand in its row', async () => {
    const { api } = program;
    const planting = seasonLedger(program.farm.db, seasonId).plantings[0];
    if (planting === undefined) throw new Error('expected plantings');
    const { materialId } = await api.materials.add({
      name: 'Starts of the test',
      kind: 'start',
      baseUnit: 'count',
      cropId: planting.cropId,
    });
    await counted(materialId, 40, 25);
    const costOf = async () =>
      (await api.costs.view({ seasonId, by: 'planting' })).rows.find((row) => row.id === planting.plantingId)?.direct_minor ?? 0;
    const before = await costOf();
    await api.stock.use({ materialId, date: '2026-04-20', amount: 40, plantingId: planting.plantingId });
    expect((await costOf()) - before).toBe(1000);
  });

  const onHand = async (materialId: string): Promise<number> =>
    (await program.api.stock.list()).find((row) => row.materialId === materialId)?.onHand ?? 0;
});
