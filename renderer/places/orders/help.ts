import type { PlaceHelp } from '../../app/place-help.ts';

export const ordersHelp: PlaceHelp = {
  what: 'What must be bought, from whom, in which packages, at the least total cost, and why each line is there.',
  steps: [
    'Look through the needs: each names its bed, part or planting; bind it to a supplier, leave it out, add your own.',
    'Find the cheapest list, see what it saves and why, keep it.',
    'Tick lines while buying and order them; receive them at Purchases: stock and costs follow.',
    'Count the shed now and then: the difference to the books is kept with who and why.',
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
