import type { PlaceHelp } from '../../app/place-help.ts';

export const libraryHelp: PlaceHelp = {
  what: 'Crops, materials, designs and suppliers: what ships with the program, and your own numbers over it.',
  steps: [
    'Find a crop or material; every value says where it comes from.',
    "Write your own number over it; the library's stays beside it.",
    'Make a design once and build beds of it many times.',
  ],
  computes: [
    { name: 'Value in use', how: "Your own number where there is one, else the library's.", source: 'Shown beside each value.' },
  ],
  cautions: ['plant-toxicity', 'treated-wood-tyres-pallets'],
};
