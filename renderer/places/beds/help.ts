import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const bedsHelp: PlaceHelp = {
  what: say('Every bed with its size, its place on the site, its fill, its parts and its weight.'),
  steps: [
    say('Choose a design, or make one in the Library.'),
    say('Build as many beds of it as you need at once; codes count on by themselves.'),
    say(
      'Drag beds on the site drawing, or move them with the arrow keys; N and P go from bed to bed, [ and ] turn, D duplicates.',
    ),
    say('Open a bed to see its section, fill, plants, parts and weight; each figure opens its working.'),
    say('Measure the drop of each bed in spring; the top-up follows. Bed cards say how many buckets of each to take along.'),
  ],
  computes: [
    {
      name: say('Area and volume'),
      how: say('Exact geometry of the outline and its taper to the chosen depth.'),
      source: say('Plane and solid geometry.'),
    },
    {
      name: say('Plants'),
      how: say('Points of the lattice or rows counted one by one inside the outline, over every way of laying them.'),
      source: say('Counting; no layout has more than the packing bound of Oler (1961).'),
    },
    {
      name: say('Fill and top-up'),
      how: say(
        'Layers from the bed’s geometry, then the settling of each; a top-up from the measured drop, else the expected one.',
      ),
      source: say('Definitions; settling and swell are common practice, no source.'),
    },
    {
      name: say('Weight, dry and wet'),
      how: say('Volumes of the layers by their densities and the water they hold.'),
      source: say('Library of materials; each value names its source.'),
    },
    {
      name: say('Floor load'),
      how: say('Wet weight over the area that stands on the ground.'),
      source: say('Computed; a structural engineer judges it.'),
    },
  ],
  cautions: [
    'standing-water-children',
    'mosquitoes',
    'saturated-weight-lifting',
    'decks-roofs-balconies',
    'treated-wood-tyres-pallets',
    'food-grade-containers',
    'dig-call-first',
    'lead-in-soil',
    'mould-and-old-mounds',
  ],
};
