import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createApp } from '../../api/http/app.ts';
import { run } from '../../api/jobs/orders/least-cost.ts';
import { problemOfSeason } from '../../api/orders/problem-of-season.ts';
import { cautionTexts } from '../../api/words/caution-texts.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { orderBy } from '../../planner/orders/needs.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

const seasonId = 'season-2027';
const voice = { progress: () => undefined, best: () => undefined, shouldStop: () => false };
let program: TestProgram;

beforeEach(() => {
  program = aProgram({ beds: 24, years: 1 });
});
afterEach(() => program.end());

/** The search as its worker does it, then kept as the season's list. */
async function keptList() {
  const { problem } = problemOfSeason(program.farm.db, seasonId, '2026-11-25' as IsoDate, { mostSuppliers: null, inTime: false });
  const found = await run(problem, voice);
  if (found.plan.state !== 'found') throw new Error('expected a list');
  await program.api.orders.keepList({ seasonId, bought: [...found.plan.bought] });
  return { plan: found.plan, lists: await program.api.orders.list({ seasonId }) };
}

describe('needs', () => {
  test('come from beds, parts, mulch, packing, each with its reason, day and what is on hand', async () => {
    const { needs, open } = await program.api.orders.needs({ seasonId });
    const sources = new Set(needs.map((need) => need.source));
    for (const source of ['top-up', 'mulch', 'packing', 'seed']) expect(sources).toContain(source);
    for (const need of needs) {
      expect(need.reason).not.toBe('');
      expect(need.amount).toBeGreaterThan(0);
      expect(need.wanted).toMatch(/^20\d\d-/);
    }
    expect(open).toEqual([]);
  });

  test('name the crops that have no seed among the materials', async () => {
    const retire = (retired: number) =>
      program.farm.sqlite.prepare(`UPDATE material SET retired = ? WHERE id = 'seed-carrot'`).run(retired);
    retire(1);
    const { open } = await program.api.orders.needs({ seasonId });
    retire(0);
    expect(open.map((need) => [need.key, need.lacks])).toEqual([['seed:carrot', 'material']]);
  });

  test('take another amount than the computed one with a reason, keep it through other choices, and go back', async () => {
    const { api } = program;
    const one = async () => {
      const need = (await api.orders.needs({ seasonId })).needs.find((each) => each.source === 'top-up');
      if (need === undefined) throw new Error('expected a top-up');
      return need;
    };
    const { key, materialId, computed } = await one();
    const about = { seasonId, key, materialId };
    await expect(api.orders.setNeedAmount({ ...about, amount: 5, reason: ' ' })).rejects.toThrow('Say why');
    await expect(api.orders.setNeedAmount({ ...about, amount: -5, reason: 'no' })).rejects.toThrow('cannot be negative');
    await api.orders.setNeedAmount({ ...about, amount: 5, reason: 'half of it lies by the gate' });
    expect(await one()).toMatchObject({ amount: 5, computed, changed: true, amountReason: 'half of it lies by the gate' });
    await api.orders.setNeeds({ seasonId, choices: [{ key, materialId, amount: 5, supplierId: null, left: true }] });
    expect(await one()).toMatchObject({ amount: 5, left: true, amountReason: 'half of it lies by the gate' });
    await api.orders.setNeedAmount({ ...about, amount: null, reason: '' });
    expect(await one()).toMatchObject({ amount: computed, changed: false, amountReason: '', left: true });
    await api.undo.undo();
    expect(await one()).toMatchObject({ amount: 5, changed: true });
  });

  test('hold the mix for the trays of each sowing, in the farm’s own choice of mix', async () => {
    const { api } = program;
    const ofMix = async () => (await api.orders.needs({ seasonId })).needs.filter((need) => need.source === 'tray-mix');
    const before = await ofMix();
    expect(before.length).toBeGreaterThan(2);
    expect(new Set(before.map((need) => need.materialId))).toEqual(new Set(['mix-seedling']));
    for (const need of before) {
      expect(need.reason).toMatch(/^Mix for trays: .+ \d+, sown \d{4}-\d{2}-\d{2}$/);
      expect(need.amount).toBeGreaterThan(0);
    }
    const { revision } = await api.farm.get();
    await api.farm.set({ revision, values: { trayMixId: 'mix-peat-potting' } });
    const after = await ofMix();
    expect(after.map((need) => need.materialId)).toEqual(before.map(() => 'mix-peat-potting'));
    expect(after.reduce((sum, need) => sum + need.amount, 0)).toBeCloseTo(
      before.reduce((sum, need) => sum + need.amount, 0),
      9,
    );
  });

  test('can be added by hand, left out and bound to a supplier', async () => {
    await program.api.orders.addNeed({
      seasonId,
      materialId: 'hw-board',
      amount: 12,
      reason: 'new cold frame',
      wantedDate: '2027-03-01',
    });
    const before = (await program.api.orders.needs({ seasonId })).needs;
    const own = before.find((need) => need.source === 'hand');
    expect(own).toMatchObject({ material: 'Larch board 38 x 140 mm', amount: 12, reason: 'new cold frame' });
    // decided about itself, whichever of the two rows the file has first
    for (const amount of [14, 15, 16, 17]) {
      const about = { seasonId, key: own?.key ?? '', materialId: 'hw-board' };
      await program.api.orders.setNeedAmount({ ...about, amount, reason: 'some to spare' });
      const again = (await program.api.orders.needs({ seasonId })).needs.find((need) => need.source === 'hand');
      expect(again).toMatchObject({
        amount,
        computed: 12,
        changed: true,
        amountReason: 'some to spare',
        reason: 'new cold frame',
      });
    }
    const other = before.find((need) => need.source === 'mulch');
    if (other === undefined) throw new Error('expected mulch');
    await program.api.orders.setNeeds({
      seasonId,
      choices: [{ key: other.key, materialId: other.materialId, amount: null, supplierId: 'supplier-soil', left: true }],
    });
    const after = (await program.api.orders.needs({ seasonId })).needs.find((need) => need.key === other.key);
    expect(after).toMatchObject({ left: true, supplierId: 'supplier-soil' });
    const { problem } = problemOfSeason(program.farm.db, seasonId, '2026-11-25' as IsoDate, {
      mostSuppliers: null,
      inTime: false,
    });
    const mulch = problem.needs.find((need) => need.materials[0]?.materialId === other.materialId);
    const all = before.filter((need) => need.materialId === other.materialId).reduce((sum, need) => sum + need.amount, 0);
    expect(mulch?.amount ?? 0).toBeCloseTo(all - other.amount, 6);
    await program.api.orders.removeNeed({ needChoiceId: own?.key ?? '' });
    expect((await program.api.orders.needs({ seasonId })).needs.some((need) => need.source === 'hand')).toBe(false);
    expect(program.farm.sqlite.prepare('SELECT count(*) AS n FROM need_choice WHERE need_key = ?').get(own?.key)).toEqual({
      n: 0,
    });
  });
});

describe('the shopping list', () => {
  test('costs what the search said, line by line with fees and tax', async () => {
    const { plan, lists } = await keptList();
    expect(lists.reduce((sum, list) => sum + list.total_minor, 0)).toBe(plan.bill.total_minor);
    for (const list of lists) {
      expect(list.total_minor).toBe(
        list.rows.reduce((sum, row) => sum + row.total_minor, 0) + list.delivery_minor + list.tax_minor,
      );
      expect(list.load.trips).toBeGreaterThan(0);
      for (const row of list.rows) expect(row.reason).not.toBe('');
    }
  });

  test('ticked, ordered, received in parts and sent back: purchase, stock and value follow to the cent', async () => {
    const { lists } = await keptList();
    const list = lists[0];
    const line = list?.rows[0];
    if (list === undefined || line === undefined) throw new Error('expected a list');
    await expect(program.api.orders.order({ seasonId, supplierId: list.supplierId, date: '2026-11-25' })).rejects.toThrow(
      'Tick the lines',
    );
    for (const row of list.rows) await program.api.orders.tick({ shoppingLineId: row.shoppingLineId, ticked: true });
    const { purchaseId } = await program.api.orders.order({ seasonId, supplierId: list.supplierId, date: '2026-11-25' });
    const value = async () => (await program.api.stock.list()).reduce((sum, row) => sum + row.value_minor, 0);
    const before = await value();
    const bought = (await program.api.orders.purchases()).filter((row) => row.purchaseId === purchaseId);
    const lines = bought.map((row) => ({ lineId: row.lineId, packages: row.packages }));
    await expect(
      program.api.orders.receive({
        purchaseId,
        date: '2026-11-25',
        lines: lines.map((each) => ({ ...each, packages: each.packages + 1 })),
      }),
    ).rejects.toThrow('too many');
    const got = await program.api.orders.receive({ purchaseId, date: '2026-11-25', lines });
    expect(got.value_minor).toBe(list.total_minor);
    expect(await value()).toBe(before + list.total_minor);
    expect((await program.api.orders.purchases()).find((row) => row.purchaseId === purchaseId)?.state).toBe('here');
    const first = bought[0];
    if (first === undefined) throw new Error('expected a line');
    const { refund_minor } = await program.api.orders.sendBack({
      purchaseId,
      lineId: first.lineId,
      packages: 1,
      date: '2026-11-25',
      reason: 'torn',
    });
    expect(refund_minor).toBe(first.price_minor);
    await expect(
      program.api.orders.sendBack({
        purchaseId,
        lineId: first.lineId,
        packages: first.packages,
        date: '2026-11-25',
        reason: 'torn',
      }),
    ).rejects.toThrow('can go back');
    const spent = await program.api.orders.budget({ seasonId: 'season-2026' });
    expect(spent.reduce((sum, row) => sum + row.actual_minor + row.committed_minor, 0)).toBeGreaterThan(0);
  });

  test('a line and its purchase name the cautions of their material and of a heavy package', async () => {
    const { lists } = await keptList();
    const rows = lists.flatMap((list) => list.rows);
    const heavy = rows.filter((row) => row.weight_kg !== null && row.weight_kg > 16 * row.packages);
    expect(heavy.length).toBeGreaterThan(0);
    for (const row of heavy) expect(row.cautions).toContain('saturated-weight-lifting');
    const texts = cautionTexts(program.program.places.resources, ['fertilizer-storage', 'raw-manure', 'fertilizer-storage']);
    expect(texts.map((each) => each.title)).toEqual(['Raw manure', 'Keeping fertilizers']);
    const bought = (await program.api.orders.purchases()).filter((line) => line.baseUnit === 'L' && line.packageAmount > 700);
    expect(bought.length).toBeGreaterThan(0);
    for (const line of bought) expect(line.cautions).toContain('saturated-weight-lifting');
  });
  test('can be fetched as CSV and as PDF', async () => {
    await keptList();
    const app = createApp({ program: program.program, pages: program.folder });
    const csv = await app.fetch(new Request(`http://x/export/shopping-list.csv?season=${seasonId}`));
    expect(csv.status).toBe(200);
    expect(await csv.text()).toContain('supplier,material,package,packages,price,total,for');
    const pdf = await app.fetch(new Request(`http://x/export/shopping-list.pdf?season=${seasonId}`));
    expect(pdf.headers.get('content-type')).toBe('application/pdf');
    expect(new TextDecoder().decode((await pdf.arrayBuffer()).slice(0, 5))).toBe('%PDF-');
  });
});

describe('ordering', () => {
  const tickAll = async (supplierId: string, lines: readonly string[]) => {
    for (const shoppingLineId of lines) await program.api.orders.tick({ shoppingLineId, ticked: true });
    return program.api.orders.order({ seasonId, supplierId, date: '2026-11-25' });
  };

  test('a part of a list is billed as what it is, with a delivery of its own', async () => {
    const { lists } = await keptList();
    const list = lists.find((each) => each.rows.length > 1);
    const [row] = list?.rows ?? [];
    if (list === undefined || row === undefined) throw new Error('expected a list of lines');
    const supplier = (await program.api.suppliers.list()).find((each) => each.id === list.supplierId);
    const { purchaseId } = await tickAll(list.supplierId, [row.shoppingLineId]);
    const line = (await program.api.orders.purchases()).find((each) => each.purchaseId === purchaseId);
    const free = supplier?.freeDeliveryFrom_minor ?? Infinity;
    expect(line?.delivery_minor).toBe(row.total_minor >= free ? 0 : supplier?.deliveryFee_minor);
    expect(line?.tax_minor).toBe(Math.round(row.total_minor * (supplier?.tax_share ?? 0)));
  });

  test('counts for the season of its list before the year begins, as committed, then by what came as spent', async () => {
    const { api } = program;
    const sums = async () => {
      const rows = await api.orders.budget({ seasonId });
      const of = (read: (row: (typeof rows)[number]) => number) => rows.reduce((sum, row) => sum + read(row), 0);
      return { committed: of((row) => row.committed_minor), actual: of((row) => row.actual_minor) };
    };
    expect(await sums()).toEqual({ committed: 0, actual: 0 });
    const { lists } = await keptList();
    const list = lists[0];
    if (list === undefined) throw new Error('expected a list');
    const { purchaseId } = await tickAll(
      list.supplierId,
      list.rows.map((row) => row.shoppingLineId),
    );
    expect(await sums()).toEqual({ committed: list.total_minor, actual: 0 });
    const before = (await api.orders.budget({ seasonId })).reduce((sum, row) => sum + (row.months[0]?.committed_minor ?? 0), 0);
    expect(before).toBe(list.total_minor);
    const bought = (await api.orders.purchases()).filter((row) => row.purchaseId === purchaseId);
    const first = bought[0];
    if (first === undefined) throw new Error('expected a line');
    await api.orders.receive({
      purchaseId,
      date: '2026-11-25',
      lines: [{ lineId: first.lineId, packages: first.packages, lot: 'L-77', expiresDate: '2026-12-20' }],
    });
    const charges = first.delivery_minor + first.tax_minor;
    expect(await sums()).toEqual({
      committed: list.total_minor - first.total_minor - charges,
      actual: first.total_minor + charges,
    });
    const lot = (await api.stock.lots()).find((each) => each.code === 'L-77');
    expect(lot).toMatchObject({ materialId: first.materialId, left: first.amount, standing: 'soon' });
    const others = await api.orders.budget({ seasonId: 'season-2026' });
    expect(others.every((row) => row.committed_minor === 0)).toBe(true);
  });

  test('a category’s budget holds those of its months', async () => {
    const { api } = program;
    const category = 'seed and starts';
    await api.orders.setBudgets({ seasonId, budgets: [{ category, month: 3, amount_minor: 4000 }] });
    await api.orders.setBudgets({ seasonId, budgets: [{ category, amount_minor: 10_000 }] });
    const row = async () => (await api.orders.budget({ seasonId })).find((each) => each.category === category);
    expect(await row()).toMatchObject({ budget_minor: 10_000 });
    expect((await row())?.months[3]?.budget_minor).toBe(4000);
    await expect(api.orders.setBudgets({ seasonId, budgets: [{ category, amount_minor: 3999 }] })).rejects.toThrow(
      'set aside in its months',
    );
  });

  test('budgets of all months are set in one step, or none of them', async () => {
    const { api } = program;
    const category = 'hardware';
    const months = Array.from({ length: 12 }, (_, at) => ({ category, month: at + 1, amount_minor: 1000 * (at + 1) }));
    const row = async () => (await api.orders.budget({ seasonId })).find((each) => each.category === category);
    const before = await row();
    await api.orders.setBudgets({ seasonId, budgets: months });
    expect((await row())?.budget_minor).toBe((before?.budget_minor ?? 0) + 78_000);
    await expect(
      api.orders.setBudgets({
        seasonId,
        budgets: [...months.map((each) => ({ ...each, amount_minor: 1 })), { category, amount_minor: 5 }],
      }),
    ).rejects.toThrow('set aside in its months');
    expect((await row())?.budget_minor).toBe((before?.budget_minor ?? 0) + 78_000);
    expect((await api.undo.state()).undo).toContain('12 budgets');
    await api.undo.undo();
    expect(await row()).toEqual(before);
  });

  test('what is wanted after the end of a season is no need of it', async () => {
    const { api } = program;
    const [design] = await api.designs.list();
    const plan = (wantedDate: string) => api.beds.addPlan({ designId: design?.designId ?? '', count: 1, wantedDate, note: '' });
    const planned = async (of: string) =>
      (await api.orders.needs({ seasonId: of })).needs.filter((need) => need.source === 'new-bed').length;
    await plan('2028-03-01');
    expect(await planned(seasonId)).toBe(0);
    await plan('2027-03-01');
    expect(await planned(seasonId)).toBeGreaterThan(0);
    const doses = async () => (await api.orders.needs({ seasonId })).needs.filter((need) => need.source === 'amendment').length;
    const dose = (date: string) =>
      program.farm.sqlite
        .prepare(
          `UPDATE application SET state = 'planned', date = ? WHERE id = (SELECT min(application_id) FROM application_bed)`,
        )
        .run(date);
    dose('2027-04-01');
    expect(await doses()).toBeGreaterThan(0);
    dose('2028-04-01');
    expect(await doses()).toBe(0);
  });

  test('each supplier is to be ordered from in time for the first thing wanted of it', async () => {
    const { lists } = await keptList();
    const { needs } = await program.api.orders.needs({ seasonId });
    const leads = new Map((await program.api.suppliers.list()).map((each) => [each.id, each.lead_days]));
    for (const list of lists) {
      const wanted = needs
        .filter((need) => list.rows.some((row) => row.materialId === need.materialId))
        .map((need) => need.wanted)
        .sort();
      expect(list.orderBy).toBe(orderBy(wanted[0] as IsoDate, leads.get(list.supplierId) ?? 0));
    }
  });

  test('the same package of the same supplier is not offered twice', async () => {
    const offer = (await program.api.suppliers.offers()).find((each) => !each.retired);
    if (offer === undefined) throw new Error('expected an offer');
    const { supplierId, materialId, name } = offer;
    const again = { supplierId, materialId, name: ` ${name.toUpperCase()} `, packageAmount: 1, price_minor: 100 };
    await expect(program.api.suppliers.addOffer(again)).rejects.toThrow('already');
    await expect(program.api.suppliers.addOffer({ ...again, name: 'Sack', packageAmount: 0 })).rejects.toThrow(
      'more than nothing',
    );
  });
});

describe('stock', () => {
  test('a count writes the difference with who and why; the balance is the sum of its movements', async () => {
    const materialId = 'straw';
    await program.api.stock.count({ date: '2026-11-25', who: 'AN', counts: [{ materialId, counted: 123 }] });
    const row = (await program.api.stock.list()).find((each) => each.materialId === materialId);
    expect(row?.onHand).toBeCloseTo(123, 9);
    const moves = await program.api.stock.moves({ materialId });
    expect(moves[0]).toMatchObject({ kind: 'correction', who: 'AN', flagged: true });
    expect(moves.reduce((sum, move) => sum + move.amount, 0)).toBeCloseTo(123, 9);
    expect((await program.api.stock.explain({ materialId, unit: 'L' })).result.value).toBe(row?.unitCost_minor);
  });

  test('a use of more than there is is asked about, and flagged when it is known', async () => {
    const use = { materialId: 'straw', date: '2026-11-25', amount: 1_000_000 };
    await expect(program.api.stock.use(use)).rejects.toThrow('are in the books');
    await program.api.stock.use({ ...use, flagged: true });
    expect((await program.api.stock.list()).find((row) => row.materialId === 'straw')?.below).toBe(true);
  });

  test('a material cannot stand in for itself; an allowed stand-in reaches the search', async () => {
    await expect(program.api.stock.addStandIn({ materialId: 'straw', insteadId: 'straw' })).rejects.toThrow('itself');
    await program.api.stock.addStandIn({ materialId: 'straw', insteadId: 'wood-chips', ratio: 0.8 });
    const { problem } = problemOfSeason(program.farm.db, seasonId, '2026-11-25' as IsoDate, {
      mostSuppliers: null,
      inTime: false,
    });
    expect(problem.needs.find((need) => need.materials[0]?.materialId === 'straw')?.materials).toContainEqual({
      materialId: 'wood-chips',
      ratio: 0.8,
    });
  });
});

describe('needs from the rest of the farm', () => {
  test('beds that are to be built want their parts, fill and mulch by their day, until they are built', async () => {
    const { api } = program;
    const design = (await api.designs.list()).find((each) => each.beds > 0 && each.kind === 'framed');
    if (design === undefined) throw new Error('expected a framed design');
    const { designId } = design;
    await api.beds.addPlan({ designId, count: 6, wantedDate: '2027-03-01' });
    const ofPlan = async () => (await api.orders.needs({ seasonId })).needs.filter((need) => need.source === 'new-bed');
    const six = await ofPlan();
    const whole = await api.designs.one({ designId });
    for (const part of whole.parts) {
      const wanted = whole.parts
        .filter((each) => each.materialId === part.materialId)
        .reduce((sum, each) => sum + each.amount, 0);
      const need = six.find((each) => each.key.includes(':part:') && each.materialId === part.materialId);
      expect(need?.amount).toBeCloseTo(6 * wanted, 9);
      expect(need).toMatchObject({ wanted: '2027-03-01', reason: `To build 6 beds of ${design.name}` });
    }
    const fill_L = six.filter((each) => each.key.includes(':fill:')).reduce((sum, each) => sum + each.amount, 0);
    expect(fill_L).toBeGreaterThan(0);
    expect(fill_L).toBeLessThanOrEqual(6 * (design.loose_L ?? 0) + 1e-6);
    const site = await api.beds.site();
    const built = await api.beds.build({
      designId,
      block: { blockId: site.blocks[0]?.blockId ?? null, newBlock: { code: '', name: '' } },
      firstCode: 'N-1',
      count: 4,
      perRow: 4,
      endPath_m: 0.6,
      sidePath_m: 0.6,
      x_m: 0,
      y_m: 0,
      turn_deg: 0,
      builtDate: '2026-11-25',
    });
    expect(built.offPlan).toBe(4);
    const two = await ofPlan();
    for (const need of two) expect(need.amount).toBeCloseTo((six.find((each) => each.key === need.key)?.amount ?? 0) / 3, 6);
    await expect(api.beds.addPlan({ designId, count: 0, wantedDate: '2027-03-01' })).rejects.toThrow('at least one');
    await expect(api.beds.addPlan({ designId, count: 1, wantedDate: '1 March' })).rejects.toThrow('2026-03-09');
  });

  test('parts of beds that are built come out of stock at their cost, as far as they lie there', async () => {
    const { api } = program;
    const design = (await api.designs.list()).find((each) => each.kind === 'framed');
    if (design === undefined) throw new Error('expected a framed design');
    const whole = await api.designs.one({ designId: design.designId });
    const board = whole.parts.find((each) => each.materialId === 'hw-board');
    if (board === undefined) throw new Error('expected boards');
    await api.stock.count({
      date: '2026-11-20',
      who: 'AN',
      counts: [{ materialId: 'hw-board', counted: 1.5 * board.amount, unitCost_minor: 100 }],
    });
    const site = await api.beds.site();
    const { bedIds } = await api.beds.build({
      designId: design.designId,
      block: { blockId: site.blocks[0]?.blockId ?? null, newBlock: { code: '', name: '' } },
      firstCode: 'N-1',
      count: 2,
      perRow: 2,
      endPath_m: 0.6,
      sidePath_m: 0.6,
      x_m: 0,
      y_m: 0,
      turn_deg: 0,
      builtDate: '2026-11-25',
    });
    const parts = await Promise.all(
      bedIds.map(async (bedId) => (await api.beds.one({ bedId })).parts.find((each) => each.materialId === 'hw-board')),
    );
    expect(parts[0]?.price_minor).toBe(Math.round(100 * board.amount));
    expect(parts[1]?.price_minor).toBeGreaterThan(Math.round(100 * board.amount));
    const row = (await api.stock.list()).find((each) => each.materialId === 'hw-board');
    expect(row?.onHand).toBeCloseTo(0, 9);
    expect(row?.value_minor).toBe(0);
  });

  test('a worn part of a water line is a need with its reason and day, until it is replaced', async () => {
    const { api } = program;
    const lineId = (await api.waterLines.list()).lines[0]?.lineId ?? '';
    const ofLines = async () => (await api.orders.needs({ seasonId })).needs.filter((need) => need.source === 'line-part');
    const before = (await ofLines()).length;
    const { linePartId } = await api.waterLines.addPart({
      lineId,
      materialId: 'hw-battery',
      amount: 1,
      installedDate: '2020-03-01',
      life_years: 7,
    });
    const due = (await ofLines()).find((need) => need.key === `line-part:${linePartId}`);
    expect(due).toMatchObject({ materialId: 'hw-battery', amount: 1, wanted: '2027-03-02' });
    expect(due?.reason).toMatch(/^Worn part of .*: Battery, lithium iron phosphate, 500 Wh, due 2027-03-02$/);
    await expect(
      api.waterLines.replacePart({ linePartId, date: '2019-01-01', reason: 'dead', amount: 1, life_years: 8 }),
    ).rejects.toThrow('cannot come out before');
    await api.waterLines.replacePart({ linePartId, date: '2026-11-25', reason: 'dead', amount: 1, life_years: 8 });
    expect(await ofLines()).toHaveLength(before);
    const gone = (await api.waterLines.worn({ lineId })).find((part) => part.linePartId === linePartId);
    expect(gone).toMatchObject({ removedDate: '2026-11-25', reason: 'dead' });
    await expect(
      api.waterLines.addPart({ lineId, materialId: 'hw-battery', amount: 0, installedDate: '2026-01-01', life_years: 8 }),
    ).rejects.toThrow('more than zero');
  });

  test('a fill kept by weight is wanted and taken in kilograms; without a density it is told as open', async () => {
    const { api, farm } = program;
    const { needs } = await api.orders.needs({ seasonId });
    const need = needs.find((each) => each.source === 'top-up');
    if (need === undefined) throw new Error('expected a top-up');
    const set = (density: number | null) =>
      farm.sqlite
        .prepare(`UPDATE material SET base_unit = 'kg', moist_density_kg_per_m3 = ? WHERE id = ?`)
        .run(density, need.materialId);
    set(500);
    const inKg = (await api.orders.needs({ seasonId })).needs.find((each) => each.key === need.key);
    expect(inKg?.amount).toBeCloseTo(need.amount * 0.5, 6);
    await api.stock.count({
      date: '2026-11-20',
      who: 'AN',
      counts: [{ materialId: need.materialId, counted: need.amount * 0.5, unitCost_minor: 10 }],
    });
    const bedId = need.key.split(':')[1] ?? '';
    const wanted = (await api.beds.one({ bedId })).needs.find((each) => each.materialId === need.materialId);
    expect(wanted?.fromStock_L).toBeCloseTo(need.amount, 6);
    expect(wanted?.wanted_L).toBeCloseTo(0, 6);
    await api.beds.recordFill({ bedIds: [bedId], date: '2026-11-25' });
    expect((await api.stock.list()).find((each) => each.materialId === need.materialId)?.onHand).toBeCloseTo(0, 9);
    set(null);
    const other = needs.find((each) => each.source === 'top-up' && each.materialId === need.materialId && each.key !== need.key);
    const { open } = await api.orders.needs({ seasonId });
    expect(open.find((each) => each.key === other?.key)).toMatchObject({ lacks: 'density', unit: 'L' });
  });

  test('fill that never lay in stock stands at the price of the day, and is marked', async () => {
    const { api } = program;
    const need = (await api.orders.needs({ seasonId })).needs.find((each) => each.source === 'top-up');
    if (need === undefined) throw new Error('expected a top-up');
    await api.stock.count({ date: '2026-11-20', who: 'AN', counts: [{ materialId: need.materialId, counted: 0 }] });
    const bedId = need.key.split(':')[1] ?? '';
    const { priced_minor } = await api.beds.recordFill({ bedIds: [bedId], date: '2026-11-25' });
    const offers = (await api.suppliers.offers()).filter((each) => each.materialId === need.materialId && !each.retired);
    const cheapest = Math.min(...offers.map((each) => each.price_minor / each.packageAmount));
    expect(priced_minor).toBe(Math.round(need.amount * cheapest));
    const fill = (await api.beds.one({ bedId })).fills.at(-1);
    expect(fill).toMatchObject({ cost_minor: priced_minor, priced_minor });
  });

  test('what is set out is bought as starts, sets or tubers of its crop; without such a material it is told as open', async () => {
    const { api, farm } = program;
    const plantings = farm.sqlite.prepare(`SELECT id, crop_id, plants FROM planting WHERE season_id = ? AND state = 'planned'`);
    const first = plantings.get(seasonId) as { id: string; crop_id: string; plants: number };
    farm.sqlite.prepare(`UPDATE planting SET method = 'set' WHERE id = ?`).run(first.id);
    farm.sqlite.prepare(`UPDATE material SET retired = 1 WHERE id = ?`).run(`seed-${first.crop_id}`);
    const { open } = await api.orders.needs({ seasonId });
    expect(open.find((each) => each.key === `start:${first.crop_id}`)?.lacks).toBe('material');
    const { materialId } = await api.materials.add({
      name: 'Bought starts',
      kind: 'start',
      baseUnit: 'count',
      cropId: first.crop_id,
    });
    const { needs } = await api.orders.needs({ seasonId });
    expect(needs.find((each) => each.key === `start:${first.id}`)).toMatchObject({
      materialId,
      source: 'start',
      amount: Math.ceil(first.plants * 1.05 - 1e-9),
    });
  });
});
