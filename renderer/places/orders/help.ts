import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const ordersHelp: PlaceHelp = {
  what: say('What must be bought, from whom, in which packages, at the least total cost, and why each line is there.'),
  steps: [
    say('Look through the needs: each names its bed, part or planting; bind it to a supplier, leave it out, add your own.'),
    say('Tell what beds you mean to build and by when: their parts, fill and mulch become needs until the beds are built.'),
    say('Find the cheapest list, see what it saves and why, keep it.'),
    say('Tick lines while buying and order them; receive them at Purchases: stock and costs follow.'),
    say('Count the shed now and then: the difference to the books is kept with who and why.'),
  ],
  computes: [
    {
      name: say('Need'),
      how: say(
        'All needs of fills, feeds, plantings, beds to build and worn parts of beds and lines, less what is on hand or on the way, each in the unit its material is kept in; a fill sold by weight is converted by its bulk density.',
      ),
      source: say('The other places; each line names them.'),
    },
    {
      name: say('Packages'),
      how: say('Whole packages over suppliers, with price breaks, minimums and delivery, at least total cost.'),
      source: say('Integer optimisation.'),
    },
  ],
  cautions: ['dust-perlite-silica', 'lime-sulfur-ash', 'fertilizer-storage', 'food-grade-containers', 'saturated-weight-lifting'],
};
