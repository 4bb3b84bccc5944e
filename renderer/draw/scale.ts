/** A rectangle in metres: the part of the site, bed or section that a drawing shows. y grows upward (north). */
export type Extent_m = { readonly minX_m: number; readonly minY_m: number; readonly maxX_m: number; readonly maxY_m: number };

/** How metres become points of the drawing. The one scale function: the same both ways across, y turned over. */
export type Scale = {
  readonly perMetre: number;
  readonly width: number;
  readonly height: number;
  readonly x: (x_m: number) => number;
  readonly y: (y_m: number) => number;
  readonly length: (length_m: number) => number;
  readonly back: (point: { readonly x: number; readonly y: number }) => { readonly x_m: number; readonly y_m: number };
};

/** Fits an extent into a drawing of a given size, keeping its shape and centring it, with a margin in points. */
export function scaleTo(extent: Extent_m, size: { readonly width: number; readonly height: number }, margin = 24): Scale {
  const { minX_m, minY_m, maxX_m, maxY_m } = extent;
  const across_m = Math.max(maxX_m - minX_m, 1e-6);
  const up_m = Math.max(maxY_m - minY_m, 1e-6);
  const perMetre = Math.max(1e-9, Math.min((size.width - 2 * margin) / across_m, (size.height - 2 * margin) / up_m));
  const left = (size.width - across_m * perMetre) / 2;
  const top = (size.height - up_m * perMetre) / 2;
  return {
    perMetre,
    width: size.width,
    height: size.height,
    x: (x_m) => left + (x_m - minX_m) * perMetre,
    y: (y_m) => top + (maxY_m - y_m) * perMetre,
    length: (length_m) => length_m * perMetre,
    back: ({ x, y }) => ({ x_m: minX_m + (x - left) / perMetre, y_m: maxY_m - (y - top) / perMetre }),
  };
}

/** The smallest extent that holds all points; undefined for none. */
export function extentOf(points: readonly { readonly x_m: number; readonly y_m: number }[]): Extent_m | undefined {
  if (points.length === 0) return undefined;
  return points.reduce<Extent_m>(
    (all, { x_m, y_m }) => ({
      minX_m: Math.min(all.minX_m, x_m),
      minY_m: Math.min(all.minY_m, y_m),
      maxX_m: Math.max(all.maxX_m, x_m),
      maxY_m: Math.max(all.maxY_m, y_m),
    }),
    {
      minX_m: Number.POSITIVE_INFINITY,
      minY_m: Number.POSITIVE_INFINITY,
      maxX_m: Number.NEGATIVE_INFINITY,
      maxY_m: Number.NEGATIVE_INFINITY,
    },
  );
}

/** An extent with room around it, as a share of its larger side. */
export function widened(extent: Extent_m, share: number): Extent_m {
  const room_m = share * Math.max(extent.maxX_m - extent.minX_m, extent.maxY_m - extent.minY_m);
  return {
    minX_m: extent.minX_m - room_m,
    minY_m: extent.minY_m - room_m,
    maxX_m: extent.maxX_m + room_m,
    maxY_m: extent.maxY_m + room_m,
  };
}
