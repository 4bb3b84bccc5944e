import { earningView } from '../../api/costs/earning-view.ts';
import { seasonLedger } from '../../api/costs/season-ledger.ts';
import { importFacts } from '../../api/harvest/import-facts.ts';
import { readHarvestCsv } from '../../api/harvest/read-harvest-csv.ts';
import { loadMilpSolver } from '../../api/jobs/milp/highs.ts';
import { forgetDerived } from '../../db/file/derived.ts';
import { newId } from '../../db/file/new-id.ts';
import { insertAll } from '../../db/repositories/insert-all.ts';
import { harvest, saleLine } from '../../db/schema/harvests.ts';
import { randomStream } from '../../planner/costs/random-stream.ts';
import { leastCost } from '../../planner/orders/least-cost.ts';
import type { PurchaseProblem } from '../../planner/orders/purchase-problem.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';
import type { Bench } from './bench.ts';

const HARVEST_LINES = 200_000;
const IMPORT_LINES = 100_000;

/** 1,000 beds, 10 seasons with harvests, their lines doubled up until there are 200,000. */
function bigFarm(): TestProgram {
  const program = aProgram({ beds: 1000, years: 10 });
  const { db } = program.farm;
  program.farm.unrecorded(() => {
    const lines = db.select().from(harvest).all();
    const sold = db.select().from(saleLine).all();
    const copies = Math.ceil(HARVEST_LINES / lines.length);
    for (let copy = 1; copy < copies; copy += 1) {
      insertAll(db, harvest, lines.map((line) => ({ ...line, id: newId() })).slice(0, HARVEST_LINES - copy * lines.length));
      insertAll(db, saleLine, sold.map((line) => ({ ...line, id: newId() })).slice(0, HARVEST_LINES - copy * sold.length));
    }
  });
  return program;
}

function importText(program: TestProgram): { readonly text: string; readonly facts: ReturnType<typeof importFacts> } {
  const facts = importFacts(program.farm.db, '2026-11-25');
  const open = facts.plantings.filter((planting) => planting.beds.length === 1);
  const rows = Array.from({ length: IMPORT_LINES }, (_, at) => {
    const planting = open[at % open.length];
    return planting === undefined
      ? ''
      : `${planting.cleared ?? planting.clear},${planting.beds[0]?.code},"${planting.crop}",${1 + (at % 9)},${planting.yieldUnit},5`;
  });
  return { text: ['date,bed,crop,amount,unit,minutes', ...rows].join('\r\n'), facts };
}

/** 80 needs, 6 suppliers, three packages each. Invented prices. */
function eightyNeeds(): PurchaseProblem {
  const next = randomStream(80);
  const whole = (least: number, most: number): number => least + Math.floor(next() * (most - least + 1));
  return {
    needs: Array.from({ length: 80 }, (_, at) => ({
      id: `n${at}`,
      amount: whole(5, 400),
      materials: [{ materialId: `m${at}`, ratio: 1 }],
    })),
    stock: [],
    offers: Array.from({ length: 80 * 6 * 3 }, (_, at) => {
      const size = [5, 20, 60][at % 3] ?? 5;
      return {
        id: `o${at}`,
        supplierId: `s${Math.floor(at / 3) % 6}`,
        materialId: `m${Math.floor(at / 18)}`,
        packageAmount: size,
        steps: [{ fromPackages: 1, price_minor: Math.round(size ** 0.85 * whole(80, 140)) }],
      };
    }).filter(() => next() < 0.75),
    suppliers: Array.from({ length: 6 }, (_, at) => ({
      id: `s${at}`,
      deliveryFee_minor: whole(500, 7000),
      freeFrom_minor: whole(20_000, 60_000),
      minimumOrder_minor: 0,
      taxShare: 0,
    })),
    mostSuppliers: null,
  };
}

export const benches: readonly Bench[] = [
  {
    name: 'Costs of a season by bed, nothing kept: 1,000 beds, 10 seasons, 200,000 harvest lines',
    prepare: bigFarm,
    run(program: TestProgram) {
      forgetDerived(program.farm.db);
      return earningView(seasonLedger(program.farm.db, 'season-2026'), 'bed', new Map());
    },
    floor: (program: TestProgram) => program.farm.db.select().from(harvest).limit(20_000).all(),
    target_ms: 300,
    rounds: 7,
  },
  {
    name: 'A harvest file of 100,000 lines read and checked',
    prepare: () => importText(aProgram({ beds: 1000, years: 2 })),
    run: ({ text, facts }: ReturnType<typeof importText>) => readHarvestCsv(text, facts, new Set()),
    floor: ({ text }: ReturnType<typeof importText>) => text.split('\r\n').map((line) => line.split(',')),
    target_ms: 3000,
    rounds: 3,
  },
  {
    name: 'Shopping list of 80 needs at 6 suppliers',
    prepare: async () => ({ problem: eightyNeeds(), solve: await loadMilpSolver() }),
    run: ({ problem, solve }: { problem: PurchaseProblem; solve: Awaited<ReturnType<typeof loadMilpSolver>> }) =>
      leastCost(problem, solve),
    floor: ({ problem }: { problem: PurchaseProblem }) =>
      problem.offers.map((offer) => (offer.steps[0]?.price_minor ?? 0) / offer.packageAmount).toSorted((a, b) => a - b),
    target_ms: 3000,
    rounds: 3,
  },
];
