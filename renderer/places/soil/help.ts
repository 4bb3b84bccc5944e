import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const soilHelp: PlaceHelp = {
  what: say('What the beds need to be filled, topped up and fed: volumes, soil tests, nutrient budget, blends and dose cards.'),
  steps: [
    say('Enter a laboratory sheet, or bring in many from CSV; one sheet may speak for many beds.'),
    say('See what lime or sulfur each bed wants, and put it on the cards.'),
    say('Look at the budget of each bed against its plantings; a surplus is flagged.'),
    say('Find the blend, put it on dose cards and print them.'),
    say('Record doses as given: they leave stock and stand in Records for an inspection.'),
    say('Mix compost, log its heat, and size compost tea from the beds to drench.'),
  ],
  computes: [
    {
      name: say('Fill and top-up'),
      how: say('Layer volumes with settling and swell, own soil and stock first.'),
      source: say('Reference tables of bulk density and settling.'),
    },
    {
      name: say('Lime and sulfur'),
      how: say('From buffer pH or texture to a target pH.'),
      source: say('Extension tables; named in each working.'),
    },
    {
      name: say('Readings'),
      how: say('Each figure falls in a class on the scale of its own method; figures of two methods are never compared.'),
      source: say(
        'University of California, Midwest Vegetable Guide, University of Massachusetts; Mehlich-3 and Morgan from memory.',
      ),
    },
    {
      name: say('Nutrient budget'),
      how: say('Need by recommendation or removal, less organic matter, earlier dressings, top-ups, legumes and water.'),
      source: say('Regional rates from memory; USDA food composition; release series are common practice.'),
    },
    {
      name: say('Blend'),
      how: say(
        'Two solves: first the least missed, then the least money in whole packages; each bed then in whole measures, checked again by plain arithmetic.',
      ),
      source: say('Mixed-integer linear programming.'),
    },
    {
      name: say('Compost and tea'),
      how: say('C:N and moisture of the mix; days at 131 to 170 °F counted against the rule; tea from area, rate and dilution.'),
      source: say('Cornell Waste Management Institute; 7 CFR 205.203(c)(2), from memory; rates of tea are common practice.'),
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
