import type { PlaceHelp } from '../../app/place-help.ts';

export const waterHelp: PlaceHelp = {
  what: 'Whether pump, tubing, reservoir and battery keep every bed wet through the hottest spell, and for how many days you can be away.',
  steps: [
    'Read the weather of a station near you, and look at what is doubtful in it.',
    'See how much each supply must bring in the thirstiest week, and which beds go short.',
    'Draw the line: supply, pump, runs, outlets.',
    'Look at flow and pressure at each bed and set the valves.',
    'Read the days away and the date of the next refill.',
  ],
  computes: [
    {
      name: 'Salts',
      how: 'Share of the water that must drain through, from its conductivity and what the crop bears.',
      source: 'FAO Irrigation and Drainage Paper 29.',
    },
    {
      name: 'Water need',
      how: 'Reference evapotranspiration by crop coefficient and planted area, less rain.',
      source: 'FAO Irrigation and Drainage Paper 56.',
    },
    {
      name: 'Flow at each bed',
      how: 'The tubing network solved for pressure and flow.',
      source: 'Darcy-Weisbach with published friction factors.',
    },
    {
      name: 'Days until dry',
      how: 'Store of soil, basin and reservoir against need through every year of record.',
      source: 'Water balance; weather record named.',
    },
  ],
  cautions: [
    'electricity-near-water',
    'power-pack-heat',
    'backflow',
    'hose-sanitation-and-drinking',
    'standing-water-children',
    'mosquitoes',
    'rain-water-on-food',
    'aerosols-legionella',
    'heat-gun-vinyl-solvents',
    'generator-carbon-monoxide',
    'estimate-limits',
  ],
};
