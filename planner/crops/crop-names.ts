import { ownValue } from '../own-value.ts';

/** Names under which growers and lists know a crop of the library, lower case. Ordinary usage, no source. */
const otherNames: Readonly<Record<string, string>> = {
  lettuce: 'lettuce-leaf',
  'leaf lettuce': 'lettuce-leaf',
  romaine: 'lettuce-romaine',
  'head lettuce': 'lettuce-head',
  chard: 'swiss-chard',
  'swiss chard': 'swiss-chard',
  rocket: 'arugula',
  mustard: 'mustard-greens',
  escarole: 'endive',
  chicory: 'radicchio',
  mache: 'cornsalad',
  collard: 'collards',
  'chinese cabbage': 'napa-cabbage',
  'brussels sprout': 'brussels-sprouts',
  beets: 'beet',
  'sweet potato': 'sweet-potato',
  onion: 'onion-bulb',
  'green onion': 'scallion',
  bean: 'bean-bush',
  'bush bean': 'bean-bush',
  'snap bean': 'bean-bush',
  'bean, snap': 'bean-bush',
  'pole bean': 'bean-pole',
  'lima bean': 'bean-lima',
  'bean, lima': 'bean-lima',
  pea: 'pea-garden',
  'snow pea': 'pea-pod',
  'snap pea': 'pea-pod',
  'fava bean': 'fava-bean',
  'broad bean': 'fava-bean',
  squash: 'summer-squash',
  'summer squash': 'summer-squash',
  'winter squash': 'winter-squash',
  cantaloupe: 'muskmelon',
  melon: 'muskmelon',
  pepper: 'pepper-sweet',
  'sweet pepper': 'pepper-sweet',
  'hot pepper': 'pepper-hot',
  corn: 'sweet-corn',
  'sweet corn': 'sweet-corn',
  'corn, sweet': 'sweet-corn',
  coriander: 'cilantro',
  sunflower: 'sunflower-cut',
  'cut sunflower': 'sunflower-cut',
  cornflower: 'bachelors-button',
  rye: 'cereal-rye',
  oat: 'oats-cover',
  oats: 'oats-cover',
  vetch: 'hairy-vetch',
};

const plain = (name: string): string => name.trim().toLowerCase();

export type NamedCrop = { readonly id: string; readonly name: string };

/**
 * The crop that a name means: its key, its full name, another usual name, or its plural. Undefined when none is meant.
 */
export function cropOfName<C extends NamedCrop>(crops: readonly C[], name: string): C | undefined {
  const wanted = plain(name);
  const byId = new Map(crops.map((crop) => [crop.id, crop]));
  const other = ownValue(otherNames, wanted);
  return (
    byId.get(wanted) ??
    crops.find((crop) => plain(crop.name) === wanted) ??
    (other === undefined ? undefined : byId.get(other)) ??
    byId.get(wanted.replaceAll(' ', '-')) ??
    (wanted.endsWith('s') && wanted.length > 3 ? cropOfName(crops, wanted.slice(0, -1)) : undefined)
  );
}
