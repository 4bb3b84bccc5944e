import { basinWater_L } from '../../planner/beds/basin-water.ts';
import { basinOfBed, formOfBed } from '../../planner/beds/bed-spec.ts';
import { footprint_m2 } from '../../planner/beds/footprint.ts';
import { outlineAt } from '../../planner/beds/form.ts';
import type { BedStore } from '../../planner/water/bed-store.ts';
import { type FillPart, fillAvailableShare, storeOfBed } from '../../planner/water/store-of-bed.ts';
import { type Texture, textureWater } from '../../planner/water/textures.ts';
import type { LoadedBed } from '../beds/load-beds.ts';

const isTexture = (word: string): word is Texture => Object.hasOwn(textureWater, word);

/** A bed of the farm as a store of water; null where its measures do not fit (the Beds page says why). */
export function storeOfLoadedBed(bed: LoadedBed, wallFactor: number, rise: (depth_m: number) => number): BedStore | null {
  const { spec, figures, block, design } = bed;
  if (figures === null || figures.area_m2 <= 0 || spec.fillDepth_m <= 0) return null;
  const parts = bed.recipe.map(
    (layer, at): FillPart => ({
      loose_L: figures.layers[at]?.loose_L ?? 0,
      what: layer.isOwn || layer.materialId.startsWith('soil') ? 'own-soil' : layer.kind === 'mineral' ? 'stone' : 'mix',
    }),
  );
  const isReservoir = spec.watering === 'reservoir';
  const below_m = isReservoir ? (spec.reservoirDepth_m ?? 0) : 0;
  const basinFill_m = spec.watering === 'basin' ? (spec.basinFill_m ?? 0) : 0;
  const isFabric = /fabric/i.test(design.wallMaterial);
  const fillDepth_m = Math.max(0.02, spec.fillDepth_m - below_m);
  const shape = {
    bedId: bed.bed.id,
    area_m2: figures.area_m2,
    fillDepth_m,
    inGround: spec.kind === 'in-ground',
    covered: bed.bed.covered ?? block.covered,
    fabricWall_m2:
      isFabric && figures.wall_m2 !== null ? figures.wall_m2 * dryWallShare(spec.fillDepth_m, basinFill_m, spec.depth_m) : 0,
    wallFactor,
    availableShare: fillAvailableShare(parts, isTexture(block.texture) ? block.texture : 'loam'),
    free: freeStore(bed, figures.water_L),
  };
  return storeOfBed(shape, shape.free === null ? 0 : rise(fillDepth_m));
}

/** Share of the wall that has mix behind it and no water before it. */
const dryWallShare = (fill_m: number, standing_m: number, wall_m: number): number =>
  wall_m <= 0 ? 0 : Math.max(0, Math.min(fill_m, wall_m) - standing_m) / wall_m;

function freeStore({ spec }: LoadedBed, water_L: number) {
  if (spec.watering === 'reservoir') return { kind: 'reservoir' as const, capacity_L: water_L, fill_L: water_L, open_m2: 0 };
  if (spec.watering !== 'basin') return null;
  const basin = basinOfBed(spec);
  if (basin === undefined) return null;
  const bag = formOfBed(spec);
  const around_m2 = footprint_m2(outlineAt(basin, 0)) - footprint_m2(outlineAt(bag, 0));
  const rim_L = basinWater_L({ basin, bag, level_m: basin.depth_m });
  return { kind: 'basin' as const, capacity_L: Math.max(rim_L, water_L), fill_L: water_L, open_m2: Math.max(0, around_m2) };
}
