import { type BedForm, requireForm } from '../beds/form.ts';
import { heightHolding_m, plainVolume_L } from '../beds/volume.ts';
import { InputError, refuse, requireRange } from '../errors.ts';

/** How much of a layer: a depth, a share of the fill's depth, a settled volume, or whatever is left. */
export type LayerAmount =
  | { readonly kind: 'depth'; readonly depth_m: number }
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'volume'; readonly settled_L: number }
  | { readonly kind: 'rest' };

export type RecipeLayer = { readonly amount: LayerAmount; readonly settlingShare: number };

export type FillSpace = {
  readonly form: BedForm;
  /** Height above the floor where the fill begins: the top of a built-in reservoir, else 0. */
  readonly from_m: number;
  /** Height of the fill's surface above the floor. */
  readonly to_m: number;
};

export type FilledLayer = {
  readonly from_m: number;
  readonly to_m: number;
  readonly settled_L: number;
  readonly loose_L: number;
};

/** Depths agree when they differ by less than this share of the fill's depth. */
const AGREE = 1e-9;

/**
 * Turns a fill recipe, bottom up, into heights, settled volumes and loose volumes to place.
 *
 * Heights come first, from the geometry of the bed, since in a bed with leaning walls equal depths are not equal volumes;
 * then each layer's own settling: V_l = V_s/(1 - s). The settled layers add up to the fill's space to 1e-9. At most one
 * layer is "the rest"; without one the layers must reach the fill's surface.
 * Source: geometry; settling by definition.
 * @throws InputError at the layer that does not fit, with what would
 */
export function fillLayers(space: FillSpace, layers: readonly RecipeLayer[]): readonly FilledLayer[] {
  requireForm(space.form);
  requireSpace(space);
  if (layers.length === 0) return [];
  layers.forEach((layer, at) => {
    requireRange(`layers.${at}.settlingShare`, layer.settlingShare, 0, 0.9, '');
  });
  const rest = layers.findIndex((layer) => layer.amount.kind === 'rest');
  const another = layers.findLastIndex((layer) => layer.amount.kind === 'rest');
  if (another !== rest)
    refuse(`layers.${another}.amount`, 'second-rest', 'Only one layer can be the rest: give this one a depth or a volume.');
  const upward = levelsUp(space, layers.slice(0, rest === -1 ? layers.length : rest), rest === -1 ? 'reach' : 'below');
  const levels = rest === -1 ? upward : [...upward, ...levelsDown(space, layers, rest)];
  if (rest === -1) requireReached(space, levels, layers.length);
  return layers.map((layer, at): FilledLayer => {
    const from_m = levels[at] ?? space.from_m;
    const to_m = levels[at + 1] ?? space.to_m;
    if (to_m < from_m - AGREE * space.to_m) refuseFull(at, from_m, to_m);
    const settled_L = plainVolume_L(space.form, from_m, Math.max(from_m, to_m));
    return { from_m, to_m: Math.max(from_m, to_m), settled_L, loose_L: settled_L / (1 - layer.settlingShare) };
  });
}

function requireSpace(space: FillSpace): void {
  if (space.to_m > space.form.depth_m * (1 + AGREE))
    refuse(
      'fillDepth_m',
      'too-large',
      `The fill reaches ${shown(space.to_m)} m, above the wall: at most ${shown(space.form.depth_m)} m fits.`,
    );
  requireRange('fillDepth_m', space.to_m, 0, space.form.depth_m * (1 + AGREE), 'm');
  requireRange('reservoirDepth_m', space.from_m, 0, space.to_m, 'm');
}

/** Heights of the layer borders from the bottom of the fill up. */
function levelsUp(space: FillSpace, layers: readonly RecipeLayer[], mode: 'reach' | 'below'): number[] {
  const levels = [space.from_m];
  let at_m = space.from_m;
  layers.forEach((layer, at) => {
    const room_L = plainVolume_L(space.form, at_m, space.to_m);
    if (layer.amount.kind === 'volume') {
      requireRange(`layers.${at}.amount`, layer.amount.settled_L, 0, 1e9, 'L');
      if (layer.amount.settled_L > room_L * (1 + 1e-6))
        refuse(
          `layers.${at}.amount`,
          'too-large',
          `${shown(layer.amount.settled_L)} L is more than is left in the bed: at most ${shown(room_L)} L fits.`,
        );
      const held_L = Math.min(
        plainVolume_L(space.form, 0, space.to_m),
        plainVolume_L(space.form, 0, at_m) + layer.amount.settled_L,
      );
      at_m = heightHolding_m(space.form, held_L);
    } else at_m += depthOf_m(space, layer.amount, at);
    const over_m = at_m - space.to_m;
    if (over_m > AGREE * space.to_m && mode === 'below') refuseFull(at, at_m - over_m, at_m);
    levels.push(at_m);
  });
  return levels;
}

/** Heights of the borders above "the rest", from the fill's surface down, given bottom up. */
function levelsDown(space: FillSpace, layers: readonly RecipeLayer[], rest: number): number[] {
  const levels: number[] = [space.to_m];
  let at_m = space.to_m;
  for (const [at, { amount }] of [...layers.entries()].slice(rest + 1).reverse()) {
    if (amount.kind === 'volume') {
      requireRange(`layers.${at}.amount`, amount.settled_L, 0, 1e9, 'L');
      const below_L = plainVolume_L(space.form, 0, at_m) - amount.settled_L;
      if (below_L < 0)
        refuse(`layers.${at}.amount`, 'too-large', `${shown(amount.settled_L)} L is more than is left in the bed.`);
      at_m = heightHolding_m(space.form, below_L);
    } else at_m -= depthOf_m(space, amount, at);
    levels.unshift(at_m);
  }
  return levels;
}

function depthOf_m(space: FillSpace, amount: LayerAmount, at: number): number {
  if (amount.kind === 'depth') {
    requireRange(`layers.${at}.amount`, amount.depth_m, 0, 5, 'm');
    return amount.depth_m;
  }
  if (amount.kind === 'share') {
    requireRange(`layers.${at}.amount`, amount.share, 0, 1, '');
    return amount.share * (space.to_m - space.from_m);
  }
  return 0;
}

function requireReached(space: FillSpace, levels: readonly number[], count: number): void {
  const top_m = levels[levels.length - 1] ?? 0;
  const short_m = space.to_m - top_m;
  if (Math.abs(short_m) <= Math.max(AGREE * space.to_m, 1e-7)) return;
  const path = `layers.${count - 1}.amount`;
  const by = `${shown(Math.abs(short_m))} m`;
  const message =
    short_m > 0
      ? `The layers end ${by} below the fill's surface: add ${by}, or make one layer the rest.`
      : `The layers rise ${by} above the fill's surface: take ${by} away, or make one layer the rest.`;
  throw new InputError([{ path, code: 'does-not-sum', message }]);
}

function refuseFull(at: number, from_m: number, to_m: number): never {
  return refuse(
    `layers.${at}.amount`,
    'does-not-fit',
    `No room is left for this layer: the others take ${shown(Math.abs(from_m - to_m))} m too much.`,
  );
}

const shown = (value: number): string => String(Number(value.toPrecision(4)));
