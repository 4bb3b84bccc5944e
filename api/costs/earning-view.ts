import { type EarningRow, earningRows, NOBODY } from '../../planner/costs/earning-rows.ts';
import { groundOf } from '../../planner/costs/ground.ts';
import { perMeasure } from '../../planner/costs/per-measure.ts';
import { postingsByOutlet } from '../../planner/costs/postings-by-outlet.ts';
import type { SeasonLedger } from './season-ledger.ts';

export const groupings = ['bed', 'block', 'design', 'crop', 'planting', 'outlet'] as const;
export type GroupBy = (typeof groupings)[number];

/** A row of the costs table: income, costs and margins of one group, and what they come to by ground, time and work. */
export type EarningView = EarningRow & {
  readonly name: string;
  readonly detail: string;
  readonly area_m2: number;
  readonly bed_m2_days: number;
  readonly labour_h: number;
  readonly margin_minor_per_m2: number | null;
  readonly margin_minor_per_m2_week: number | null;
  /** Margin with wages added back, for each hour worked. */
  readonly return_minor_per_h: number | null;
  readonly cost_minor_per_kg: number | null;
  /** Some of its costs have no price that anyone knows: they are at least this, its margin at most. */
  readonly atLeast: boolean;
};

const DAYS_PER_WEEK = 7;

type Measures = { area: number; days: number; hours: number };

/** The season's rows by one grouping, and the row of what belongs to nobody, named as such. */
export function earningView(ledger: SeasonLedger, by: GroupBy, outletNames: ReadonlyMap<string, string>): readonly EarningView[] {
  const groupOf = groupsOf(ledger, by);
  const rows =
    by === 'outlet'
      ? outletRows(ledger)
      : earningRows(ledger.postings, ledger.incomes, { of: (bedId, plantingId) => groupOf.of(bedId, plantingId) });
  const measures = measuresOf(ledger, by, groupOf);
  const marked = markedGroups(ledger, by, groupOf);
  const nothing = (id: string): EarningRow => ({ ...noEarning, id });
  return [...rows, ...[...marked].filter((id) => !rows.some((row) => row.id === id)).map(nothing)]
    .map((row): EarningView => {
      const known = measures.get(row.id) ?? { area: 0, days: 0, hours: 0 };
      const label = by === 'outlet' ? { name: outletNames.get(row.id) ?? '', detail: '' } : groupOf.label(row.id);
      return {
        ...row,
        name: row.id === NOBODY ? unassigned[by] : label.name,
        detail: row.id === NOBODY ? '' : label.detail,
        area_m2: known.area,
        bed_m2_days: known.days,
        labour_h: known.hours,
        margin_minor_per_m2: perMeasure(row.margin_minor, known.area),
        margin_minor_per_m2_week: perMeasure(row.margin_minor * DAYS_PER_WEEK, known.days),
        return_minor_per_h: perMeasure(row.margin_minor + row.labour_minor, known.hours),
        cost_minor_per_kg: perMeasure(row.cost_minor, row.sold_kg),
        atLeast: marked.has(row.id),
      };
    })
    .toSorted((a, b) => b.margin_minor - a.margin_minor || a.name.localeCompare(b.name));
}

/** The groups that bear some of what has no price. */
function markedGroups(ledger: SeasonLedger, by: GroupBy, groups: Groups): ReadonlySet<string> {
  const rows =
    by === 'outlet'
      ? earningRows(postingsByOutlet(ledger.marks, ledger.incomes).postings, [], { of: (outletId) => outletId })
      : earningRows(ledger.marks, [], { of: groups.of });
  return new Set(rows.map((row) => row.id));
}

const noEarning = {
  income_minor: 0,
  direct_minor: 0,
  bed_minor: 0,
  water_minor: 0,
  lineParts_minor: 0,
  overhead_minor: 0,
  cost_minor: 0,
  labour_minor: 0,
  contribution_minor: 0,
  margin_minor: 0,
  sold_kg: 0,
};

const unassigned: Readonly<Record<GroupBy, string>> = {
  bed: 'No bed',
  block: 'No block',
  design: 'No design',
  crop: 'Idle ground and nobody’s',
  planting: 'Idle ground and nobody’s',
  outlet: 'Not sold',
};

type Groups = {
  readonly of: (bedId: string | null, plantingId: string | null) => string | null;
  readonly label: (id: string) => { readonly name: string; readonly detail: string };
};

function groupsOf(ledger: SeasonLedger, by: GroupBy): Groups {
  const beds = new Map(ledger.beds.map(({ record }) => [record.bed.id, record]));
  const plantings = new Map(ledger.plantings.map((each) => [each.plantingId, each]));
  const named = (name: string | undefined, detail = '') => ({ name: name ?? '', detail });
  switch (by) {
    case 'bed':
      return {
        of: (bedId) => bedId,
        label: (id) => named(beds.get(id)?.bed.code, beds.get(id)?.design.name),
      };
    case 'block': {
      const blocks = new Map(ledger.beds.map(({ record }) => [record.block.id, record.block]));
      return {
        of: (bedId) => (bedId === null ? null : (beds.get(bedId)?.block.id ?? null)),
        label: (id) => named(blocks.get(id)?.name, blocks.get(id)?.code),
      };
    }
    case 'design': {
      const designs = new Map(ledger.beds.map(({ record }) => [record.design.id, record.design]));
      return {
        of: (bedId) => (bedId === null ? null : (beds.get(bedId)?.design.id ?? null)),
        label: (id) => named(designs.get(id)?.name, designs.get(id)?.kind),
      };
    }
    case 'crop': {
      const crops = new Map(ledger.plantings.map((each) => [each.cropId, each.crop]));
      return {
        of: (_, plantingId) => (plantingId === null ? null : (plantings.get(plantingId)?.cropId ?? null)),
        label: (id) => named(crops.get(id)),
      };
    }
    case 'planting':
    case 'outlet': {
      const codes = Map.groupBy(ledger.stays, (stay) => stay.plantingId);
      return {
        of: (_, plantingId) => plantingId,
        label: (id) => {
          const planting = plantings.get(id);
          const at = (codes.get(id) ?? []).map((stay) => beds.get(stay.bedId)?.bed.code ?? '');
          return named(planting === undefined ? undefined : `${planting.crop} ${planting.number}`, at.join(', '));
        },
      };
    }
  }
}

function outletRows(ledger: SeasonLedger): readonly EarningRow[] {
  const { postings, incomes } = postingsByOutlet(ledger.postings, ledger.incomes);
  return earningRows(postings, incomes, { of: (outletId) => outletId });
}

function measuresOf(ledger: SeasonLedger, by: GroupBy, groups: Groups): ReadonlyMap<string, Measures> {
  const sums = new Map<string, Measures>();
  if (by === 'outlet') return sums;
  const at = (id: string | null): Measures => {
    const key = id ?? NOBODY;
    const known = sums.get(key) ?? { area: 0, days: 0, hours: 0 };
    sums.set(key, known);
    return known;
  };
  const ground = groundOf(ledger.beds, ledger.stays);
  const perBed = by === 'bed' || by === 'block' || by === 'design';
  const areaOfPlanting = new Map<string, number>();
  for (const { bed, uses, whole_m2_days } of ground.values()) {
    if (perBed) {
      const of = at(groups.of(bed.bedId, null));
      of.area += bed.area_m2;
      of.days += whole_m2_days;
    }
    for (const use of uses) {
      areaOfPlanting.set(use.plantingId, (areaOfPlanting.get(use.plantingId) ?? 0) + use.area_m2);
      if (perBed) continue;
      const of = at(groups.of(bed.bedId, use.plantingId));
      of.area += use.area_m2;
      of.days += use.m2_days;
    }
  }
  // hours of a planting over its beds by ground
  for (const { bed, uses } of ground.values())
    for (const use of uses) {
      const whole = areaOfPlanting.get(use.plantingId) ?? 0;
      if (whole > 0)
        at(groups.of(bed.bedId, use.plantingId)).hours += ((ledger.hoursOf.get(use.plantingId) ?? 0) * use.area_m2) / whole;
    }
  return sums;
}
