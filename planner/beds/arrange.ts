/** A bed on the site: its centre and the half sizes of its upright box as it lies turned. */
export type Placed = {
  readonly bedId: string;
  readonly x_m: number;
  readonly y_m: number;
  readonly halfX_m: number;
  readonly halfY_m: number;
};

export type Shift = { readonly bedId: string; readonly x_m: number; readonly y_m: number };
export type AlignTo = 'west' | 'east' | 'north' | 'south' | 'middle-x' | 'middle-y';

/** Half sizes of the upright box around a bed that lies turned. */
export function turnedBox(
  length_m: number,
  width_m: number,
  turn_deg: number,
): { readonly halfX_m: number; readonly halfY_m: number } {
  const angle = (turn_deg * Math.PI) / 180;
  const [cos, sin] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  return { halfX_m: (length_m * cos + width_m * sin) / 2, halfY_m: (length_m * sin + width_m * cos) / 2 };
}

/** Moves beds so that one edge of all, or their middles, lie on one line: the outermost edge, or the mean middle. */
export function alignBeds(beds: readonly Placed[], to: AlignTo): readonly Shift[] {
  if (beds.length < 2) return [];
  const most = (read: (bed: Placed) => number): number => Math.max(...beds.map(read));
  const mean = (read: (bed: Placed) => number): number => beds.reduce((sum, bed) => sum + read(bed), 0) / beds.length;
  const west = -most((bed) => bed.halfX_m - bed.x_m);
  const south = -most((bed) => bed.halfY_m - bed.y_m);
  const east = most((bed) => bed.x_m + bed.halfX_m);
  const north = most((bed) => bed.y_m + bed.halfY_m);
  const ways: Readonly<Record<AlignTo, (bed: Placed) => Omit<Shift, 'bedId'>>> = {
    west: (bed) => ({ x_m: west + bed.halfX_m, y_m: bed.y_m }),
    east: (bed) => ({ x_m: east - bed.halfX_m, y_m: bed.y_m }),
    south: (bed) => ({ x_m: bed.x_m, y_m: south + bed.halfY_m }),
    north: (bed) => ({ x_m: bed.x_m, y_m: north - bed.halfY_m }),
    'middle-x': (bed) => ({ x_m: mean((each) => each.x_m), y_m: bed.y_m }),
    'middle-y': (bed) => ({ x_m: bed.x_m, y_m: mean((each) => each.y_m) }),
  };
  return beds.map((bed) => ({ bedId: bed.bedId, ...ways[to](bed) }));
}

/**
 * Makes the paths between beds equal along one direction; the two outermost stay. With less room than the beds take the
 * paths come out negative: the beds then overlap evenly, as they did before.
 */
export function spaceEvenly(beds: readonly Placed[], along: 'x' | 'y'): readonly Shift[] {
  if (beds.length < 3) return [];
  const at = (bed: Placed): number => (along === 'x' ? bed.x_m : bed.y_m);
  const half = (bed: Placed): number => (along === 'x' ? bed.halfX_m : bed.halfY_m);
  const sorted = beds.toSorted((a, b) => at(a) - at(b) || a.bedId.localeCompare(b.bedId));
  const [first, last] = [sorted[0], sorted[sorted.length - 1]];
  if (first === undefined || last === undefined) return [];
  const taken_m = sorted.reduce((sum, bed) => sum + 2 * half(bed), 0);
  const path_m = (at(last) + half(last) - (at(first) - half(first)) - taken_m) / (sorted.length - 1);
  let edge_m = at(first) - half(first);
  return sorted.map((bed) => {
    const middle_m = edge_m + half(bed);
    edge_m = middle_m + half(bed) + path_m;
    return along === 'x' ? { bedId: bed.bedId, x_m: middle_m, y_m: bed.y_m } : { bedId: bed.bedId, x_m: bed.x_m, y_m: middle_m };
  });
}

export type Snap = {
  readonly dx_m: number;
  readonly dy_m: number;
  readonly lineX_m: number | null;
  readonly lineY_m: number | null;
};

/**
 * Draws a moved bed to the edges and middles of its neighbours, else to a grid, when they are within reach; tells the line
 * it was drawn to.
 */
export function snapMove(moved: Placed, others: readonly Placed[], reach_m: number, grid_m: number | null): Snap {
  const x = nearest(
    [moved.x_m - moved.halfX_m, moved.x_m, moved.x_m + moved.halfX_m],
    others.flatMap((bed) => [bed.x_m - bed.halfX_m, bed.x_m, bed.x_m + bed.halfX_m]),
    reach_m,
  );
  const y = nearest(
    [moved.y_m - moved.halfY_m, moved.y_m, moved.y_m + moved.halfY_m],
    others.flatMap((bed) => [bed.y_m - bed.halfY_m, bed.y_m, bed.y_m + bed.halfY_m]),
    reach_m,
  );
  const toGrid = (value: number): number => (grid_m === null ? 0 : Math.round(value / grid_m) * grid_m - value);
  return {
    dx_m: x?.by ?? toGrid(moved.x_m - moved.halfX_m),
    dy_m: y?.by ?? toGrid(moved.y_m - moved.halfY_m),
    lineX_m: x?.line ?? null,
    lineY_m: y?.line ?? null,
  };
}

function nearest(
  own: readonly number[],
  lines: readonly number[],
  reach_m: number,
): { readonly by: number; readonly line: number } | undefined {
  let best: { readonly by: number; readonly line: number } | undefined;
  for (const line of lines) {
    for (const value of own) {
      const by = line - value;
      if (Math.abs(by) <= reach_m && (best === undefined || Math.abs(by) < Math.abs(best.by))) best = { by, line };
    }
  }
  return best;
}
