/** How early a crop may stand outside: a planting class, no killing temperature. */
export const hardinessClasses = ['hardy', 'half-hardy', 'tender', 'very-tender'] as const;
export type HardinessClass = (typeof hardinessClasses)[number];

export const isHardinessClass = (text: string): text is HardinessClass => (hardinessClasses as readonly string[]).includes(text);

/**
 * Daytime temperature a class needs to grow.
 * Source: Colorado State University Extension, GardenNotes 720 (40 F, 40 to 50 F, 55 F; the very tender as warm-season).
 */
export const growsFrom_C: Readonly<Record<HardinessClass, number>> = {
  hardy: 4.4,
  'half-hardy': 4.4,
  tender: 12.8,
  'very-tender': 12.8,
};

/** Below this the air kills: light freeze from 0 C, hard freeze below -2.2 C. Common practice, no source. */
export const LIGHT_FREEZE_C = 0;
export const HARD_FREEZE_C = -2.2;

/** Days after the last frost that a class waits: from, to. Source: as above; very tender from memory. */
export const daysFromLastFrost: Readonly<Record<HardinessClass, readonly [from: number, to: number]>> = {
  hardy: [-28, -14],
  'half-hardy': [-14, 0],
  tender: [0, 0],
  'very-tender': [14, 14],
};
