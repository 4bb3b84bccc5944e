import type { FarmFile } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { type SeasonRecord, seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { refuse } from '../../planner/errors.ts';
import type { MilpSolver } from '../../planner/milp.ts';
import type { UnitSystem } from '../../planner/units/system.ts';
import { loadMilpSolver } from '../jobs/milp/highs.ts';
import type { Ctx } from '../procedure.ts';
import { costSection } from './cost-section.ts';
import { csvOf } from './csv.ts';
import { reportPage } from './page.ts';
import { planSection } from './plan-section.ts';
import type { ReportSection } from './section.ts';
import { shoppingSection } from './shopping-section.ts';
import { waterSection } from './water-section.ts';

export type ReportFile = { readonly name: string; readonly text: string };

/** The season a report is about: the one named, else the one being planned, else the latest. */
export function seasonForReport(farm: FarmFile, named: string | undefined): SeasonRecord {
  const seasons = seasonsOfFarm(farm.db);
  if (named !== undefined) {
    const found = seasons.find((season) => season.name === named || season.id === named);
    return (
      found ??
      refuse(
        'season',
        'not-found',
        `There is no season "${named}" in this farm. It has: ${seasons.map((season) => season.name).join(', ') || 'none'}.`,
      )
    );
  }
  const chosen = seasons.find((season) => season.state === 'planning') ?? seasons.at(-1);
  return chosen ?? refuse('season', 'not-found', 'This farm has no season yet.');
}

/** Costs are told of the season itself once it has income or hours, else of the latest that is over. */
function seasonForCosts(farm: FarmFile, season: SeasonRecord): SeasonRecord {
  if (season.state !== 'planning') return season;
  return seasonsOfFarm(farm.db).findLast((each) => each.state !== 'planning' && each.startDate <= season.startDate) ?? season;
}

type ReportReader = { readonly currency: string; readonly system: UnitSystem };

/** The sections of the report, in the order of the four questions. */
export function reportSections(
  ctx: Ctx,
  season: SeasonRecord,
  reader: ReportReader,
  solve: MilpSolver,
): readonly ReportSection[] {
  return [
    planSection(ctx.db, season),
    shoppingSection(ctx.db, season, ctx.today, reader.currency, solve),
    waterSection(ctx.db, season, reader.system),
    costSection(ctx.db, seasonForCosts(ctx.farm, season), reader.currency),
  ];
}

/** The season report: one HTML file with everything, and each table as CSV. */
export async function makeReport(ctx: Ctx, season: SeasonRecord): Promise<readonly ReportFile[]> {
  const farm = farmOfFile(ctx.db) ?? refuse('farm', 'not-found', 'This farm file has no farm in it yet.');
  const sections = reportSections(ctx, season, { currency: farm.currency, system: farm.unitSystem }, await loadMilpSolver());
  const head = {
    farm: farm.name,
    invented: farm.invented,
    season: season.name,
    madeOn: ctx.today,
    system: farm.unitSystem,
    currency: farm.currency,
  };
  const tables = sections.flatMap((section) => section.tables);
  return [
    { name: `season-report-${season.name.replaceAll(/[^\w-]+/g, '-')}.html`, text: reportPage(head, sections) },
    ...tables.map((table) => ({ name: `${table.name}.csv`, text: csvOf(table) })),
  ];
}
