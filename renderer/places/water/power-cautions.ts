import type { LineData } from './line-data.ts';

/** Cautions of the power that was chosen; before a choice, those of any. */
export function cautionsOfPower(data: Pick<LineData, 'power'>): readonly string[] {
  const { power } = data;
  if (power === null) return ['electricity-near-water', 'power-pack-heat'];
  if (power.kind === 'mains') return ['electricity-near-water'];
  if (power.kind === 'engine') return ['generator-carbon-monoxide', 'electricity-near-water'];
  return power.battery === 'lead-acid' ? ['electricity-near-water'] : ['power-pack-heat', 'electricity-near-water'];
}
