import type { FarmFile } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { type SeasonRecord, seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { refuse } from '../../planner/errors.ts';
import type { MilpSolver } from '../../planner/milp.ts';
import { leastCost, type PurchaseWishes } from '../../planner/orders/least-cost.ts';
import type { ReaderSettings } from '../../planner/units/reader.ts';
import type { Ctx } from '../procedure.ts';
import { cautionTexts } from '../words/caution-texts.ts';
import { costSection } from './cost-section.ts';
import { csvOf } from './csv.ts';
import { type ReportHead, reportPage } from './page.ts';
import { planSection } from './plan-section.ts';
import { reportReader, settingsOf } from './report-reader.ts';
import type { ReportSection } from './section.ts';
import { type Shopping, shoppingOf, shoppingSection } from './shopping-section.ts';
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

/** All that a report is made of but the search for the list: plain data, so that a worker can go on with it. */
export type ReportData = {
  readonly head: ReportHead;
  readonly settings: ReaderSettings;
  readonly language: string;
  /** The folder of the data that ships. */
  readonly resources: string;
  readonly plan: ReportSection;
  readonly shopping: Shopping;
  readonly water: ReportSection;
  readonly costs: ReportSection;
};

/** Reads from the farm what the report of a season tells. */
export function gatherReport(ctx: Ctx, season: SeasonRecord, language: string): ReportData {
  const farm = farmOfFile(ctx.db) ?? refuse('farm', 'not-found', 'This farm file has no farm in it yet.');
  const settings = settingsOf(farm);
  const { resources } = ctx.program.places;
  const reader = reportReader(settings, resources, language);
  return {
    head: { farm: farm.name, invented: farm.invented, season: season.name, madeOn: ctx.today },
    settings,
    language,
    resources,
    plan: planSection(ctx.db, season, reader),
    shopping: shoppingOf(ctx.db, season, ctx.today),
    water: waterSection(ctx.db, season, reader),
    costs: costSection(ctx.db, seasonForCosts(ctx.farm, season), reader),
  };
}

/** The season report: one HTML file with everything in the order of the four questions, and each table as CSV. */
export function writeReport(data: ReportData, solve: MilpSolver, wishes: PurchaseWishes): readonly ReportFile[] {
  const reader = reportReader(data.settings, data.resources, data.language);
  const best = leastCost(data.shopping.problem, solve, wishes);
  const sections = [data.plan, shoppingSection(data.shopping, best, reader), data.water, data.costs];
  return [
    {
      name: `season-report-${data.head.season.replaceAll(/[^\p{L}\p{N}_-]+/gu, '-')}.html`,
      text: reportPage(data.head, sections, reader, (ids) => cautionTexts(data.resources, ids)),
    },
    ...sections.flatMap(({ tables }) => tables).map((table) => ({ name: `${table.name}.csv`, text: csvOf(table) })),
  ];
}
