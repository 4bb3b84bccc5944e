import { requireRange } from '../errors.ts';
import { type Heap, heapVolume_m3 } from './stockpile.ts';

/** Share of a stack of logs that is wood. Common practice, no source (a 128 ft3 cord holds about 80 to 90 ft3 of wood). */
export const STACK_SOLID_SHARE = 0.65;

/**
 * Soil that a stacked wood core swallows: V = V_stack (1 - solid share) x share of the voids that get filled.
 * @throws InputError naming the field
 */
export function soilForVoids_L(stack_L: number, solidShare: number, voidFillShare: number): number {
  requireRange('stack_L', stack_L, 0, 1e9, 'L');
  requireRange('solidShare', solidShare, 0, 1, '');
  requireRange('voidFillShare', voidFillShare, 0, 1, '');
  return stack_L * (1 - solidShare) * voidFillShare;
}

export type MoundYieldInput = {
  readonly mound_m3: number;
  /** Share of the mound that is wood core. */
  readonly coreShare: number;
  readonly swellShare: number;
  /** Share of the loose soil lost in screening. */
  readonly screenLossShare: number;
};

export type MoundYield = {
  readonly soilBank_m3: number;
  readonly soilLooseUsable_m3: number;
  /** The core as it lies; rotted wood is a material too. */
  readonly core_m3: number;
};

/**
 * What comes out of a mound or bed that is taken down.
 *
 *   soil in place  V (1 - c);  usable loose soil  V (1 - c)(1 + w)(1 - l);  core  V c
 *
 *   V   volume of the mound                m3
 *   c   share of wood core                 -   0 to 1
 *   w   swell when dug                     -   0 to 1
 *   l   loss in screening                  -   0 to 1
 *
 * Source: definition.
 * @throws InputError naming the field
 */
export function moundYield(input: MoundYieldInput): MoundYield {
  requireRange('mound_m3', input.mound_m3, 0, 1e6, 'm3');
  requireRange('coreShare', input.coreShare, 0, 1, '');
  requireRange('swellShare', input.swellShare, 0, 1, '');
  requireRange('screenLossShare', input.screenLossShare, 0, 1, '');
  const soilBank_m3 = input.mound_m3 * (1 - input.coreShare);
  return {
    soilBank_m3,
    soilLooseUsable_m3: soilBank_m3 * (1 + input.swellShare) * (1 - input.screenLossShare),
    core_m3: input.mound_m3 * input.coreShare,
  };
}

/** The same for a heap measured by its shape. @throws InputError */
export function heapYield(heap: Heap, rest: Omit<MoundYieldInput, 'mound_m3'>): MoundYield & { readonly mound_m3: number } {
  const mound_m3 = heapVolume_m3(heap);
  return { mound_m3, ...moundYield({ ...rest, mound_m3 }) };
}
