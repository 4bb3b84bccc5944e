/** The ten places, in the order of the rail. */
export const placeNames = ['week', 'beds', 'season', 'soil', 'water', 'orders', 'harvest', 'costs', 'library', 'farm'] as const;

export type PlaceName = (typeof placeNames)[number];

export const isPlace = (text: string): text is PlaceName => (placeNames as readonly string[]).includes(text);
