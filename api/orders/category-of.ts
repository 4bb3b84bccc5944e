const categories: Readonly<Record<string, string>> = {
  'bulk-mix': 'soil and amendments',
  component: 'soil and amendments',
  soil: 'soil and amendments',
  organic: 'soil and amendments',
  mineral: 'soil and amendments',
  liming: 'soil and amendments',
  mulch: 'soil and amendments',
  hardware: 'hardware',
  tubing: 'hardware',
  fitting: 'hardware',
  pump: 'hardware',
  power: 'hardware',
  tray: 'hardware',
  cover: 'hardware',
  packing: 'packing',
  seed: 'seed and starts',
  start: 'seed and starts',
};

/** The category of spending that a kind of material counts under. */
export const categoryOf = (kind: string): string => categories[kind] ?? 'supplies';
