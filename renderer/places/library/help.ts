import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const libraryHelp: PlaceHelp = {
  what: say('Crops, materials, designs and suppliers: what ships with the program, and your own numbers over it.'),
  steps: [
    say('Find a crop or material; every value says where it comes from.'),
    say("Write your own number over it; the library's stays beside it."),
    say('Make a design once and build beds of it many times.'),
  ],
  computes: [
    {
      name: say('Value in use'),
      how: say("Your own number where there is one, else the library's."),
      source: say('Shown beside each value.'),
    },
  ],
  cautions: ['plant-toxicity', 'treated-wood-tyres-pallets'],
};
