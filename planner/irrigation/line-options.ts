import { roundMoney } from '../money.ts';
import { lineParts } from './line-parts.ts';
import { type LinePlan, networkOf, outletLossK, pipedOutlets, zonesOf } from './line-plan.ts';
import { readyLine } from './line-solution.ts';
import { runTime } from './run-time.ts';
import { designValves } from './valve-design.ts';

export type OptionKind = 'as-it-is' | 'wider-main' | 'wider-tees' | 'two-branches' | 'second-pump' | 'two-zones';

/** What the grower pays; null where no price is known, and the option's cost is then unknown too. */
export type PartPrices = {
  readonly tubes: readonly { readonly insideDiameter_m: number; readonly price_minor_per_m: number | null }[];
  readonly tee_minor: number | null;
  readonly pump_minor: number | null;
};

export type LineOption = {
  readonly kind: OptionKind;
  /** Bore of the new main, for a wider main. */
  readonly mainDiameter_m: number | null;
  readonly plan: LinePlan;
  /** Flow at the bed that gets least of its share while its zone runs, valves set. */
  readonly least_L_per_h: number;
  readonly mean_L_per_h: number;
  /** Minutes of all zones, one after the other. */
  readonly programme_min: number;
  readonly unserved: number;
  readonly cost_minor: number | null;
};

export type OptionsInput = {
  readonly plan: LinePlan;
  readonly prices: PartPrices;
  /** Water wanted in one run by outlet. */
  readonly wanted_L: ReadonlyMap<string, number>;
};

/** Runs that carry more than one outlet's water: the main. */
function mainRuns(plan: LinePlan): ReadonlySet<string> {
  const behind = outletsBehind(plan);
  return new Set(plan.runs.filter((run) => (behind.get(run.toNodeId) ?? 0) > 1 || isFirst(plan, run)).map((run) => run.id));
}

const isFirst = (plan: LinePlan, run: LinePlan['runs'][number]): boolean =>
  plan.nodes.some((node) => node.kind === 'source' && node.id === run.fromNodeId);

function outletsBehind(plan: LinePlan): ReadonlyMap<string, number> {
  const parent = new Map(plan.runs.map((run) => [run.toNodeId, run.fromNodeId]));
  const count = new Map<string, number>();
  for (const outlet of pipedOutlets(plan)) {
    let steps = 0;
    for (let node: string | undefined = outlet.nodeId; node !== undefined && steps <= plan.runs.length; node = parent.get(node)) {
      count.set(node, (count.get(node) ?? 0) + 1);
      steps += 1;
    }
  }
  return count;
}

/** What a line with its valves set gives at the beds, zone after zone. */
export function measureOption(
  plan: LinePlan,
  wanted_L: ReadonlyMap<string, number>,
): Pick<LineOption, 'least_L_per_h' | 'mean_L_per_h' | 'programme_min' | 'unserved'> {
  const line = readyLine(networkOf(plan, 'low'));
  const outlets = pipedOutlets(plan);
  const wishes = outlets.map((outlet) => ({ share: outlet.wantShare, openK: outletLossK(outlet, outlet.openK) }));
  let programme_min = 0;
  let unserved = 0;
  const flows: number[] = [];
  for (const zone of zonesOf(plan)) {
    const design = designValves(line, wishes, plan.supply.reserveHead_m, zone.outlets);
    const served = design.settings.filter((setting) => zone.outlets.has(setting.id));
    flows.push(...served.map((setting) => setting.flow_L_per_h));
    const run = runTime(
      served.map((setting) => ({
        id: setting.id,
        flow_L_per_h: setting.flow_L_per_h,
        wanted_L: wanted_L.get(setting.id) ?? 0,
        holds_L: null,
      })),
    );
    programme_min += run.run_min;
    unserved += served.filter((setting) => setting.flow_L_per_h === 0).length;
  }
  const total = flows.reduce((sum, flow) => sum + flow, 0);
  return {
    least_L_per_h: Math.min(...flows),
    mean_L_per_h: flows.length === 0 ? 0 : total / flows.length,
    programme_min,
    unserved,
  };
}

/**
 * Ways to get more water to the beds, each computed on the whole line and with what its parts cost: a wider main, wider
 * tees, two branches, a second pump beside the first, two zones one after the other. Sorted by the programme's length.
 * Common practice, no source.
 * @throws InputError with every fault of the line at its field
 */
export function lineOptions({ plan, prices, wanted_L }: OptionsInput): readonly LineOption[] {
  const option = (
    kind: OptionKind,
    changed: LinePlan,
    cost_minor: number | null,
    mainDiameter_m: number | null = null,
  ): LineOption => ({
    kind,
    mainDiameter_m,
    plan: changed,
    cost_minor,
    ...measureOption(changed, wanted_L),
  });
  const main = mainRuns(plan);
  const mains = plan.runs.filter((run) => main.has(run.id));
  const narrowest_m = Math.min(...mains.map((run) => run.insideDiameter_m));
  const options = [option('as-it-is', plan, 0)];
  for (const tube of prices.tubes) {
    if (tube.insideDiameter_m <= narrowest_m) continue;
    const wider = widerMain(plan, main, tube.insideDiameter_m);
    options.push(option('wider-main', wider, widerCost(mains, wider, tube, prices), tube.insideDiameter_m));
  }
  if (plan.runs.some((run) => run.teeBore_m !== null)) {
    const wider = { ...plan, runs: plan.runs.map((run) => ({ ...run, teeBore_m: null })) };
    options.push(
      option('wider-tees', wider, piecesCost(plan.runs.filter((run) => run.teeBore_m !== null).length, prices.tee_minor)),
    );
  }
  const branched = twoBranches(plan);
  if (branched !== null) {
    const perM = prices.tubes.find((tube) => tube.insideDiameter_m === branched.insideDiameter_m)?.price_minor_per_m ?? null;
    const tee = prices.tee_minor;
    options.push(
      option('two-branches', branched.plan, perM === null || tee === null ? null : roundMoney(perM * branched.length_m) + tee),
    );
  }
  if (plan.pump !== null)
    options.push(option('second-pump', { ...plan, pump: { ...plan.pump, count: plan.pump.count + 1 } }, prices.pump_minor));
  const zoned = twoZones(plan);
  if (zoned !== null) options.push(option('two-zones', zoned, 0));
  return options.sort((one, other) => one.unserved - other.unserved || one.programme_min - other.programme_min);
}

const piecesCost = (pieces: number, each_minor: number | null): number | null =>
  each_minor === null ? null : roundMoney(pieces * each_minor);

/** The main in another bore; tees keep the share of the bore that they leave free. */
function widerMain(plan: LinePlan, main: ReadonlySet<string>, insideDiameter_m: number): LinePlan {
  return {
    ...plan,
    runs: plan.runs.map((run) =>
      main.has(run.id) && run.insideDiameter_m < insideDiameter_m
        ? {
            ...run,
            insideDiameter_m,
            materialId: null,
            teeBore_m: run.teeBore_m === null ? null : (run.teeBore_m * insideDiameter_m) / run.insideDiameter_m,
          }
        : run,
    ),
  };
}

function widerCost(
  mains: LinePlan['runs'],
  wider: LinePlan,
  tube: PartPrices['tubes'][number],
  prices: PartPrices,
): number | null {
  if (tube.price_minor_per_m === null || prices.tee_minor === null) return null;
  const length_m = mains
    .filter((run) => run.insideDiameter_m < tube.insideDiameter_m)
    .reduce((sum, run) => sum + run.length_m, 0);
  const tees = lineParts(wider)
    .filter((part) => part.what === 'tee' && part.size_m === tube.insideDiameter_m)
    .reduce((sum, part) => sum + part.amount, 0);
  return roundMoney(tube.price_minor_per_m * length_m) + roundMoney(prices.tee_minor * tees);
}

/**
 * A second tube of the same bore beside the first, from the first place after the source to the place that has nearest to
 * half of the outlets behind it; the run that fed that place is taken out. Null where the line has no such place.
 */
function twoBranches(
  plan: LinePlan,
): { readonly plan: LinePlan; readonly length_m: number; readonly insideDiameter_m: number } | null {
  const source = plan.nodes.find((node) => node.kind === 'source');
  const first = plan.runs.find((run) => run.fromNodeId === source?.id);
  if (first === undefined) return null;
  const behind = outletsBehind(plan);
  const half = pipedOutlets(plan).length / 2;
  const feeding = new Map(plan.runs.map((run) => [run.toNodeId, run]));
  const candidates = plan.runs.filter(
    (run) => run.fromNodeId !== first.fromNodeId && run.fromNodeId !== first.toNodeId && (behind.get(run.toNodeId) ?? 0) > 1,
  );
  const cut = candidates.reduce<LinePlan['runs'][number] | null>((best, run) => {
    const off = (each: LinePlan['runs'][number]): number => Math.abs((behind.get(each.toNodeId) ?? 0) - half);
    return best === null || off(run) < off(best) ? run : best;
  }, null);
  if (cut === null) return null;
  let length_m = 0;
  for (
    let run: LinePlan['runs'][number] | undefined = cut;
    run !== undefined && run.id !== first.id;
    run = feeding.get(run.fromNodeId)
  )
    length_m += run.length_m;
  const branch = { ...cut, id: `${cut.id}-branch`, fromNodeId: first.toNodeId, length_m };
  return {
    plan: { ...plan, runs: plan.runs.map((run) => (run.id === cut.id ? branch : run)) },
    length_m,
    insideDiameter_m: cut.insideDiameter_m,
  };
}

/** Near half and far half by the order of the outlets, run one after the other. Null with fewer than two outlets. */
function twoZones(plan: LinePlan): LinePlan | null {
  const outlets = pipedOutlets(plan);
  if (outlets.length < 2 || zonesOf(plan).length > 1) return null;
  const far = new Set(outlets.slice(Math.ceil(outlets.length / 2)).map((outlet) => outlet.nodeId));
  return { ...plan, nodes: plan.nodes.map((node) => (far.has(node.id) ? { ...node, zone: 2 } : { ...node, zone: 1 })) };
}
