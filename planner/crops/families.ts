import { ownValue } from '../own-value.ts';

/** The grower's word for a botanical family, as rotation lists print it. */
const groups: Readonly<Record<string, string>> = {
  Amaranthaceae: 'goosefoot',
  Amaryllidaceae: 'allium',
  Apiaceae: 'umbel',
  Asparagaceae: 'lily (now Asparagaceae)',
  Asteraceae: 'composite',
  Brassicaceae: 'brassica',
  Caprifoliaceae: 'honeysuckle',
  Convolvulaceae: 'morning glory',
  Cucurbitaceae: 'cucurbit',
  Fabaceae: 'legume',
  Lamiaceae: 'mint',
  Malvaceae: 'mallow',
  Plantaginaceae: 'plantain',
  Plumbaginaceae: 'leadwort',
  Poaceae: 'grass',
  Polygonaceae: 'smartweed',
  Ranunculaceae: 'buttercup',
  Rosaceae: 'rose',
  Solanaceae: 'nightshade',
};

/**
 * The rotation group of a botanical family; a family of the grower's own keeps its name.
 * Source: Cornell Cooperative Extension Cortland County, Rotating Vegetables by Family; the families without vegetables
 * by ordinary botany, no source.
 */
export const familyGroup = (family: string): string => ownValue(groups, family) ?? family;
