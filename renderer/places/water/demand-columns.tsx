import { client } from '../../client/api.ts';
import { type Column, count, date, quantity, share, text } from '../../table/column.ts';
import { Figure } from '../../working/figure.tsx';
import type { BedDemand } from './demand-data.ts';

export const bedDemandId = (row: BedDemand): string => row.bedId;

/** Beds with their need; the peak opens its working, which is fetched when asked for. */
export const bedDemandColumns = (seasonId: string | null): readonly Column<BedDemand>[] => [
  text('code', 'Bed', { width: 80 }),
  text('supply', 'Supply', { width: 110 }),
  text('crops', 'Crops', { width: 220 }),
  quantity('peak_L_per_day', 'Most in a day', {
    width: 170,
    hint: 'Water the bed uses on its thirstiest day if it never runs short',
    draw: (row) => (
      <Figure
        value={row.peak_L_per_day}
        unit="L_per_day"
        name={`Most in a day, ${row.code}`}
        explain={() =>
          client.waterDemand.explainDay.query({
            seasonId,
            year: Number(row.peakDate.slice(0, 4)),
            bedId: row.bedId,
            date: row.peakDate,
          })
        }
      />
    ),
  }),
  date('peakDate', 'On', { width: 110 }),
  quantity('need_L', 'To give in the year', {
    width: 190,
    total: 'sum',
    digits: 2,
    hint: 'Kept full while a crop stands, rain taken off',
  }),
  count('stress_days', 'Days short', { width: 110, hint: 'As the beds are watered now' }),
  share('metShare', 'Use met', { width: 110 }),
  quantity('soilStore_L', 'Held by the soil', { width: 160, digits: 2 }),
  quantity('freeStore_L', 'In basin or reservoir', { width: 190, digits: 2 }),
  quantity('lost_L', 'Drained or run over', { total: 'sum', digits: 2, shown: false }),
  quantity('area_m2', 'Area', { total: 'sum', shown: false }),
  text('block', 'Block', { shown: false }),
];
