import { say } from '../../words/say.ts';

/** What a click on the site drawing does: choose beds, measure a way, or put beds in order along the tubing. */
export const siteTools = [
  { value: 'select', text: say('Choose and move') },
  { value: 'measure', text: say('Measure') },
  { value: 'order', text: say('Order along tubing') },
] as const;

export type SiteTool = (typeof siteTools)[number]['value'];
