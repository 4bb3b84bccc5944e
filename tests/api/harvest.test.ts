import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { demand } from '../../db/schema/plantings.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

const NOW = '2026-07-09T18:00:00';
const DAY = '2026-07-09';
let program: TestProgram;

beforeEach(() => {
  program = aProgram({ beds: 24, years: 1 }, () => NOW);
});
afterEach(() => program.end());

const standing = async () => {
  const choices = await program.api.harvest.choices({ date: DAY });
  const planting = choices.plantings.find((each) => each.yieldUnit === 'kg' && each.record !== null);
  if (planting === undefined) throw new Error('the sample farm has something to harvest in July');
  return { choices, planting };
};

const entryOf = (plantingId: string, amount: number) => ({ date: DAY, plantingId, amount, unit: 'kg' });

describe('harvest entry', () => {
  test('writes the harvest, its lot, its time and its price from the outlet’s list', async () => {
    const { planting } = await standing();
    const added = await program.api.harvest.add({
      ...entryOf(planting.plantingId, 3.5),
      outletId: 'outlet-stall',
      labour_min: 12,
    });
    expect(added.lot).toMatch(/^[A-HJ-NP-Z0-9]{1,5}-2026190-/);
    const log = await program.api.harvest.log({ from: DAY, to: DAY });
    const row = log.rows.find((each) => each.harvestId === added.harvestId);
    expect(row).toMatchObject({ amount: 3.5, unit: 'kg', weight_kg: 3.5, labour_min: 12, lot: added.lot });
    const prices = await program.api.sales.prices();
    const listed = prices.find((each) => each.outletId === 'outlet-stall' && each.cropId === planting.cropId);
    expect(row?.price_minor).toBe(listed?.price_minor);
    const hours = await program.api.labour.log({ from: DAY, to: DAY });
    expect(hours.some((each) => each.task === 'harvest' && each.labour_min === 12)).toBe(true);
    expect((await program.api.harvest.choices({ date: DAY })).last?.harvestId).toBe(added.harvestId);
  });

  test('a second lot of the day has another code', async () => {
    const { planting } = await standing();
    const first = await program.api.harvest.add(entryOf(planting.plantingId, 1));
    const second = await program.api.harvest.add(entryOf(planting.plantingId, 1));
    expect(second.lot).not.toBe(first.lot);
  });

  test('a harvest before the planting, and in a unit of unknown weight, is refused at its field', async () => {
    const { planting } = await standing();
    await expect(program.api.harvest.add({ ...entryOf(planting.plantingId, 1), date: '2026-01-02' })).rejects.toThrow(
      'nothing can be harvested before',
    );
    await expect(program.api.harvest.add({ ...entryOf(planting.plantingId, 1), unit: 'crate' })).rejects.toThrow(
      'The weight of one crate is not known',
    );
  });

  test('the weight of a unit, once given, is kept for the crop', async () => {
    const { planting } = await standing();
    await program.api.harvest.add({ ...entryOf(planting.plantingId, 2), unit: 'crate', unit_kg: 9 });
    await program.api.harvest.add({ ...entryOf(planting.plantingId, 1), unit: 'crate' });
    const log = await program.api.harvest.log({ from: DAY, to: DAY });
    expect(log.rows.filter((row) => row.unit === 'crate').map((row) => row.weight_kg)).toEqual([9, 18]);
  });

  test('ten times the record is asked about, and taken when confirmed', async () => {
    const { planting } = await standing();
    const many = (planting.record ?? 0) * 11;
    await expect(program.api.harvest.add(entryOf(planting.plantingId, many))).rejects.toThrow('more than ten times');
    await program.api.harvest.add({ ...entryOf(planting.plantingId, many), confirmed: true });
  });

  test('is one step of undo', async () => {
    const { planting } = await standing();
    const before = (await program.api.harvest.log({ from: DAY, to: DAY })).all;
    await program.api.harvest.add({ ...entryOf(planting.plantingId, 1), labour_min: 5 });
    await program.api.undo.undo();
    expect((await program.api.harvest.log({ from: DAY, to: DAY })).all).toBe(before);
  });

  test('an edit keeps weight and time with it; a stale one is refused', async () => {
    const { planting } = await standing();
    const { harvestId } = await program.api.harvest.add(entryOf(planting.plantingId, 2));
    await program.api.harvest.setMany({ edits: [{ harvestId, revision: 1, values: { amount: 4, labour_min: 30 } }] });
    const row = (await program.api.harvest.log({ from: DAY, to: DAY })).rows.find((each) => each.harvestId === harvestId);
    expect(row).toMatchObject({ amount: 4, weight_kg: 4, labour_min: 30, revision: 2 });
    await expect(program.api.harvest.setMany({ edits: [{ harvestId, revision: 1, values: { amount: 5 } }] })).rejects.toThrow(
      'another window',
    );
  });
});

describe('a harvest file', () => {
  const csvOf = (rows: readonly string[]) => ['date,bed,crop,amount,unit,minutes', ...rows].join('\r\n');

  test('is taken in whole', async () => {
    const { planting } = await standing();
    const bed = planting.beds[0]?.code ?? '';
    const text = csvOf([`${DAY},${bed},"${planting.crop}",2.5,kg,10`, `${DAY},${bed},"${planting.crop}",1,kg,`]);
    expect(await program.api.harvest.importAll({ text })).toEqual({ added: 2 });
    const rows = (await program.api.harvest.log({ from: DAY, to: DAY })).rows.filter(
      (row) => row.plantingId === planting.plantingId,
    );
    expect(new Set(rows.map((row) => row.lot)).size).toBe(rows.length);
  });

  test('with one bad row is refused whole, each fault with its line and column', async () => {
    const { planting } = await standing();
    const bed = planting.beds[0]?.code ?? '';
    const before = (await program.api.harvest.log({ from: DAY, to: DAY })).all;
    const text = csvOf([
      `${DAY},${bed},"${planting.crop}",2,kg,`,
      `${DAY},${bed},"${planting.crop}","1,5",kg,`,
      `2026-02-30,${bed},"${planting.crop}",1,kg,`,
      `${DAY},Z-99,Nonesuch,1,kg,`,
    ]);
    await expect(program.api.harvest.importAll({ text })).rejects.toThrow('Line 3, amount');
    await expect(program.api.harvest.importAll({ text })).rejects.toThrow('Line 4, date');
    await expect(program.api.harvest.importAll({ text })).rejects.toThrow('No planting of "Nonesuch"');
    expect((await program.api.harvest.log({ from: DAY, to: DAY })).all).toBe(before);
  });
});

describe('sales', () => {
  test('a standing order counts what was sold to its outlet in the week and names the lots for the rest', async () => {
    const { planting } = await standing();
    program.farm.change('Order', () =>
      program.farm.db
        .insert(demand)
        .values({
          id: 'order',
          seasonId: 'season-2026',
          outletId: 'outlet-boxes',
          cropId: planting.cropId,
          kind: 'standing',
          fromDate: '2026-07-01',
          toDate: '2026-07-31',
          amountPerWeek: 6,
          unit: 'kg',
          price_minor: 450,
        })
        .run(),
    );
    const order = async (date: string) => (await program.api.sales.standing({ date })).find((each) => each.demandId === 'order');
    const before = await order(DAY);
    await program.api.harvest.add(entryOf(planting.plantingId, 5));
    const found = await order(DAY);
    expect((found?.onHand ?? 0) - (before?.onHand ?? 0)).toBeCloseTo(5, 9);
    expect(found?.open).toBeCloseTo(6 - (before?.filled ?? 0), 9);
    const lot = found?.lots.find((each) => each.date === DAY && each.harvested === 5);
    if (lot === undefined) throw new Error('expected the new lot among those that fit');
    await program.api.sales.add({
      date: DAY,
      outletId: 'outlet-boxes',
      lines: [{ lotId: lot.lotId, plantingId: null, amount: 4, unit: 'kg', price_minor: 450 }],
    });
    const after = await order(DAY);
    expect(after?.filled).toBeCloseTo((before?.filled ?? 0) + 4, 9);
    expect(after?.lots.find((each) => each.lotId === lot.lotId)?.left).toBeCloseTo(1, 9);
    // the next week begins with nothing sold; after the order's last day it is gone
    expect((await order('2026-07-13'))?.filled).toBe(0);
    expect(await order('2026-08-01')).toBeUndefined();
  });
  test('a price from a day on is added once and changed in the list', async () => {
    const { planting } = await standing();
    const line = { outletId: 'outlet-stall', cropId: planting.cropId, unit: 'crate', grade: 'first', fromDate: DAY };
    const { priceId } = await program.api.sales.addPrice({ ...line, price_minor: 1200 });
    await expect(program.api.sales.addPrice({ ...line, price_minor: 1300 })).rejects.toThrow('has a price for it from that day');
    await program.api.sales.setPrices({ edits: [{ priceId, price_minor: 1350 }] });
    expect((await program.api.sales.prices()).find((each) => each.priceId === priceId)?.price_minor).toBe(1350);
  });
  test('more than the lot holds is refused at its line; a part leaves the rest', async () => {
    const { planting } = await standing();
    await program.api.harvest.add(entryOf(planting.plantingId, 5));
    const lot = (await program.api.harvest.lots({ date: DAY })).find((each) => each.date === DAY && each.harvested === 5);
    if (lot === undefined) throw new Error('expected the new lot');
    const line = { lotId: lot.lotId, plantingId: null, unit: 'kg', price_minor: 600 };
    const sale = { date: DAY, outletId: 'outlet-stall' };
    await expect(program.api.sales.add({ ...sale, lines: [{ ...line, amount: 6 }] })).rejects.toThrow('has 5 kg left');
    expect((await program.api.sales.add({ ...sale, lines: [{ ...line, amount: 2.345 }] })).paid_minor).toBe(1407);
    await program.api.sales.add({ ...sale, lines: [{ ...line, amount: 1, outcome: 'spoiled' }] });
    const after = (await program.api.harvest.lots({ date: DAY })).find((each) => each.lotId === lot.lotId);
    expect(after?.left).toBeCloseTo(1.655, 9);
    await expect(program.api.sales.add({ ...sale, date: '2026-07-08', lines: [{ ...line, amount: 1 }] })).rejects.toThrow(
      'cannot be sold before',
    );
  });

  test('a harvest that was sold stays', async () => {
    const log = await program.api.harvest.log({ from: '2026-01-01', to: DAY });
    const sold = await program.api.sales.log({ from: '2026-01-01', to: '2026-12-31' });
    const row = log.rows.find((each) => sold.some((line) => line.lot === each.lot));
    if (row === undefined) throw new Error('the sample farm sold something');
    await expect(program.api.harvest.remove({ harvestIds: [row.harvestId] })).rejects.toThrow('was sold');
  });
});

describe('hours', () => {
  test('standard times stand in only for what nobody logged, and are marked', async () => {
    const seasonId = 'season-2026';
    const { added } = await program.api.labour.standard({ seasonId });
    const again = await program.api.labour.standard({ seasonId });
    expect(again.added).toBe(added);
    const logged = (await program.api.labour.log({ from: '2026-01-01', to: '2026-12-31' })).filter((row) => row.standard);
    expect(logged).toHaveLength(added);
  });
});

test('yields stand against the plan by ground, and the farm learns from them', async () => {
  const rows = await program.api.harvest.yields({ seasonId: 'season-2026' });
  const row = rows.find((each) => each.harvested > 0 && each.perM2 !== null);
  if (row === undefined) throw new Error('the sample farm harvested something');
  const working = await program.api.harvest.explainYield({ seasonId: 'season-2026', plantingId: row.plantingId });
  expect(working.result.value).toBe(row.perM2);
  expect(await program.api.harvest.learn({ seasonId: 'season-2026', cropIds: [row.cropId] })).toEqual({ learned: 1 });
});
