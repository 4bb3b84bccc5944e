import { router as build } from './procedure.ts';
import { applications } from './procedures/applications.ts';
import { bedBuilding } from './procedures/bed-building.ts';
import { bedEdits } from './procedures/bed-edits.ts';
import { bedEnding } from './procedures/bed-ending.ts';
import { bedPlans } from './procedures/bed-plans.ts';
import { beds } from './procedures/beds.ts';
import { compost } from './procedures/compost.ts';
import { costs } from './procedures/costs.ts';
import { crops } from './procedures/crops.ts';
import { demand } from './procedures/demand.ts';
import { designs } from './procedures/designs.ts';
import { farm } from './procedures/farm.ts';
import { feeding } from './procedures/feeding.ts';
import { field } from './procedures/field.ts';
import { files } from './procedures/files.ts';
import { find } from './procedures/find.ts';
import { harvest } from './procedures/harvest.ts';
import { jobs } from './procedures/jobs.ts';
import { labels } from './procedures/labels.ts';
import { labour } from './procedures/labour.ts';
import { lineParts } from './procedures/line-parts.ts';
import { materials } from './procedures/materials.ts';
import { orders } from './procedures/orders.ts';
import { plantingEdits } from './procedures/planting-edits.ts';
import { plantings } from './procedures/plantings.ts';
import { program } from './procedures/program.ts';
import { proposals } from './procedures/proposals.ts';
import { records } from './procedures/records.ts';
import { report } from './procedures/report.ts';
import { sales } from './procedures/sales.ts';
import { seasons } from './procedures/seasons.ts';
import { soilTests } from './procedures/soil-tests.ts';
import { stock } from './procedures/stock.ts';
import { stockpiles } from './procedures/stockpiles.ts';
import { suppliers } from './procedures/suppliers.ts';
import { tea } from './procedures/tea.ts';
import { undo } from './procedures/undo.ts';
import { waterDemand } from './procedures/water-demand.ts';
import { waterLineDrawing } from './procedures/water-line-drawing.ts';
import { waterLineRunning } from './procedures/water-line-running.ts';
import { waterLines } from './procedures/water-lines.ts';
import { waterSalts } from './procedures/water-salts.ts';
import { weather } from './procedures/weather.ts';
import { week } from './procedures/week.ts';

/** The one door: every procedure of the program, by place or aggregate. */
export const router = build({
  applications,
  beds: { ...beds, ...bedBuilding, ...bedEdits, ...bedEnding, ...bedPlans },
  compost: { ...compost, ...tea },
  costs,
  crops,
  demand,
  designs,
  farm,
  feeding,
  field,
  files,
  find,
  harvest,
  jobs,
  labels,
  labour,
  materials,
  orders,
  plantings: { ...plantings, ...plantingEdits },
  seasons,
  program,
  proposals,
  records,
  report,
  sales,
  soilTests,
  stockpiles,
  stock,
  suppliers,
  undo,
  waterDemand: { ...waterDemand, ...waterSalts },
  weather,
  waterLines: { ...waterLines, ...waterLineDrawing, ...waterLineRunning, ...lineParts },
  week,
});

export type Router = typeof router;
