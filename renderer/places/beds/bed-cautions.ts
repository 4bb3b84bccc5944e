import type { WholeBed } from './bed-types.ts';

/** Open water deeper than this can drown a small child (trigger of the caution: common practice, no source). */
const OPEN_WATER_M = 0.025;
/** Weights above this are not to be lifted by one person (OSHA and NIOSH, as the caution says). */
const LIFT_KG = 16;
/** Dry mineral material above this raises dust worth a caution (common practice, no source). */
const DUSTY_L = 20;

/** The cautions that fit a bed, for the place where it is decided how it is built, filled and moved. */
export function bedCautions(bed: WholeBed): readonly string[] {
  const { spec, figures, row, layers } = bed;
  const ids: string[] = [];
  if (spec.watering === 'basin' && (spec.basinFill_m ?? spec.basinDepth_m ?? 0) > OPEN_WATER_M)
    ids.push('standing-water-children', 'mosquitoes');
  if (row.place !== 'ground') ids.push('decks-roofs-balconies');
  if (figures?.wet_kg != null && figures.wet_kg > LIFT_KG && (spec.kind === 'bag' || spec.kind === 'trough'))
    ids.push('saturated-weight-lifting');
  if (layers.some((layer) => layer.dusty && layer.loose_L > DUSTY_L)) ids.push('dust-perlite-silica');
  if (layers.some((layer) => layer.isOwn)) ids.push('lead-in-soil');
  if (spec.kind === 'mound') ids.push('mould-and-old-mounds');
  if (spec.kind === 'framed') ids.push('treated-wood-tyres-pallets');
  if (spec.watering === 'reservoir') ids.push('food-grade-containers');
  return ids;
}
