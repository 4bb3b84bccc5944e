import type { PlaceHelp } from '../../app/place-help.ts';

export const weekHelp: PlaceHelp = {
  what: 'What is to do this week and what is late: sowing, potting on, setting out, feeding, filling water, harvesting and buying, with what the weather and the water say.',
  steps: [
    'Read the list from the top: late work stands first.',
    'Mark a task done; what it used and what it cost is kept with it.',
    'Print the clipboard sheet before you go out.',
  ],
  computes: [
    {
      name: 'Dates of the work',
      how: "Counted from the plantings' dates, the intervals of applications and the days until a reservoir is dry.",
      source: "Each date's own working names its source.",
    },
    {
      name: 'Hot spell',
      how: 'The run of days whose highest temperature passes the limit set for the farm.',
      source: "Weather record of the farm's station.",
    },
  ],
  cautions: ['raw-manure', 'compost-tea', 'rain-water-on-food', 'pesticide-label', 'heat-and-sun', 'tools-blades-power'],
};
