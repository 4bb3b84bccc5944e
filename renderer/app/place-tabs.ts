import { say } from '../words/say.ts';
import type { PlaceName } from './place-names.ts';
import type { Tab } from './tabs.tsx';

/** The tabs of each place: its page shows them, the box that finds things lists them. */
export const tabsOf = {
  week: [],
  beds: [
    { name: 'site', title: say('Site') },
    { name: 'designs', title: say('Designs') },
    { name: 'needs', title: say('Fill and top-up') },
    { name: 'cards', title: say('Bed cards') },
    { name: 'labels', title: say('Labels') },
    { name: 'farm', title: say('Whole farm') },
    { name: 'retired', title: say('Retired') },
  ],
  season: [
    { name: 'board', title: say('Board') },
    { name: 'plantings', title: say('Plantings') },
    { name: 'demand', title: say('Demand') },
    { name: 'bench', title: say('Bench') },
    { name: 'proposal', title: say('Proposal') },
    { name: 'report', title: say('Report') },
  ],
  soil: [
    { name: 'tests', title: say('Soil tests') },
    { name: 'ph', title: say('Lime and sulfur') },
    { name: 'budget', title: say('Nutrient budget') },
    { name: 'blend', title: say('Blend') },
    { name: 'cards', title: say('Dose cards') },
    { name: 'compost', title: say('Compost and tea') },
    { name: 'fill', title: say('Fill and top-up') },
    { name: 'records', title: say('Records') },
  ],
  water: [
    { name: 'demand', title: say('Demand') },
    { name: 'stress', title: say('Stores and stress') },
    { name: 'away', title: say('Days away') },
    { name: 'salts', title: say('Salts') },
    { name: 'weather', title: say('Weather') },
    { name: 'line', title: say('Line') },
    { name: 'valves', title: say('Valves') },
    { name: 'timer', title: say('Timer') },
    { name: 'reservoir', title: say('Reservoir') },
    { name: 'power', title: say('Power') },
  ],
  orders: [
    { name: 'needs', title: say('Needs') },
    { name: 'list', title: say('Shopping list') },
    { name: 'purchases', title: say('Purchases') },
    { name: 'stock', title: say('Stock') },
    { name: 'budget', title: say('Budget') },
  ],
  harvest: [
    { name: 'log', title: say('Entry and log') },
    { name: 'sales', title: say('Lots and sales') },
    { name: 'prices', title: say('Prices') },
    { name: 'hours', title: say('Hours') },
    { name: 'yields', title: say('Yields') },
    { name: 'units', title: say('Units of sale') },
  ],
  costs: [
    { name: 'earned', title: say('What it earned') },
    { name: 'plan', title: say('Against plan') },
    { name: 'map', title: say('On the site') },
    { name: 'seasons', title: say('Seasons') },
    { name: 'overheads', title: say('Overheads') },
    { name: 'trace', title: say('Trace') },
    { name: 'records', title: say('Records') },
  ],
  library: [
    { name: 'crops', title: say('Crops') },
    { name: 'materials', title: say('Materials') },
    { name: 'designs', title: say('Designs') },
    { name: 'suppliers', title: say('Suppliers') },
    { name: 'offers', title: say('Offers') },
  ],
  farm: [
    { name: 'settings', title: say('Settings') },
    { name: 'files', title: say('Files') },
    { name: 'backups', title: say('Backups') },
    { name: 'phone', title: say('Phone') },
    { name: 'program', title: say('Program') },
  ],
} as const satisfies Readonly<Record<PlaceName, readonly Tab<string>[]>>;

export type TabOf<Place extends PlaceName> = (typeof tabsOf)[Place][number]['name'];

/** The name in the address under which a place keeps its tab. */
export const tabKeyOf = (place: PlaceName): string => (place === 'beds' ? 'view' : 'tab');
