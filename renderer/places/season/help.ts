import type { PlaceHelp } from '../../app/place-help.ts';

export const seasonHelp: PlaceHelp = {
  what: 'Beds down, weeks across, each planting a bar with its stages. Plan successions, see conflicts and rotation, compare totals with demand.',
  steps: [
    'Add a planting or a whole succession; it shows what it would make before you add it.',
    'Drag a strip to move it, its ends to stretch it, with Ctrl to copy it; what stands against it shows as you drag.',
    'Without a mouse: arrows go about, Space lifts a strip, arrows move it by days (with Shift by weeks) and from bed to bed, Enter puts it down.',
    'Point at an empty stretch of a bed, or press G, to see what would fit there.',
    'Press Enter on a strip for its sheet: dates planned and real, seed, trays, beds, expected harvest.',
    'On Proposal, say what to aim for, have a plan proposed, and accept all of it or the beds you tick. One undo takes it back.',
  ],
  computes: [
    {
      name: 'Dates of a planting',
      how: 'From sowing or setting out by days or by heat to maturity, with frost dates as quantiles.',
      source: 'Published planting tables; see the working of each date.',
    },
    {
      name: 'Plants, seeds, trays',
      how: "Exact counts of the spacing in the bed's outline, with losses.",
      source: "Geometry; germination from the crop's own figures.",
    },
    {
      name: 'Proposal',
      how: 'What stands where and when for the most margin, or another goal you choose, within hours, water, bench and rotation. How much better any plan could be is proven with it.',
      source:
        'Column generation over whole rows of plantings (Dantzig and Wolfe 1960, from memory) with a search over whole beds; seed and effort are kept with it.',
    },
  ],
  cautions: ['raw-manure', 'compost-tea', 'rain-water-on-food', 'pesticide-label'],
};
