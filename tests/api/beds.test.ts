import { eq } from 'drizzle-orm';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { siteDownload } from '../../api/beds/site-download.ts';
import { ctxOf } from '../../api/procedure.ts';
import { bedFill, bedPart } from '../../db/schema/beds.ts';
import { material } from '../../db/schema/materials.ts';
import { stockMove } from '../../db/schema/stock.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
beforeAll(() => {
  t = aProgram({ beds: 24, years: 1 });
});
afterAll(() => t.end());

const bedCalled = async (code: string) => {
  const found = (await t.api.beds.list()).find((row) => row.code === code);
  if (found === undefined) throw new Error(`no bed ${code}`);
  return found;
};
const newBlock = { code: '', name: '' };
const faultsOf = async (act: Promise<unknown>): Promise<unknown> => {
  try {
    await act;
  } catch (error) {
    return (error as { cause?: { faults?: unknown } }).cause?.faults ?? String(error);
  }
  return 'was accepted';
};

test('every bed of the sample has its figures', async () => {
  const rows = await t.api.beds.list();
  expect(rows).toHaveLength(24);
  for (const row of rows) {
    expect(row.fault).toBeNull();
    expect(row.area_m2).toBeGreaterThan(0);
    expect(row.wet_kg).toBeGreaterThan(row.fill_L === null ? 0 : 0.3 * row.fill_L);
  }
  const bag = rows.find((row) => row.watering === 'basin');
  // 0.9144 m basin round a 0.8 m bag, water 5 cm deep, worked by hand
  expect(bag?.water_L).toBeCloseTo((Math.PI / 4) * (0.9144 ** 2 - 0.8 ** 2) * 0.05 * 1000, 6);
});

test('the workings of a bed end in its figures', async () => {
  const { bedId } = await bedCalled('A-01');
  const one = await t.api.beds.one({ bedId });
  expect(one.workings?.area.result.value).toBe(one.figures?.area_m2);
  expect(one.workings?.volume.result.value).toBe(one.figures?.fill_L);
  expect(one.workings?.load?.result.value).toBe(one.figures?.load_kg_per_m2);
  for (const [at, layer] of (one.figures?.layers ?? []).entries())
    expect(one.workings?.layers[at]?.result.value).toBeCloseTo(layer.loose_L, 9);
  expect(one.layers.reduce((sum, layer) => sum + layer.settled_L, 0)).toBeCloseTo(one.figures?.fill_L ?? 0, 6);
  expect(one.parts.every((part) => part.dueDate > part.installedDate)).toBe(true);
});

describe('building', () => {
  const forty = {
    designId: 'design-frame',
    block: { blockId: null, newBlock: { code: 'F', name: 'New ground' } },
    firstCode: 'F-01',
    count: 40,
    perRow: 10,
    endPath_m: 0.5,
    sidePath_m: 0.6,
    x_m: 60,
    y_m: 0,
    turn_deg: 0,
    builtDate: '2026-11-25',
  };
  test('forty beds at once are one step of undo', async () => {
    const { bedIds } = await t.api.beds.build(forty);
    expect(bedIds).toHaveLength(40);
    expect(await t.api.beds.list()).toHaveLength(64);
    expect((await bedCalled('F-40')).y_m).toBeCloseTo(0.6 + 3 * 1.8, 9);
    const needs = (await t.api.beds.needs()).filter((need) => bedIds.includes(need.bedId));
    expect(needs).toHaveLength(120);
    expect(
      needs.every((need) => need.kind === 'first-fill' && Math.abs(need.fromStock_L + need.wanted_L - need.loose_L) < 1e-9),
    ).toBe(true);
    expect((await t.api.undo.undo()).note).toBe('Build 40 beds from F-01');
    expect(await t.api.beds.list()).toHaveLength(24);
    expect(t.farm.db.select().from(bedPart).where(eq(bedPart.installedDate, '2026-11-25')).all()).toHaveLength(0);
  });
  test('a block that is there already and a count of none are told at their fields', async () => {
    expect(
      await faultsOf(t.api.beds.build({ ...forty, block: { blockId: null, newBlock: { code: 'A', name: '' } } })),
    ).toMatchObject([{ path: 'newBlock.code', code: 'in-use' }]);
    await expect(t.api.beds.build({ ...forty, count: 0 })).rejects.toThrow(/at least one bed/);
  });
  test('a duplicate takes the next free code and the parts of its design', async () => {
    const { bedId } = await bedCalled('A-01');
    const { bedIds } = await t.api.beds.duplicate({ bedIds: [bedId], dx_m: 0, dy_m: -3, builtDate: '2026-11-25' });
    const copy = (await t.api.beds.list()).find((row) => row.bedId === bedIds[0]);
    expect(copy?.code).toBe('A-07');
    expect((await t.api.beds.one({ bedId: bedIds[0] ?? '' })).parts).toHaveLength(4);
    await t.api.undo.undo();
  });
});

describe('changing', () => {
  test('a bed’s own measure stands over its design’s, and goes again when it is the same', async () => {
    const before = await bedCalled('A-02');
    await t.api.beds.setMany({ edits: [{ bedId: before.bedId, revision: before.revision, values: { length_m: 3 } }] });
    const longer = await bedCalled('A-02');
    expect(longer.area_m2).toBeCloseTo(3.6, 9);
    await t.api.beds.setMany({ edits: [{ bedId: before.bedId, revision: longer.revision, values: { length_m: 2.4 } }] });
    expect((await t.api.beds.one({ bedId: before.bedId })).hasOwnMeasures).toBe(false);
  });
  test('a fill above the wall is refused at its field and nothing is written', async () => {
    const before = await bedCalled('A-02');
    const faults = await faultsOf(
      t.api.beds.setMany({ edits: [{ bedId: before.bedId, revision: before.revision, values: { fillDepth_m: 0.5 } }] }),
    );
    expect(faults).toMatchObject([{ path: 'fillDepth_m' }]);
    expect((await bedCalled('A-02')).fillDepth_m).toBe(0.25);
  });
  test('a code in use is refused', async () => {
    const before = await bedCalled('A-02');
    expect(
      await faultsOf(
        t.api.beds.setMany({ edits: [{ bedId: before.bedId, revision: before.revision, values: { code: 'A-01' } }] }),
      ),
    ).toMatchObject([{ path: 'code', code: 'in-use' }]);
  });
  test('beds are moved, split and measured', async () => {
    const { bedId } = await bedCalled('A-03');
    await t.api.beds.move({ places: [{ bedId, x_m: 12, y_m: 7, turn_deg: 30 }] });
    expect(await bedCalled('A-03')).toMatchObject({ x_m: 12, y_m: 7, turn_deg: 30 });
    await t.api.beds.split({
      bedId,
      shares: [
        { name: 'west', to: 0.4 },
        { name: 'east', to: 1 },
      ],
    });
    expect((await t.api.beds.one({ bedId })).shares).toMatchObject([
      { name: 'west', fromShare: 0, toShare: 0.4 },
      { name: 'east', toShare: 1 },
    ]);
    expect(await faultsOf(t.api.beds.split({ bedId, shares: [{ name: 'west', to: 0.4 }] }))).toMatchObject([
      { code: 'does-not-sum' },
    ]);
    await t.api.beds.measure({ bedIds: [bedId], date: '2026-11-20', drop_m: 0.03, note: '' });
    const need = (await t.api.beds.one({ bedId })).needs[0];
    // 2.4 x 1.2 m sunk by 3 cm, compost on top that settles by 0.3 (common practice, no source)
    expect(need).toMatchObject({ kind: 'top-up', basis: 'measured' });
    expect(need?.loose_L).toBeCloseTo((2.4 * 1.2 * 0.03 * 1000) / 0.7, 6);
    expect(need?.working?.result.value).toBe(need?.loose_L);
  });
  test('recording a fill takes stock first and ends the need', async () => {
    const { bedId } = await bedCalled('A-03');
    const compost = 'compost-yard';
    t.farm.change('Stock', () =>
      t.farm.db
        .insert(stockMove)
        .values({ id: 'm1', materialId: compost, date: '2026-11-01', kind: 'correction', amount: 50 })
        .run(),
    );
    const stock = t.farm.db.select().from(stockMove).where(eq(stockMove.materialId, compost)).all();
    const had = stock.reduce((sum, move) => sum + move.amount, 0);
    const need = (await t.api.beds.one({ bedId })).needs[0];
    await t.api.beds.recordFill({ bedIds: [bedId], date: '2026-11-25' });
    const after = t.farm.db.select().from(stockMove).where(eq(stockMove.materialId, compost)).all();
    expect(had - after.reduce((sum, move) => sum + move.amount, 0)).toBeCloseTo(Math.min(had, need?.loose_L ?? 0), 6);
    expect((await t.api.beds.one({ bedId })).needs).toEqual([]);
  });
  test('what a fill takes from stock costs the average of what was paid, on the fill and in the ledger', async () => {
    const { bedId } = await bedCalled('A-05');
    const need = (await t.api.beds.one({ bedId })).needs[0];
    if (need === undefined) throw new Error('A-05 wants nothing');
    const { materialId } = need;
    const stock = () => t.farm.db.select().from(stockMove).where(eq(stockMove.materialId, materialId)).all();
    // takes the books to nothing, then buys twice: 400 L for 20.00 and 400 L for 60.00 are 0.10 a litre
    const had = stock().reduce((sum, move) => sum + move.amount, 0);
    const bought = (id: string, value_minor: number) =>
      ({ id, materialId, date: '2026-11-27', kind: 'purchase', amount: 400, value_minor }) as const;
    t.farm.change('Stock', () => {
      t.farm.db
        .insert(stockMove)
        .values([
          { id: 'all-out', materialId, date: '2026-11-26', kind: 'correction', amount: -had, flagged: true },
          bought('first', 2000),
          bought('second', 6000),
        ])
        .run();
    });
    const taken = Math.min(800, need.loose_L);
    await t.api.beds.recordFill({ bedIds: [bedId], date: '2026-11-28' });
    const move = stock().find((each) => each.bedId === bedId && each.date === '2026-11-28');
    expect(move?.amount).toBeCloseTo(-taken, 6);
    expect(move?.value_minor).toBe(-Math.round(taken * 10));
    const fills = t.farm.db.select().from(bedFill).where(eq(bedFill.bedId, bedId)).all();
    expect(fills.find((fill) => fill.date === '2026-11-28')?.cost_minor).toBe(Math.round(taken * 10));
  });
  test('a replaced part keeps its history', async () => {
    const { bedId } = await bedCalled('A-04');
    const before = (await t.api.beds.one({ bedId })).parts;
    const old = before[0];
    await t.api.beds.replacePart({
      partId: old?.partId ?? '',
      date: '2026-11-25',
      reason: 'rotted',
      amount: 2,
      price_minor: 1500,
      life_years: 8,
    });
    const parts = (await t.api.beds.one({ bedId })).parts;
    expect(parts).toHaveLength(before.length + 1);
    expect(parts.find((part) => part.partId === old?.partId)).toMatchObject({ removedDate: '2026-11-25', reason: 'rotted' });
  });
});

describe('designs', () => {
  test('beds that do not follow keep the design as it was', async () => {
    const one = await t.api.designs.one({ designId: 'design-frame' });
    const [staying, following] = one.beds;
    await t.api.designs.set({ ...one, values: { ...one.values, depth_m: 0.4, fillDepth_m: 0.35 }, stay: [staying?.bedId ?? ''] });
    const rows = await t.api.beds.list();
    expect(rows.find((row) => row.bedId === staying?.bedId)).toMatchObject({ depth_m: 0.28 });
    expect(rows.find((row) => row.bedId === following?.bedId)).toMatchObject({ depth_m: 0.4, fillDepth_m: 0.35 });
    expect((await t.api.designs.list()).some((row) => row.name.includes('as before 2026-11-25'))).toBe(true);
    await t.api.undo.undo();
  });
  test('layers that do not sum and a bag wider than its basin are told at their fields', async () => {
    const frame = await t.api.designs.one({ designId: 'design-frame' });
    const layers = frame.layers.filter((layer) => layer.amountKind !== 'rest');
    expect(await faultsOf(t.api.designs.set({ ...frame, layers, stay: [] }))).toMatchObject([{ code: 'does-not-sum' }]);
    const bag = await t.api.designs.one({ designId: 'design-bag' });
    expect(
      await faultsOf(t.api.designs.set({ ...bag, values: { ...bag.values, basinLength_m: 0.7, basinWidth_m: 0.7 }, stay: [] })),
    ).toMatchObject([{ path: 'basinLength_m', code: 'too-wide' }]);
    const trough = await t.api.designs.one({ designId: 'design-trough' });
    expect(
      await faultsOf(t.api.designs.set({ ...trough, values: { ...trough.values, reservoirVoid_share: 0 }, stay: [] })),
    ).toMatchObject([{ path: 'reservoirVoid_share' }]);
  });
  test('a new design can be built from at once', async () => {
    const one = await t.api.designs.one({ designId: 'design-frame' });
    const { designId } = await t.api.designs.add({
      ...one,
      values: { ...one.values, name: 'Hexagon, low', outline: 'hexagon', width_m: 1.5, length_m: 1.5 },
    });
    expect((await t.api.designs.list()).find((row) => row.designId === designId)?.area_m2).toBeCloseTo(0.8660254 * 2.25, 6);
    expect(await faultsOf(t.api.designs.add({ ...one, values: { ...one.values, name: 'Hexagon, low' } }))).toMatchObject([
      { path: 'name' },
    ]);
  });
});

describe('GeoJSON', () => {
  test('what was written is read again at the same places', async () => {
    const file = await siteDownload(ctxOf(t.door), {});
    const before = await t.api.beds.list();
    const text = String(file.body)
      .replaceAll(/"code":"([A-F]-\d+)"/g, '"code":"X$1"')
      .replaceAll(/"code": "([A-F]-\d+)"/g, '"code": "X$1"');
    const site = await t.api.beds.checkGeoJson({ text, firstCode: 'G-01' });
    expect(site.faults).toEqual([]);
    expect(site.outline_m).toHaveLength(4);
    expect(site.beds).toHaveLength(before.length);
    const first = before[0];
    const same = site.beds.find((bed) => bed.code === `X${first?.code}`);
    expect(Math.hypot((same?.x_m ?? 0) - (first?.x_m ?? 0), (same?.y_m ?? 0) - (first?.y_m ?? 0))).toBeLessThan(0.02);
    expect(same?.area_m2).toBeCloseTo(first?.area_m2 ?? 0, 0);
    const made = await t.api.beds.importGeoJson({
      text,
      firstCode: 'G-01',
      designId: 'design-strip',
      block: { blockId: null, newBlock: { code: 'G', name: '' } },
      builtDate: '2026-11-25',
    });
    expect(made.beds).toBe(before.length);
    expect((await bedCalled(`X${first?.code}`)).outline.shape).toBe('polygon');
    await t.api.undo.undo();
  });
  test('each feature that is no bed is told by its number, and nothing is written', async () => {
    const ring = [
      [-122.3, 47.6],
      [-122.2999, 47.6001],
      [-122.2999, 47.6],
      [-122.3, 47.6001],
      [-122.3, 47.6],
    ];
    const point = { type: 'Feature', geometry: { type: 'Point', coordinates: [-122.3, 47.6] }, properties: {} };
    const bowTie = { type: 'Feature', geometry: { type: 'Polygon', coordinates: [ring] }, properties: {} };
    const text = JSON.stringify({ type: 'FeatureCollection', features: [point, bowTie, { type: 'Thing' }] });
    const site = await t.api.beds.checkGeoJson({ text, firstCode: 'G-01' });
    expect(site.faults.map((fault) => fault.feature)).toEqual([1, 2, 3]);
    expect(site.faults[1]?.message).toMatch(/crosses itself/);
    const block = { blockId: 'block-a', newBlock };
    expect(
      await faultsOf(
        t.api.beds.importGeoJson({ text, firstCode: 'G-01', designId: 'design-strip', block, builtDate: '2026-11-25' }),
      ),
    ).toHaveLength(3);
    expect(await faultsOf(t.api.beds.checkGeoJson({ text: 'x', firstCode: 'G-01' }))).toMatchObject([
      { path: 'text', code: 'not-json' },
    ]);
  });
});

test('a bed taken down gives its soil to stock, once, and can be taken into use again', async () => {
  const bed = await bedCalled('E-01');
  const { lines } = await t.api.beds.dismantleYield({ bedId: bed.bedId, lossShare: 0.1 });
  expect(lines.map((line) => line.materialId)).toEqual(['wood-core-rotted', 'soil-own-loose']);
  await t.api.beds.dismantle({ bedId: bed.bedId, date: '2026-11-25', because: 'sunk in', lines });
  expect((await t.api.beds.list()).some((row) => row.code === 'E-01')).toBe(false);
  expect((await t.api.beds.retired()).map((row) => row.code)).toEqual(['E-01']);
  const moves = t.farm.db.select().from(stockMove).where(eq(stockMove.bedId, bed.bedId)).all();
  expect(moves.map((move) => move.amount)).toEqual(lines.map((line) => line.loose_L));
  expect(t.farm.db.select().from(bedFill).where(eq(bedFill.kind, 'taken-out')).all()).toHaveLength(2);
  await t.api.beds.restore({ bedId: bed.bedId });
  expect(await bedCalled('E-01')).toMatchObject({ retiredDate: null });
  expect(await faultsOf(t.api.beds.retire({ bedIds: [bed.bedId], date: '2020-01-01', because: 'x' }))).toMatchObject([
    { path: 'date', code: 'too-early' },
  ]);
});

test('the whole farm is the sum of its blocks, and cards name whole quarters of a bucket', async () => {
  const whole = await t.api.beds.wholeFarm();
  expect(whole.blocks.reduce((sum, block) => sum + block.area_m2, 0)).toBeCloseTo(whole.all.area_m2, 6);
  expect(whole.blocks.reduce((sum, block) => sum + block.beds, 0)).toBe(whole.all.beds);
  expect(whole.due.map((row) => row.year)).toEqual(whole.due.map((row) => row.year).toSorted());
  const { bedId } = await bedCalled('A-01');
  const cards = await t.api.beds.cards({ bedIds: [bedId], what: 'first-fill' });
  expect(cards.cards[0]?.lines).toHaveLength(3);
  for (const line of cards.cards[0]?.lines ?? []) expect(line.buckets * 4).toBe(Math.round(line.buckets * 4));
});

test('a bed whose material has no known density is listed without its weight', async () => {
  t.farm.change('Density', () =>
    t.farm.db.update(material).set({ dryDensity_kg_per_m3: null }).where(eq(material.id, 'mix-raised-bed')).run(),
  );
  expect(await bedCalled('A-01')).toMatchObject({ wet_kg: null, fault: null });
  await t.api.undo.undo();
});
