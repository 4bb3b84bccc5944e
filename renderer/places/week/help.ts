import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const weekHelp: PlaceHelp = {
  what: say(
    'What is to do this week and what is late: sowing, potting on, setting out, feeding, filling water, harvesting and buying, with what the weather and the water say.',
  ),
  steps: [
    say('Read the list from the top: late work stands first.'),
    say('Mark a task done; what it used and what it cost is kept with it.'),
    say('Print the clipboard sheet before you go out.'),
  ],
  computes: [
    {
      name: say('Dates of the work'),
      how: say("Counted from the plantings' dates, the intervals of applications and the days until a reservoir is dry."),
      source: say("Each date's own working names its source."),
    },
    {
      name: say('Hot spell'),
      how: say('The run of days whose highest temperature passes the limit set for the farm.'),
      source: say("Weather record of the farm's station."),
    },
  ],
  cautions: ['raw-manure', 'compost-tea', 'rain-water-on-food', 'pesticide-label', 'heat-and-sun', 'tools-blades-power'],
};
