import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const waterHelp: PlaceHelp = {
  what: say(
    'Whether pump, tubing, reservoir and battery keep every bed wet through the hottest spell, and for how many days you can be away.',
  ),
  steps: [
    say('Read the weather of a station near you, and look at what is doubtful in it.'),
    say('See how much each supply must bring in the thirstiest week, and which beds go short.'),
    say('Draw the line: supply, pump, runs, outlets.'),
    say('Look at flow and pressure at each bed and set the valves.'),
    say('Read the days away and the date of the next refill.'),
  ],
  computes: [
    {
      name: say('Salts'),
      how: say('Share of the water that must drain through, from its conductivity and what the crop bears.'),
      source: say('FAO Irrigation and Drainage Paper 29.'),
    },
    {
      name: say('Water need'),
      how: say('Reference evapotranspiration by crop coefficient and planted area, less rain.'),
      source: say('FAO Irrigation and Drainage Paper 56.'),
    },
    {
      name: say('Flow at each bed'),
      how: say('The tubing network solved for pressure and flow.'),
      source: say('Darcy-Weisbach with published friction factors.'),
    },
    {
      name: say('Days until dry'),
      how: say('Store of soil, basin and reservoir against need through every year of record.'),
      source: say('Water balance; weather record named.'),
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
