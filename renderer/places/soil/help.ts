import type { PlaceHelp } from '../../app/place-help.ts';

export const soilHelp: PlaceHelp = {
  what: 'What the beds need to be filled, topped up and fed: volumes, soil tests, nutrient budget, blends and dose cards.',
  steps: [
    'Enter a laboratory sheet, or bring in many from CSV; one sheet may speak for many beds.',
    'See what lime or sulfur each bed wants, and put it on the cards.',
    'Look at the budget of each bed against its plantings; a surplus is flagged.',
    'Find the blend, put it on dose cards and print them.',
    'Record doses as given: they leave stock and stand in Records for an inspection.',
    'Mix compost, log its heat, and size compost tea from the beds to drench.',
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
      name: 'Readings',
      how: 'Each figure falls in a class on the scale of its own method; figures of two methods are never compared.',
      source: 'University of California, Midwest Vegetable Guide, University of Massachusetts; Mehlich-3 and Morgan from memory.',
    },
    {
      name: 'Nutrient budget',
      how: 'Need by recommendation or removal, less organic matter, earlier dressings, top-ups, legumes and water.',
      source: 'Regional rates from memory; USDA food composition; release series are common practice.',
    },
    {
      name: 'Blend',
      how: 'Two solves: first the least missed, then the least money in whole packages; each bed then in whole measures, checked again by plain arithmetic.',
      source: 'Mixed-integer linear programming.',
    },
    {
      name: 'Compost and tea',
      how: 'C:N and moisture of the mix; days at 131 to 170 °F counted against the rule; tea from area, rate and dilution.',
      source: 'Cornell Waste Management Institute; 7 CFR 205.203(c)(2), from memory; rates of tea are common practice.',
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
