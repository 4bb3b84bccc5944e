import type { Reader } from '../../../planner/units/reader.ts';
import { type api, client } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { type Column, derived, flag, money, quantity, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';

export type EarningRow = OutputOf<typeof api.costs.view>['rows'][number];
export type GroupBy = OutputOf<typeof api.costs.view>['by'];

/** Columns of what each group earned. The margin opens its working. */
export function earningColumns(
  seasonId: string,
  by: GroupBy,
  nameTitle: string,
  reader: Reader,
  isMissing: boolean,
): readonly Column<EarningRow>[] {
  return [
    text('name', nameTitle, { width: 190 }),
    text('detail', by === 'planting' ? say('Beds') : say('About'), { width: 150, shown: by !== 'crop' && by !== 'outlet' }),
    ...(isMissing
      ? [
          flag<EarningRow>('atLeast', say('Price missing'), {
            width: 110,
            hint: say('Its costs are at least these, its margin at most this'),
          }),
        ]
      : []),
    money('income_minor', say('Income'), { total: 'sum', width: 115 }),
    money('direct_minor', say('Direct cost'), { total: 'sum', width: 115, hint: say('Labour, inputs, seed, packing') }),
    money('contribution_minor', say('Contribution'), { total: 'sum', width: 120, hint: say('Income less direct cost') }),
    money('bed_minor', say('Parts and fill'), { total: 'sum', width: 120, hint: say('Over their years') }),
    money('water_minor', say('Water, lines'), {
      total: 'sum',
      width: 115,
      hint: say('Water, power, and the parts of the lines over their years'),
    }),
    money('lineParts_minor', say('Of it line parts'), { total: 'sum', width: 120, shown: false }),
    money('overhead_minor', say('Overhead'), { total: 'sum', width: 110, hint: say('Shared by each cost’s own key') }),
    money('cost_minor', say('All costs'), { total: 'sum', width: 115, shown: false }),
    money('margin_minor', say('Margin'), {
      total: 'sum',
      width: 125,
      hint: say('Income less all costs'),
      draw: (row) => (
        <Figure
          value={row.margin_minor}
          unit="minor"
          name={say('Margin of {row}', { row: row.name })}
          explain={() => client.costs.explain.query({ seasonId, by, id: row.id })}
        />
      ),
    }),
    derived(
      'money',
      'marginByGround',
      say('Margin a {sign}', { sign: reader.sign('m2') }),
      (row) => byUnit(row.margin_minor_per_m2, 'm2', reader),
      {
        width: 115,
        shown: by !== 'outlet',
      },
    ),
    derived(
      'money',
      'marginByWeek',
      say('A {sign} and week', { sign: reader.sign('m2') }),
      (row) => byUnit(row.margin_minor_per_m2_week, 'm2', reader),
      {
        width: 125,
        shown: false,
        hint: say('Margin for each unit of ground and week of bed'),
      },
    ),
    money('return_minor_per_h', say('For an hour'), {
      width: 115,
      hint: say('Margin with wages added back, for each hour worked'),
      shown: by !== 'outlet',
    }),
    derived(
      'money',
      'costByWeight',
      say('Cost of a {sign}', { sign: reader.sign('kg') }),
      (row) => byUnit(row.cost_minor_per_kg, 'kg', reader),
      {
        width: 110,
        shown: false,
        hint: say('All costs over the weight sold'),
      },
    ),
    quantity('area_m2', say('Ground'), { width: 95, total: 'sum', shown: by !== 'outlet' }),
    quantity('labour_h', say('Hours'), { width: 85, total: 'sum', digits: 2, shown: by !== 'outlet' }),
    quantity('sold_kg', say('Sold'), { width: 95, digits: 3, shown: false, total: 'sum' }),
  ];
}

/** Money for one canonical unit as money for one of the reader's units. */
const byUnit = (minor: number | null, unit: string, reader: Reader): number | null =>
  minor === null ? null : Math.round(minor / reader.scale(1, unit));
