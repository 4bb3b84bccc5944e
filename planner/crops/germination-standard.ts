import { ownValue } from '../own-value.ts';

/**
 * Least germination of vegetable seed in interstate commerce, shares.
 * Source: US Code of Federal Regulations, 7 CFR 201.31 (59 FR 64491, 1994); artichoke, bean, beet, carrot, celery, chives,
 * collards, corn, cucumber, eggplant, lettuce, okra, pea, pepper, spinach, tomato, turnip and watermelon seen, the rest
 * from memory.
 */
const federal: Readonly<Record<string, number>> = {
  artichoke: 0.6,
  asparagus: 0.7,
  'bean, asparagus': 0.75,
  'bean, garden': 0.7,
  'bean, lima': 0.7,
  'bean, runner': 0.75,
  beet: 0.65,
  broadbean: 0.75,
  broccoli: 0.75,
  'brussels sprouts': 0.7,
  'burdock, great': 0.6,
  cabbage: 0.75,
  'cabbage, tronchuda': 0.75,
  cardoon: 0.6,
  carrot: 0.55,
  cauliflower: 0.75,
  celeriac: 0.55,
  celery: 0.55,
  'chard, swiss': 0.65,
  chicory: 0.65,
  'chinese cabbage': 0.75,
  chives: 0.5,
  citron: 0.65,
  collards: 0.8,
  'corn, sweet': 0.75,
  cornsalad: 0.7,
  'cress, garden': 0.75,
  'cress, upland': 0.6,
  'cress, water': 0.4,
  cucumber: 0.8,
  dandelion: 0.6,
  dill: 0.6,
  eggplant: 0.6,
  endive: 0.7,
  kale: 0.75,
  'kale, chinese': 0.75,
  'kale, siberian': 0.75,
  kohlrabi: 0.75,
  leek: 0.6,
  lettuce: 0.8,
  melon: 0.75,
  'mustard, india': 0.75,
  'mustard, spinach': 0.75,
  okra: 0.5,
  onion: 0.7,
  'onion, welsh': 0.7,
  'pak-choi': 0.75,
  parsley: 0.6,
  parsnip: 0.6,
  pea: 0.8,
  pepper: 0.55,
  pumpkin: 0.75,
  radish: 0.75,
  rhubarb: 0.6,
  rutabaga: 0.75,
  sage: 0.6,
  salsify: 0.75,
  'savory, summer': 0.55,
  sorrel: 0.65,
  soybean: 0.75,
  spinach: 0.6,
  'spinach, new zealand': 0.4,
  squash: 0.75,
  tomato: 0.75,
  'tomato, husk': 0.5,
  turnip: 0.8,
  watermelon: 0.7,
};

/** Least germination of agricultural seed, shares. Source: West Virginia Code of State Rules 61-09 appendix 1. */
const agricultural: Readonly<Record<string, number>> = {
  barley: 0.8,
  buckwheat: 0.8,
  'crimson clover': 0.75,
  oat: 0.75,
  rye: 0.7,
  vetch: 0.8,
  sudangrass: 0.7,
  cowpea: 0.65,
};

/**
 * The least share of seed of a kind that must germinate: a legal floor for unmarked packets, no expectation. Good seed
 * is commonly 0.1 to 0.2 better (common practice, no source). Null when no standard is known.
 */
export function leastGermination_share(kind: string): number | null {
  const key = kind.trim().toLowerCase();
  return ownValue(federal, key) ?? ownValue(agricultural, key) ?? null;
}
