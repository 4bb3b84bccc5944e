import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const costsHelp: PlaceHelp = {
  what: say('Cost, income and margin for each bed, crop, square metre and bed-day; plan against actual; records and trace.'),
  steps: [
    say('Choose the season and look by bed, block, design, crop, planting or outlet; open a margin to see its working.'),
    say('Open a crop for its break-even, the chance that it covers its cost, and what matters most.'),
    say('Against plan says why income differs: ground, yield or price.'),
    say('Trace a lot back to its bed and inputs, or an input forward to buyers; keep records that are never written over.'),
  ],
  computes: [
    {
      name: say('Cost of a bed'),
      how: say(
        'Parts by service life, fill, inputs at ledger cost, labour, its share of the water lines (water, power, and their parts by service life, by the water each bed is to get) and of the overheads.',
      ),
      source: say('Farm-management handbooks; named in each working.'),
    },
    { name: say('Break-even'), how: say('Price or yield at which income equals cost.'), source: say('Partial budgeting.') },
    { name: say('Range'), how: say('Margin under uncertain yield and price.'), source: say('Sampling with a fixed seed.') },
  ],
  cautions: ['estimate-limits', 'tax-law-money'],
};
