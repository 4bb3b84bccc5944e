import type { IsoDate } from '../../planner/calendar.ts';
import { requiredFact } from '../../planner/crops/required-fact.ts';
import { refuse } from '../../planner/errors.ts';
import { sowingsByHeat, sowingsEvery } from '../../planner/season/succession.ts';
import type { LoadedSeason } from './load-season.ts';
import type { GrowEntry, SuccessionEntry } from './planting-entry.ts';
import { heatRuleOf } from './season-clocks.ts';

/** The dates of a succession: every so many days, or by heat so that harvests come so many days apart. @throws InputError */
export function intervalDates(loaded: LoadedSeason, entry: GrowEntry, succession: SuccessionEntry): readonly IsoDate[] {
  const first = entry.anchor.date;
  if (succession.by === 'interval')
    return sowingsEvery({ first, notAfter: succession.notAfter, interval_days: succession.interval_days });
  const facts = loaded.shelf.facts(entry.cropId, entry.varietyId);
  const name = loaded.shelf.crop(entry.cropId).name;
  const rule = heatRuleOf(facts);
  const heat = rule === null ? null : loaded.clocks.normals(rule);
  if (heat === null)
    return refuse(
      'succession.by',
      'not-known',
      `${name}: sowings by heat need its base temperature and a year of daily weather.`,
    );
  const need_C_days = requiredFact(facts, 'gdd_to_harvest_C_days', name, 'succession.by');
  return sowingsByHeat({ first, notAfter: succession.notAfter, heat, need_C_days, gap_days: succession.interval_days });
}
