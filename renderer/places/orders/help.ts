import type { PlaceHelp } from '../../app/place-help.ts';

export const ordersHelp: PlaceHelp = {
  what: 'What must be bought, from whom, in which packages, at the least total cost, and why each line is there.',
  steps: [
    'Look through the lines; open one to see why it is there.',
    'Change a supplier or a package if you know better.',
    'Mark lines as bought: they become a purchase and stock.',
  ],
  computes: [
    {
      name: 'Need',
      how: 'All needs of fills, feeds, plantings and lines, less what is on hand.',
      source: 'The other places; each line names them.',
    },
    {
      name: 'Packages',
      how: 'Whole packages over suppliers, with price breaks, minimums and delivery, at least total cost.',
      source: 'Integer optimisation.',
    },
  ],
  cautions: ['dust-perlite-silica', 'lime-sulfur-ash', 'fertilizer-storage', 'food-grade-containers', 'saturated-weight-lifting'],
};
