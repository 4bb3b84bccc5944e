import type { PlaceHelp } from '../../app/place-help.ts';
import { say } from '../../words/say.ts';

export const seasonHelp: PlaceHelp = {
  what: say(
    'Beds down, weeks across, each planting a bar with its stages. Plan successions, see conflicts and rotation, compare totals with demand.',
  ),
  steps: [
    say('Add a planting or a whole succession; it shows what it would make before you add it.'),
    say('Drag a strip to move it, its ends to stretch it, with Ctrl to copy it; what stands against it shows as you drag.'),
    say(
      'Without a mouse: arrows go about, Space lifts a strip, arrows move it by days (with Shift by weeks) and from bed to bed, Enter puts it down.',
    ),
    say('Point at an empty stretch of a bed, or press G, to see what would fit there.'),
    say('Press Enter on a strip for its sheet: dates planned and real, seed, trays, beds, expected harvest.'),
    say(
      'On Proposal, say what to aim for, have a plan proposed, and accept all of it or the beds you tick. One undo takes it back.',
    ),
  ],
  computes: [
    {
      name: say('Report'),
      how: say(
        'The season in one file: what goes where and when, what to buy, whether the water suffices, which beds and crops paid.',
      ),
      source: say('The figures of the other places, with the list searched anew.'),
    },
    {
      name: say('Dates of a planting'),
      how: say('From sowing or setting out by days or by heat to maturity, with frost dates as quantiles.'),
      source: say('Published planting tables; see the working of each date.'),
    },
    {
      name: say('Plants, seeds, trays'),
      how: say("Exact counts of the spacing in the bed's outline, with losses."),
      source: say("Geometry; germination from the crop's own figures."),
    },
    {
      name: say('Proposal'),
      how: say(
        'What stands where and when for the most margin, or another goal you choose, within hours, water, bench and rotation. How much better any plan could be is proven with it.',
      ),
      source: say(
        'Column generation over whole rows of plantings (Dantzig and Wolfe 1960, from memory) with a search over whole beds; seed and effort are kept with it.',
      ),
    },
  ],
  cautions: ['raw-manure', 'compost-tea', 'rain-water-on-food', 'pesticide-label'],
};
