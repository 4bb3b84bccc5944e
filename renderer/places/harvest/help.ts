import type { PlaceHelp } from '../../app/place-help.ts';

export const harvestHelp: PlaceHelp = {
  what: 'Fast entry of what was picked, the log, and yields against expectation.',
  steps: [
    'Type a line: bed or crop, amount, unit, Enter.',
    'Correct a line in the table.',
    'Compare yields by bed, crop and week.',
  ],
  computes: [
    {
      name: 'Net weight',
      how: 'Amount by the net weight of the unit of sale.',
      source: 'USDA and state tables of net weights; named per unit.',
    },
    {
      name: 'Yield against expectation',
      how: 'Harvest to date over the planned share of the window.',
      source: 'Crop library and your own numbers.',
    },
  ],
  cautions: ['animals-flood-contamination', 'hose-sanitation-and-drinking', 'raw-manure'],
};
