import type { PlaceHelp } from '../../app/place-help.ts';

export const costsHelp: PlaceHelp = {
  what: 'Cost, income and margin for each bed, crop, square metre and bed-day; plan against actual; records and trace.',
  steps: [
    'Choose the season and look by bed, block, design, crop, planting or outlet; open a margin to see its working.',
    'Open a crop for its break-even, the chance that it covers its cost, and what matters most.',
    'Against plan says why income differs: ground, yield or price.',
    'Trace a lot back to its bed and inputs, or an input forward to buyers; keep records that are never written over.',
  ],
  computes: [
    {
      name: 'Cost of a bed',
      how: 'Parts by service life, fill, inputs at ledger cost, water, power, labour and a share of overheads.',
      source: 'Farm-management handbooks; named in each working.',
    },
    { name: 'Break-even', how: 'Price or yield at which income equals cost.', source: 'Partial budgeting.' },
    { name: 'Range', how: 'Margin under uncertain yield and price.', source: 'Sampling with a fixed seed.' },
  ],
  cautions: ['estimate-limits', 'tax-law-money'],
};
