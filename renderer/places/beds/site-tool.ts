/** What a click on the site drawing does: choose beds, measure a way, or put beds in order along the tubing. */
export const siteTools = [
  { value: 'select', text: 'Choose and move' },
  { value: 'measure', text: 'Measure' },
  { value: 'order', text: 'Order along tubing' },
] as const;

export type SiteTool = (typeof siteTools)[number]['value'];
