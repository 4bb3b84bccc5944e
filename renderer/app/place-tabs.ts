import { say } from '../words/say.ts';
import type { PlaceName } from './place-names.ts';
import type { Tab } from './tabs.tsx';

/** A tab with the sentence by which the help and the finding box tell what is there. */
export type PlaceTab = Tab<string> & { readonly what: string };

/** The tabs of each place: its page shows them, the box that finds things and the help list them. */
export const tabsOf = {
  week: [],
  beds: [
    {
      name: 'site',
      title: say('Site'),
      what: say(
        'Every bed to scale beside its table: build, move, turn, edit many, and open one for its section, fill, parts and weight.',
      ),
    },
    {
      name: 'designs',
      title: say('Designs'),
      what: say(
        'Ways to build a bed: outline, depth, watering, parts and fill recipe, with the fill, weight and number of beds of each.',
      ),
    },
    {
      name: 'needs',
      title: say('Fill and top-up'),
      what: say('What each bed wants to be filled or topped up; own soil and stock first.'),
    },
    {
      name: 'cards',
      title: say('Bed cards'),
      what: say('A card for each bed to fill it by: materials in volume, buckets and barrows.'),
    },
    {
      name: 'labels',
      title: say('Labels'),
      what: say('Labels for beds with code, crop and a square code that a phone reads, on common sheet sizes.'),
    },
    {
      name: 'farm',
      title: say('Whole farm'),
      what: say('What all beds have together by block: area, fill, water, weight and worth, and the parts due by year.'),
    },
    { name: 'retired', title: say('Retired'), what: say('Beds taken out of use; their history stays for rotation and costs.') },
  ],
  season: [
    {
      name: 'board',
      title: say('Board'),
      what: say('Beds down, weeks across: each planting a bar to drag, with conflicts and rotation shown as it moves.'),
    },
    {
      name: 'plantings',
      title: say('Plantings'),
      what: say('Every planting of the season with its dates, beds, plants, seeds and expected yield, to edit and copy.'),
    },
    {
      name: 'demand',
      title: say('Demand'),
      what: say('What boxes, stalls and kitchens want each week, against what the plan should give.'),
    },
    { name: 'bench', title: say('Bench'), what: say('Trays on the propagation bench, week by week, against the room there is.') },
    {
      name: 'proposal',
      title: say('Proposal'),
      what: say('What could stand where and when, and how good that is; nothing is changed until you accept it.'),
    },
    {
      name: 'report',
      title: say('Report'),
      what: say('The whole season in one file that any browser shows and prints, and its tables for a spreadsheet.'),
    },
  ],
  soil: [
    { name: 'tests', title: say('Soil tests'), what: say('Laboratory sheets, each read on the scale of its own method.') },
    {
      name: 'ph',
      title: say('Lime and sulfur'),
      what: say('Lime or sulfur for each bed’s pH, corrected for the worth of the material, depth and area.'),
    },
    {
      name: 'budget',
      title: say('Nutrient budget'),
      what: say('What the season’s plantings ask of each bed, against what is there or coming.'),
    },
    {
      name: 'blend',
      title: say('Blend'),
      what: say('The cheapest of your materials that feed every bed, in whole packages and whole measures.'),
    },
    {
      name: 'cards',
      title: say('Dose cards'),
      what: say('What to give each bed, by weight and by the scoop; marked as given, it becomes a record and leaves stock.'),
    },
    {
      name: 'compost',
      title: say('Compost and tea'),
      what: say('Heaps mixed to a C:N and moisture, their heat logged, and tea sized from the beds to drench.'),
    },
    {
      name: 'fill',
      title: say('Fill and top-up'),
      what: say('What each bed wants to be filled or topped up; own soil and stock first.'),
    },
    { name: 'records', title: say('Records'), what: say('Every material put on a bed, kept for the inspection that asks.') },
  ],
  water: [
    {
      name: 'demand',
      title: say('Demand'),
      what: say('Water needed on each day against what the lines bring, and the beds that need it.'),
    },
    {
      name: 'stress',
      title: say('Stores and stress'),
      what: say('How long each bed holds out, and every year of record run through the plan.'),
    },
    { name: 'away', title: say('Days away'), what: say('How long the farm can be left, at the confidence you choose.') },
    { name: 'salts', title: say('Salts'), what: say('What the irrigation water brings in salts, and what to do about it.') },
    {
      name: 'weather',
      title: say('Weather'),
      what: say('Stations and their records, frost days from them, and reading new files.'),
    },
    {
      name: 'line',
      title: say('Line'),
      what: say('The line drawn and in tables, solved for flow and pressure at each bed while it changes.'),
    },
    { name: 'valves', title: say('Valves'), what: say('The card to set valves by, and the flows measured after.') },
    { name: 'timer', title: say('Timer'), what: say('Minutes of a run, and the timer’s programme through the year.') },
    {
      name: 'reservoir',
      title: say('Reservoir'),
      what: say('The reservoir through every year of record, refills to come, and what happens when the pump stops.'),
    },
    { name: 'power', title: say('Power'), what: say('What the line takes from its power, and how long a battery carries it.') },
  ],
  orders: [
    {
      name: 'needs',
      title: say('Needs'),
      what: say('What the season needs, gathered from beds, parts, doses, plantings and your own additions.'),
    },
    {
      name: 'list',
      title: say('Shopping list'),
      what: say('Least total cost over suppliers, packages, price breaks and deliveries; tick, order, print.'),
    },
    {
      name: 'purchases',
      title: say('Purchases'),
      what: say('What was ordered: receive it or send it back, and stock and costs follow.'),
    },
    { name: 'stock', title: say('Stock'), what: say('Every movement of a material and its balance; counts and lots.') },
    {
      name: 'budget',
      title: say('Budget'),
      what: say('What was bought and ordered against what you meant to spend, by category and month.'),
    },
  ],
  harvest: [
    {
      name: 'log',
      title: say('Entry and log'),
      what: say('What was picked, where, how much, and where it goes; one line and the keyboard are enough.'),
    },
    { name: 'sales', title: say('Lots and sales'), what: say('From lots harvested to what they brought.') },
    { name: 'prices', title: say('Prices'), what: say('Prices by outlet and unit; a new price holds from its day on.') },
    { name: 'hours', title: say('Hours'), what: say('Hours by task, for a planting, a bed or the farm.') },
    { name: 'yields', title: say('Yields'), what: say('What each planting gave against what was expected of it.') },
    {
      name: 'units',
      title: say('Units of sale'),
      what: say('What one bunch, box or bushel weighs; every weight names its source.'),
    },
  ],
  costs: [
    {
      name: 'earned',
      title: say('What it earned'),
      what: say('Cost, income and margin by bed, crop, square metre and bed-day; every cost is in exactly one row.'),
    },
    { name: 'plan', title: say('Against plan'), what: say('Why income is not as planned: the causes add up to the difference.') },
    { name: 'map', title: say('On the site'), what: say('The site drawing, each bed shaded by what it earned.') },
    { name: 'seasons', title: say('Seasons'), what: say('Season against season.') },
    {
      name: 'overheads',
      title: say('Overheads'),
      what: say('Costs that no bed or planting carries by itself, each with the key by which it is shared.'),
    },
    {
      name: 'trace',
      title: say('Trace'),
      what: say('From a sold lot back to bed, planting, inputs and water; from an input forward to sales.'),
    },
    {
      name: 'records',
      title: say('Records'),
      what: say('Logs that are appended and never written over, with their exports and the yearly review of sales.'),
    },
  ],
  library: [
    {
      name: 'crops',
      title: say('Crops'),
      what: say('Every crop with its figures and their sources; a figure you enter goes before the library’s.'),
    },
    {
      name: 'materials',
      title: say('Materials'),
      what: say('Soils, amendments, seeds, hardware and all else that is bought, dug or used, with density and analysis.'),
    },
    { name: 'designs', title: say('Designs'), what: say('Ways to build a bed, to use again.') },
    { name: 'suppliers', title: say('Suppliers'), what: say('Who sells, with delivery terms, minimum order and days to wait.') },
    {
      name: 'offers',
      title: say('Offers'),
      what: say('Packages and prices of each supplier, with price breaks and the day the price was seen.'),
    },
  ],
  farm: [
    {
      name: 'settings',
      title: say('Settings'),
      what: say('Where the farm lies, how figures are shown, money, frost days, records and measures.'),
    },
    { name: 'files', title: say('Files'), what: say('The file the farm is kept in: open, copy, move, and recent farms.') },
    { name: 'backups', title: say('Backups'), what: say('Dated backups of the farm file, to look at and to bring back.') },
    { name: 'phone', title: say('Phone'), what: say('A page for phones on the farm’s own network, off until you switch it on.') },
    {
      name: 'program',
      title: say('Program'),
      what: say('What this program is, its self-test, reports of faults, and licences.'),
    },
  ],
} as const satisfies Readonly<Record<PlaceName, readonly PlaceTab[]>>;

export type TabOf<Place extends PlaceName> = (typeof tabsOf)[Place][number]['name'];

/** The name in the address under which a place keeps its tab. */
export const tabKeyOf = (place: PlaceName): string => (place === 'beds' ? 'view' : 'tab');
