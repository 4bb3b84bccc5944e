import type { PlaceHelp } from '../../app/place-help.ts';

export const costsHelp: PlaceHelp = {
  what: 'Cost, income and margin for each bed, crop, square metre and bed-day; plan against actual; what-if.',
  steps: [
    'Choose the season.',
    'Open a figure to see its working.',
    'Try another price, yield or wage in what-if; nothing is kept.',
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
