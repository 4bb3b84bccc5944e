import type { PlaceHelp } from '../../app/place-help.ts';

export const bedsHelp: PlaceHelp = {
  what: 'Every bed with its size, its place on the site, its fill, its parts and its weight.',
  steps: [
    'Choose a design, or make one in the Library.',
    'Build as many beds of it as you need at once; codes count on by themselves.',
    'Drag beds on the site drawing, or move them with the arrow keys; N and P go from bed to bed, [ and ] turn, D duplicates.',
    'Open a bed to see its section, fill, plants, parts and weight; each figure opens its working.',
    'Measure the drop of each bed in spring; the top-up follows. Bed cards say how many buckets of each to take along.',
  ],
  computes: [
    {
      name: 'Area and volume',
      how: 'Exact geometry of the outline and its taper to the chosen depth.',
      source: 'Plane and solid geometry.',
    },
    {
      name: 'Plants',
      how: 'Points of the lattice or rows counted one by one inside the outline, over every way of laying them.',
      source: 'Counting; no layout has more than the packing bound of Oler (1961).',
    },
    {
      name: 'Fill and top-up',
      how: 'Layers from the bed’s geometry, then the settling of each; a top-up from the measured drop, else the expected one.',
      source: 'Definitions; settling and swell are common practice, no source.',
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
