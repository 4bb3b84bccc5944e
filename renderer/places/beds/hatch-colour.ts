import type { HatchName } from '../../draw/hatches.tsx';

const colours: Readonly<Record<HatchName, string>> = {
  soil: 'var(--soil)',
  mix: 'var(--mix)',
  compost: 'color-mix(in oklab, var(--soil) 60%, var(--ink))',
  gravel: 'color-mix(in oklab, var(--mix) 55%, var(--paper-raised))',
  wood: 'var(--wood)',
  water: 'var(--water)',
  mulch: 'color-mix(in oklab, var(--wood) 60%, var(--paper-raised))',
  fabric: 'var(--line-strong)',
  void: 'var(--paper-raised)',
};

/** The plain colour that stands for a hatch in a list. */
export const hatchColour = (name: HatchName): string => colours[name];
