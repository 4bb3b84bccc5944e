import type { FarmDb } from '../../db/file/open-farm.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import { linesOfFarm } from '../../db/repositories/water-lines.ts';
import { InputError } from '../../planner/errors.ts';
import { lineReport } from '../../planner/irrigation/line-report.ts';
import { demandOfFarm, hottestWeek } from '../water/demand-of-year.ts';

import { loadWater } from '../water/load-water.ts';
import { loadLine } from '../water-line/load-line.ts';
import type { ReportReader } from './report-reader.ts';
import type { Cell, ReportSection, ReportTable } from './section.ts';

const WEEK_DAYS = 7;

/** Whether pump, tubing and reservoir keep the beds wet through the hottest week on record. */
export function waterSection(db: FarmDb, season: SeasonRecord, reader: ReportReader): ReportSection {
  const perDay = (litres: number) => reader.print(litres, 'L_per_day', 2);
  const monthName = new Intl.DateTimeFormat(reader.locale, { month: 'short', timeZone: 'UTC' });
  const farm = loadWater(db, season.id);
  const record = farm.record;
  const hottest = record === null ? null : hottestWeek(record);
  const year = hottest === null ? undefined : Number(hottest.from.slice(0, 4));
  const demand =
    record === null || year === undefined || !record.years.includes(year) ? null : demandOfFarm(db, farm, record, year);
  const says: string[] = [];
  if (demand === null) says.push('There is no whole year of weather on record: import one under Water to see the need by day.');
  else {
    says.push(`In the weather of ${demand.year}, whose hottest seven days on record began on ${reader.date(hottest?.from)}.`);
    for (const group of demand.groups) {
      const need = group.week?.need_L_per_day;
      if (need === undefined || group.beds === 0) continue;
      const supply = group.most_L_per_day;
      const away = group.usable_L === null || need <= 0 ? null : Math.floor(group.usable_L / need);
      says.push(
        `${group.name}: ${group.beds} beds ask for ${perDay(need)} in the thirstiest week${supply === null ? '' : `; the line gives up to ${perDay(supply)} in the hours allowed`}${away === null ? '' : `; a full reservoir holds ${away} such days`}.`,
      );
    }
  }
  const flows: ReportTable[] = [];
  for (const line of linesOfFarm(db)) {
    try {
      const { plan, record: whole } = loadLine(db, line.lineId);
      const report = lineReport(plan);
      if (report.problem !== null) says.push(`${line.name}: ${report.problem}`);
      const codes = new Map(
        whole.outlets.map((outlet) => [outlet.id, farm.beds.find((bed) => bed.bedId === outlet.bedId)?.code ?? outlet.id]),
      );
      flows.push({
        name: `flow-${line.name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`,
        title: `Flow at each bed of ${line.name}`,
        columns: [
          { head: 'Bed', unit: null, name: 'bed' },
          { head: 'As the valves stand, full', unit: 'L_per_h', name: 'flow_full_L_per_h' },
          { head: 'At the lowest level', unit: 'L_per_h', name: 'flow_low_L_per_h' },
          { head: 'Valves set as designed', unit: 'L_per_h', name: 'flow_design_L_per_h' },
        ],
        rows: report.outlets.map((outlet): readonly Cell[] => [
          codes.get(outlet.id) ?? '',
          outlet.full.flow_L_per_h,
          outlet.low.flow_L_per_h,
          outlet.design_L_per_h,
        ]),
      });
    } catch (error) {
      // a line that is not drawn to its end says what it lacks; the rest of the report stands
      if (!(error instanceof InputError)) throw error;
      says.push(`${line.name} has no flows yet: ${error.message}`);
    }
  }
  return {
    title: 'Whether the water suffices',
    says,
    charts: (demand?.groups ?? [])
      .filter((group) => group.beds > 0)
      .map((group) => ({
        title: `${group.name}: need by month, mean day`,
        unit: 'L_per_day',
        bars: group.months.map((month, at) => ({
          label: monthName.format(Date.UTC(demand?.year ?? 0, at)),
          parts: [{ name: 'Need', value: month.need_L_per_day }],
        })),
      })),
    tables: [
      {
        name: 'water-by-bed',
        title: 'Water by bed over the year',
        columns: [
          { head: 'Bed', unit: null, name: 'bed' },
          { head: 'Crops', unit: null, name: 'crops' },
          { head: 'From', unit: null, name: 'supply' },
          { head: 'Thirstiest day', unit: 'L_per_day', name: 'peak_L_per_day' },
          { head: 'A mean week', unit: 'L', name: 'mean_week_L' },
          { head: 'To give in the year', unit: 'L', name: 'need_L' },
          { head: 'Days short of water', unit: '', name: 'stress_days' },
        ],
        rows: (demand?.beds ?? []).map((bed): readonly Cell[] => [
          bed.code,
          bed.crops,
          bed.supply,
          bed.peak_L_per_day,
          (bed.use_L * WEEK_DAYS) / Math.max(1, demand?.byDay.length ?? 1),
          bed.need_L,
          bed.stress_days,
        ]),
      },
      ...flows,
    ],
    cautions: ['electricity-near-water', 'backflow'],
    sources: [
      'FAO Irrigation and Drainage Paper 56 (1998)',
      'Darcy-Weisbach with Swamee-Jain',
      ...(record === null ? [] : [record.station.source]),
    ],
  };
}
