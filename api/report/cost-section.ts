import type { FarmDb } from '../../db/file/open-farm.ts';
import { outletsOfFarm } from '../../db/repositories/sales.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import { type EarningView, earningView, type GroupBy } from '../costs/earning-view.ts';
import { seasonLedger } from '../costs/season-ledger.ts';
import { unpricedByMaterial } from '../costs/unpriced-costs.ts';
import type { ReportReader } from './report-reader.ts';
import type { Cell, ReportColumn, ReportSection, ReportTable } from './section.ts';

const columns = (head: string): readonly ReportColumn[] => [
  { head, unit: null, name: head.toLowerCase() },
  { head: 'Income', unit: 'minor', name: 'income_minor' },
  { head: 'Direct', unit: 'minor', name: 'direct_minor' },
  { head: 'Bed', unit: 'minor', name: 'bed_minor' },
  { head: 'Water and lines', unit: 'minor', name: 'water_minor' },
  { head: 'Of it parts of lines', unit: 'minor', name: 'line_parts_minor' },
  { head: 'Overhead', unit: 'minor', name: 'overhead_minor' },
  { head: 'Cost', unit: 'minor', name: 'cost_minor' },
  { head: 'Margin', unit: 'minor', name: 'margin_minor' },
  { head: 'Hours', unit: 'h', name: 'labour_h' },
  { head: 'Note', unit: null, name: 'note' },
];

const rowOf = (row: EarningView): readonly Cell[] => [
  row.name,
  row.income_minor,
  row.direct_minor,
  row.bed_minor,
  row.water_minor,
  row.lineParts_minor,
  row.overhead_minor,
  row.cost_minor,
  row.margin_minor,
  row.labour_h,
  row.atLeast ? 'a price is missing' : '',
];

const tableOf = (name: string, title: string, head: string, rows: readonly EarningView[]): ReportTable => ({
  name,
  title,
  columns: columns(head),
  rows: rows.map(rowOf),
});

/** Which beds and which crops paid, in the season of the report or, when that has not begun, the latest that has. */
export function costSection(db: FarmDb, season: SeasonRecord, { money }: ReportReader): ReportSection {
  const ledger = seasonLedger(db, season.id);
  const outlets = new Map(outletsOfFarm(db).map((each) => [each.id, each.name]));
  const view = (by: GroupBy) => earningView(ledger, by, outlets);
  const beds = view('bed');
  const crops = view('crop');
  const unpriced = unpricedByMaterial(db, ledger.unpriced);
  const sum = (of: (row: EarningView) => number) => beds.reduce((all, row) => all + of(row), 0);
  return {
    title: 'Which beds and crops paid',
    says: [
      `Season ${season.name}: income ${money(sum((row) => row.income_minor))}, cost ${money(sum((row) => row.cost_minor))} with wages, parts, fill, water lines and overheads, margin ${money(sum((row) => row.margin_minor))}.`,
      ...(unpriced.length === 0
        ? []
        : [
            `No price is known for ${ledger.unpriced.length} things in it: ${unpriced.map((each) => `${each.material} (${each.things})`).join(', ')}. The cost is at least, the margin at most, what stands here.`,
          ]),
    ],
    charts: [
      {
        title: `Cost of the thirty dearest beds, ${season.name}`,
        unit: 'minor',
        bars: beds
          .toSorted((a, b) => b.cost_minor - a.cost_minor)
          .slice(0, 30)
          .map((row) => ({
            label: row.name,
            parts: [
              { name: 'Direct', value: row.direct_minor },
              { name: 'Bed', value: row.bed_minor },
              { name: 'Water', value: row.water_minor },
              { name: 'Overhead', value: row.overhead_minor },
            ],
          })),
      },
    ],
    tables: [
      tableOf('cost-per-bed', 'Cost and margin by bed', 'Bed', beds),
      tableOf('cost-per-crop', 'Cost and margin by crop', 'Crop', crops),
      {
        name: 'cost-of-line-parts',
        title: 'Parts of the water lines, over their years',
        columns: [
          { head: 'Line', unit: null, name: 'line' },
          { head: 'Part', unit: null, name: 'part' },
          { head: 'In since', unit: null, name: 'installed' },
          { head: 'Life', unit: 'years', name: 'life_years' },
          { head: 'Paid', unit: 'minor', name: 'price_minor' },
          { head: 'Cost of the season', unit: 'minor', name: 'cost_minor' },
          { head: 'Beds that share it', unit: '', name: 'beds' },
        ],
        rows: ledger.lineParts.map((part): readonly Cell[] => [
          part.line,
          part.material,
          part.from,
          part.life_years,
          part.price_minor,
          part.cost_minor,
          ledger.fed.get(part.lineId)?.length ?? 0,
        ]),
      },
    ],
    cautions: ['tax-law-money'],
    sources: [],
  };
}
