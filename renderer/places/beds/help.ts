import type { PlaceHelp } from '../../app/place-help.ts';

export const bedsHelp: PlaceHelp = {
  what: 'Every bed with its size, its place on the site, its fill, its parts and its weight.',
  steps: [
    'Choose a design, or make one in the Library.',
    'Build as many beds of it as you need at once; codes count on by themselves.',
    'Drag beds on the site drawing, or move them with the arrow keys.',
  ],
  computes: [
    {
      name: 'Area and volume',
      how: 'Exact geometry of the outline and its taper to the chosen depth.',
      source: 'Plane and solid geometry.',
    },
    {
      name: 'Weight, dry and wet',
      how: 'Volumes of the layers by their densities and the water they hold.',
      source: 'Library of materials; each value names its source.',
    },
    {
      name: 'Floor load',
      how: 'Wet weight over the area that stands on the ground.',
      source: 'Computed; a structural engineer judges it.',
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
