import { type api, client } from '../../client/api.ts';
import type { Reader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, derived, money, quantity, text } from '../../table/column.ts';
import { Figure } from '../../working/figure.tsx';

export type EarningRow = OutputOf<typeof api.costs.view>['rows'][number];
export type GroupBy = OutputOf<typeof api.costs.view>['by'];

/** Columns of what each group earned. The margin opens its working. */
export function earningColumns(seasonId: string, by: GroupBy, nameTitle: string, reader: Reader): readonly Column<EarningRow>[] {
  return [
    text('name', nameTitle, { width: 190 }),
    text('detail', by === 'planting' ? 'Beds' : 'About', { width: 150, shown: by !== 'crop' && by !== 'outlet' }),
    money('income_minor', 'Income', { total: 'sum', width: 115 }),
    money('direct_minor', 'Direct cost', { total: 'sum', width: 115, hint: 'Labour, inputs, seed, packing' }),
    money('contribution_minor', 'Contribution', { total: 'sum', width: 120, hint: 'Income less direct cost' }),
    money('bed_minor', 'Parts and fill', { total: 'sum', width: 120, hint: 'Over their years' }),
    money('water_minor', 'Water, power', { total: 'sum', width: 120, shown: false }),
    money('overhead_minor', 'Overhead', { total: 'sum', width: 110, hint: 'Shared by each cost’s own key' }),
    money('cost_minor', 'All costs', { total: 'sum', width: 115, shown: false }),
    money('margin_minor', 'Margin', {
      total: 'sum',
      width: 125,
      hint: 'Income less all costs',
      draw: (row) => (
        <Figure
          value={row.margin_minor}
          unit="minor"
          name={`Margin of ${row.name}`}
          explain={() => client.costs.explain.query({ seasonId, by, id: row.id })}
        />
      ),
    }),
    derived('money', 'marginByGround', `Margin a ${reader.sign('m2')}`, (row) => byUnit(row.margin_minor_per_m2, 'm2', reader), {
      width: 115,
      shown: by !== 'outlet',
    }),
    derived(
      'money',
      'marginByWeek',
      `A ${reader.sign('m2')} and week`,
      (row) => byUnit(row.margin_minor_per_m2_week, 'm2', reader),
      {
        width: 125,
        shown: false,
        hint: 'Margin for each unit of ground and week of bed',
      },
    ),
    money('return_minor_per_h', 'For an hour', {
      width: 115,
      hint: 'Margin with wages added back, for each hour worked',
      shown: by !== 'outlet',
    }),
    derived('money', 'costByWeight', `Cost of a ${reader.sign('kg')}`, (row) => byUnit(row.cost_minor_per_kg, 'kg', reader), {
      width: 110,
      shown: false,
      hint: 'All costs over the weight sold',
    }),
    quantity('area_m2', 'Ground', { width: 95, total: 'sum', shown: by !== 'outlet' }),
    quantity('labour_h', 'Hours', { width: 85, total: 'sum', digits: 2, shown: by !== 'outlet' }),
    quantity('sold_kg', 'Sold', { width: 95, digits: 3, shown: false, total: 'sum' }),
  ];
}

/** Money for one canonical unit as money for one of the reader's units. */
const byUnit = (minor: number | null, unit: string, reader: Reader): number | null =>
  minor === null ? null : Math.round(minor / reader.scale(1, unit));
