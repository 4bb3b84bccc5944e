import type { PlaceHelp } from '../../app/place-help.ts';

export const soilHelp: PlaceHelp = {
  what: 'What the beds need to be filled, topped up and fed: volumes, soil tests, nutrient budget, blends and dose cards.',
  steps: [
    'Enter a soil test.',
    'Look at the budget of each bed against its plantings.',
    'Make a blend and print its dose cards.',
  ],
  computes: [
    {
      name: 'Fill and top-up',
      how: 'Layer volumes with settling and swell, own soil and stock first.',
      source: 'Reference tables of bulk density and settling.',
    },
    {
      name: 'Lime and sulfur',
      how: 'From buffer pH or texture to a target pH.',
      source: 'Extension tables; named in each working.',
    },
    {
      name: 'Blend',
      how: 'Least-cost mix of whole measures that meets the need without passing the limits.',
      source: 'Integer optimisation.',
    },
  ],
  cautions: [
    'lead-in-soil',
    'raw-manure',
    'compost-heat',
    'compost-tea',
    'lime-sulfur-ash',
    'dust-perlite-silica',
    'mould-and-old-mounds',
    'fertilizer-storage',
    'pesticide-label',
  ],
};
