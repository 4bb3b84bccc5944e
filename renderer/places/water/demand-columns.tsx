import { client } from '../../client/api.ts';
import { type Column, count, date, derived, quantity, share, text } from '../../table/column.ts';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { BedDemand } from './demand-data.ts';

export const bedDemandId = (row: BedDemand): string => row.bedId;

/** Beds with their need; the peak opens its working, which is fetched when asked for. */
export const bedDemandColumns = (seasonId: string | null): readonly Column<BedDemand>[] => [
  text('code', say('Bed'), { width: 80 }),
  derived('text', 'supply', say('Supply'), (row) => sayKnown(row.supply), { width: 110 }),
  text('crops', say('Crops'), { width: 220 }),
  quantity('peak_L_per_day', say('Most in a day'), {
    width: 170,
    hint: say('Water the bed uses on its thirstiest day if it never runs short'),
    draw: (row) => (
      <Figure
        value={row.peak_L_per_day}
        unit="L_per_day"
        name={say('Most in a day, {row}', { row: row.code })}
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
  date('peakDate', say('On'), { width: 110 }),
  quantity('need_L', say('To give in the year'), {
    width: 190,
    total: 'sum',
    digits: 2,
    hint: say('Kept full while a crop stands, rain taken off'),
  }),
  count('stress_days', say('Days short'), { width: 110, hint: say('As the beds are watered now') }),
  share('metShare', say('Use met'), { width: 110 }),
  quantity('soilStore_L', say('Held by the soil'), { width: 160, digits: 2 }),
  quantity('freeStore_L', say('In basin or reservoir'), { width: 190, digits: 2 }),
  quantity('lost_L', say('Drained or run over'), { total: 'sum', digits: 2, shown: false }),
  quantity('area_m2', say('Area'), { total: 'sum', shown: false }),
  text('block', say('Block'), { shown: false }),
];
