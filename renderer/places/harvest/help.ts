import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const harvestHelp: PlaceHelp = {
  what: say('Fast entry of what was picked, the log, and yields against expectation.'),
  steps: [
    say('Type a line: bed or crop, amount, unit, Enter.'),
    say('Correct a line in the table.'),
    say('Compare yields by bed, crop and week.'),
  ],
  computes: [
    {
      name: say('Net weight'),
      how: say('Amount by the net weight of the unit of sale.'),
      source: say('USDA and state tables of net weights; named per unit.'),
    },
    {
      name: say('Yield against expectation'),
      how: say('Harvest to date over the planned share of the window.'),
      source: say('Crop library and your own numbers.'),
    },
  ],
  cautions: ['animals-flood-contamination', 'hose-sanitation-and-drinking', 'raw-manure'],
};
