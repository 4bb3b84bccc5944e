import { refuse, requirePositive, requireRange } from '../errors.ts';
import { computed, entry, library, type Working } from '../working.ts';
import { bestInDisc, centredInDisc } from './disc-lattice.ts';
import { plainArea_m2 } from './footprint.ts';
import type { Lattice } from './lattice.ts';
import { type Outline, type Point, requireOutline } from './outline.ts';
import { bestInOutline, centredInOutline } from './outline-lattice.ts';
import { rowsInOutline } from './outline-rows.ts';
import { bedRows } from './plants-in-row.ts';
import { squareInRectangle, staggeredInRectangle } from './rectangle-lattice.ts';

/** How plants stand: a lattice of one spacing, or rows with their own distance. */
export type Spacing =
  | { readonly pattern: Lattice; readonly spacing_m: number }
  | { readonly pattern: 'rows'; readonly rowSpacing_m: number; readonly inRow_m: number };

export type PlantCountInput = {
  readonly outline: Outline;
  readonly spacing: Spacing;
  /** Distance of plants from the edge; half the spacing (in rows: half the distance in the row) unless told. */
  readonly edgeMargin_m?: number;
  /** The most plants, or a plant in the middle and the rest laid out from it. */
  readonly layout?: 'most' | 'centred';
};

export type PlantCount = {
  readonly plants: number;
  readonly points_m: readonly Point[];
  /** True when nothing fits with the margin and one plant in the middle is offered instead. */
  readonly isOneInTheMiddle: boolean;
};

/**
 * Exact plants of a bed of any outline, and where they stand (metres from the bed's middle, along and across).
 * When nothing fits with the margin, one plant in the middle is offered and told (our rule).
 * @throws InputError naming the field
 */
export function plantsInBed(input: PlantCountInput): PlantCount {
  requireOutline(input.outline);
  if (input.edgeMargin_m !== undefined) requireRange('edgeMargin_m', input.edgeMargin_m, 0, 100, 'm');
  requireCountable(input);
  const points_m = input.spacing.pattern === 'rows' ? rowPoints(input, input.spacing) : latticePoints(input, input.spacing);
  if (points_m.length > 0) return { plants: points_m.length, points_m, isOneInTheMiddle: false };
  return { plants: 1, points_m: [[0, 0]], isOneInTheMiddle: true };
}

/** More plants than this in one bed are a slip of the pen. */
const MOST_PLANTS = 200_000;

function requireCountable({ outline, spacing }: PlantCountInput): void {
  const [path, along_m, across_m] =
    spacing.pattern === 'rows'
      ? (['inRow_m', spacing.inRow_m, spacing.rowSpacing_m] as const)
      : (['spacing_m', spacing.spacing_m, spacing.spacing_m] as const);
  requirePositive(path, along_m, 'm');
  requirePositive('rowSpacing_m', across_m, 'm');
  if (plainArea_m2(outline) / (along_m * across_m) > MOST_PLANTS)
    refuse(path, 'too-small', `This is more than ${MOST_PLANTS} plants in one bed: take a wider spacing.`);
}

type LatticeSpacing = Exclude<Spacing, { readonly pattern: 'rows' }>;
type RowSpacing = Extract<Spacing, { readonly pattern: 'rows' }>;

function latticePoints(input: PlantCountInput, { pattern, spacing_m }: LatticeSpacing): readonly Point[] {
  const margin = { edgeMargin_m: input.edgeMargin_m ?? spacing_m / 2 };
  const { outline } = input;
  if (outline.shape === 'round') {
    const disc = { diameter_m: outline.diameter_m, spacing_m, ...margin, lattice: pattern };
    return (input.layout === 'centred' ? centredInDisc(disc) : bestInDisc(disc)).points_m;
  }
  if (outline.shape === 'rectangle') {
    const rectangle = { length_m: outline.length_m, width_m: outline.width_m, spacing_m, ...margin };
    return (pattern === 'square' ? squareInRectangle(rectangle) : staggeredInRectangle(rectangle)).points_m;
  }
  const free = { outline, lattice: pattern, spacing_m, ...margin };
  return (input.layout === 'centred' ? centredInOutline(free) : bestInOutline(free)).points_m;
}

function rowPoints(input: PlantCountInput, { rowSpacing_m, inRow_m }: RowSpacing): readonly Point[] {
  const { outline } = input;
  if (outline.shape !== 'rectangle')
    return rowsInOutline({ outline, rowSpacing_m, inRow_m, edgeMargin_m: input.edgeMargin_m ?? inRow_m / 2 }).points_m;
  const margin = input.edgeMargin_m === undefined ? {} : { sideMargin_m: input.edgeMargin_m, endMargin_m: input.edgeMargin_m };
  const { rows, plantsPerRow } = bedRows({
    length_m: outline.length_m,
    width_m: outline.width_m,
    rowSpacing_m,
    inRow_m,
    ...margin,
  });
  return Array.from({ length: rows }, (_, row) =>
    Array.from(
      { length: plantsPerRow },
      (__, at): Point => [(at - (plantsPerRow - 1) / 2) * inRow_m, (row - (rows - 1) / 2) * rowSpacing_m],
    ),
  ).flat();
}

const words: Readonly<Record<Spacing['pattern'], string>> = {
  square: 'square lattice',
  staggered: 'staggered lattice',
  rows: 'rows',
};

export function explainPlants(input: PlantCountInput): Working {
  const count = plantsInBed(input);
  const result = { value: count.plants, unit: 'plants' };
  const { spacing } = input;
  const distance = spacing.pattern === 'rows' ? spacing.inRow_m : spacing.spacing_m;
  return {
    title: 'Plants in the bed',
    formula: `points of a ${words[spacing.pattern]} inside the outline, at least the margin from its edge`,
    symbols: [
      {
        symbol: 's',
        name: spacing.pattern === 'rows' ? 'spacing in the row' : 'spacing',
        figure: { value: distance, unit: 'm_short' },
        origin: library('the crop or your own spacing'),
      },
      ...(spacing.pattern === 'rows'
        ? [
            {
              symbol: 'r',
              name: 'row distance',
              figure: { value: spacing.rowSpacing_m, unit: 'm_short' },
              origin: library('the crop or your own spacing'),
            },
          ]
        : []),
      {
        symbol: 'e',
        name: 'margin to the edge',
        figure: { value: input.edgeMargin_m ?? distance / 2, unit: 'm_short' },
        origin: input.edgeMargin_m === undefined ? computed('half the spacing') : entry(),
      },
    ],
    steps: [{ text: 'Points counted one by one', figures: words[spacing.pattern], result }],
    sources: ['Counting'],
    notes: count.isOneInTheMiddle ? ['Nothing fits with this margin: one plant in the middle is counted.'] : [],
    result,
  };
}
