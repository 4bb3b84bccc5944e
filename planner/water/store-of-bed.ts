import type { BedStore, FreeStore } from './bed-store.ts';
import { supplyAt_mm_per_day } from './capillary-rise.ts';
import { type Texture, textureRetention, textureWater } from './textures.ts';

/** Water available in a potting or raised-bed mix, share of its volume; nursery guides advise 25 to 35 %. From memory. */
export const MIX_AVAILABLE_SHARE = 0.25;
/** Depth of loosened ground under a bed without a floor that roots may use. Common practice, no source. */
export const OPEN_GROUND_M = 0.6;
/** Height above free water over which a mix must carry it, as a share of the mix's depth. Common practice, no source. */
const RISE_SHARE = 2 / 3;
/** Mixes are taken to draw water up like this texture: no published row for peat and compost. Common practice, no source. */
const MIX_RISES_LIKE = 'sandy loam';

export type FillPart = { readonly loose_L: number; readonly what: 'own-soil' | 'mix' | 'stone' };

/** Water available in a bed's fill, by the volume of its layers; stone holds none. Own soil by the block's texture. */
export function fillAvailableShare(parts: readonly FillPart[], texture: Texture): number {
  const soil = textureWater[texture];
  const own = soil.fieldCapacityShare - soil.wiltingShare;
  const counted = parts.filter((part) => part.what !== 'stone' && part.loose_L > 0);
  const whole = counted.reduce((sum, part) => sum + part.loose_L, 0);
  if (whole <= 0) return own;
  const held = counted.reduce((sum, part) => sum + part.loose_L * (part.what === 'own-soil' ? own : MIX_AVAILABLE_SHARE), 0);
  return held / whole;
}

export type BedShape = {
  readonly bedId: string;
  readonly area_m2: number;
  readonly fillDepth_m: number;
  readonly inGround: boolean;
  readonly covered: boolean;
  /** Permeable wall above any standing water; 0 for a tight wall. */
  readonly fabricWall_m2: number;
  readonly wallFactor: number;
  readonly availableShare: number;
  readonly free: Omit<FreeStore, 'rise_mm_per_day'> | null;
};

/** Most that a mix draws up in a day from free water below it: what a sandy loam carries over two thirds of its depth. */
export function mixRise_mm_per_day(depth_m: number): number {
  const retention = textureRetention[MIX_RISES_LIKE];
  return retention === undefined ? 0 : supplyAt_mm_per_day(retention, 100 * RISE_SHARE * depth_m);
}

/**
 * A bed's stores out of its measures.
 * Source: see the parts; the choices are common practice, no source.
 */
export function storeOfBed(bed: BedShape, rise_mm_per_day: number): BedStore {
  return {
    bedId: bed.bedId,
    area_m2: bed.area_m2,
    rain_m2: bed.covered ? 0 : bed.area_m2,
    wall_m2: bed.fabricWall_m2,
    wallFactor: bed.wallFactor,
    depth_m: bed.inGround ? Math.max(bed.fillDepth_m, OPEN_GROUND_M) : bed.fillDepth_m,
    availableShare: bed.availableShare,
    free: bed.free === null ? null : { ...bed.free, rise_mm_per_day },
  };
}
