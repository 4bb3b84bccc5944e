import { bestInDisc, centredInDisc } from '../../../planner/beds/disc-lattice.ts';
import { plantsForArea, rowPitch_m, STAGGERED_TO_SQUARE, unboundedDensity_per_m2 } from '../../../planner/beds/lattice.ts';
import { mostCircles, packingRadiusRatio } from '../../../planner/beds/packing-bound.ts';
import { bedRows, plantsInRow } from '../../../planner/beds/plants-in-row.ts';
import { squareInRectangle, staggeredInRectangle } from '../../../planner/beds/rectangle-lattice.ts';
import { offsetGain } from '../../../planner/season/offset-gain.ts';
import { convert, type UnitSymbol } from '../../../planner/units/convert.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';

type Numbers = Readonly<Record<string, number>>;

const m = (value: number | undefined, from: UnitSymbol): number => convert(value ?? Number.NaN, from, 'm');
const numbers = (answer: (inputs: Numbers) => CaseValues) => forEach<Numbers>(answer);

/** The same inputs under another name: `edge_margins_cm` where a list of margins is given. */
const rectangle = ({ bed_length_ft, bed_width_ft, spacing_in }: Numbers, margin_in: number | undefined) => ({
  length_m: m(bed_length_ft, 'ft'),
  width_m: m(bed_width_ft, 'ft'),
  spacing_m: m(spacing_in, 'in'),
  edgeMargin_m: m(margin_in, 'in'),
});

const lattices = ['square', 'staggered'] as const;

/** Spacings over which the handbook's mean is taken: 3 to 18 in, in the handbook's bed of 5 ft across. */
const BED_WIDTH_FT = 5;
const SPACINGS_IN = [3, 4, 5, 6, 8, 9, 10, 12, 15, 18];

const lattice = (container_to_circle_ratio: number, withMargin: boolean): number =>
  Math.max(
    ...lattices.map(
      (kind) =>
        bestInDisc({
          diameter_m: withMargin ? container_to_circle_ratio : container_to_circle_ratio - 1,
          spacing_m: 1,
          edgeMargin_m: withMargin ? 0.5 : 0,
          lattice: kind,
        }).plants,
    ),
  );

/** Most circles, and the best lattice: a ratio D/s with half a spacing of margin and D/s + 1 with none hold the same points. */
const packing = numbers(({ container_to_circle_ratio = Number.NaN }) => ({
  most_circles: mostCircles(container_to_circle_ratio) ?? null,
  lattice_best: lattice(container_to_circle_ratio, true),
}));

export const plantingLayouts: Registry = {
  'planting.pl-square-carrot-block': numbers((i) => ({
    plants_in_block: squareInRectangle(rectangle(i, i['edge_margin_in'])).plants,
    plants_in_row: plantsInRow({ length_m: m(i['single_row_length_ft'], 'ft'), spacing_m: m(i['spacing_in'], 'in') }),
  })),
  'planting.pl-square-edges': numbers((i) => ({ plants: squareInRectangle(rectangle(i, i['edge_margins_in'])).plants })),
  'planting.pl-rows': numbers((i) => {
    const rows = bedRows({
      length_m: m(i['bed_length_ft'], 'ft'),
      width_m: m(i['bed_width_in'], 'in'),
      rowSpacing_m: m(i['row_spacing_in'], 'in'),
      sideMargin_m: m(i['side_margin_in'], 'in'),
      inRow_m: m(i['in_row_in'], 'in'),
      endMargin_m: m(i['end_margin_in'], 'in'),
    });
    return { rows: rows.rows, plants_per_row: rows.plantsPerRow, plants: rows.plants };
  }),
  'planting.pl-density': (({ spacing_cm }: { readonly spacing_cm: number | readonly number[] }) => {
    const density = (kind: (typeof lattices)[number]) =>
      Array.isArray(spacing_cm)
        ? spacing_cm.map((each: number) => unboundedDensity_per_m2(kind, m(each, 'cm')))
        : unboundedDensity_per_m2(kind, m(spacing_cm as number, 'cm'));
    return { square_per_m2: density('square'), triangular_per_m2: density('staggered'), ratio: STAGGERED_TO_SQUARE };
  }) as Registry[string],
  'planting.pl-offset-row-factor': numbers(({ spacing_cm }) => {
    const spacing_m = m(spacing_cm, 'cm');
    const pitch_m = rowPitch_m('staggered', spacing_m);
    return { row_pitch_factor: rowPitch_m('staggered', 1), row_pitch_cm: convert(pitch_m, 'm', 'cm') };
  }),
  'planting.pl-offset-finite-gain': numbers(({ bed_area_ft2 = Number.NaN }) => {
    const width_m = m(BED_WIDTH_FT, 'ft');
    const length_m = convert(bed_area_ft2, 'ft2', 'm2') / width_m;
    const spacings_m = SPACINGS_IN.map((each) => m(each, 'in'));
    return { offset_to_square: offsetGain({ shape: 'rectangle', length_m, width_m }, spacings_m) };
  }),
  'planting.pl-rect-tri-4x8ft-12in': numbers((i) => {
    const bed = {
      length_m: m(i['bed_length_cm'], 'cm'),
      width_m: m(i['bed_width_cm'], 'cm'),
      spacing_m: m(i['spacing_cm'], 'cm'),
      edgeMargin_m: m(i['edge_margins_cm'], 'cm'),
    };
    return { square_plants: squareInRectangle(bed).plants, triangular_plants: staggeredInRectangle(bed).plants };
  }),
  'planting.pl-round80-10cm-half-margin': numbers((i) => {
    const disc = (kind: (typeof lattices)[number]) => ({
      diameter_m: m(i['diameter_cm'], 'cm'),
      spacing_m: m(i['spacing_cm'], 'cm'),
      edgeMargin_m: m(i['edge_margin_cm'], 'cm'),
      lattice: kind,
    });
    return {
      square_max: bestInDisc(disc('square')).plants,
      triangular_max: bestInDisc(disc('staggered')).plants,
      square_centred: centredInDisc(disc('square')).plants,
      triangular_centred: centredInDisc(disc('staggered')).plants,
    };
  }),
  'planting.pl-boundary-tolerance': numbers((i) => ({
    triangular_centred: centredInDisc({
      diameter_m: m(i['diameter_cm'], 'cm'),
      spacing_m: m(i['spacing_cm'], 'cm'),
      edgeMargin_m: m(i['edge_margin_cm'], 'cm'),
      lattice: 'staggered',
    }).plants,
  })),
  'planting.pl-circle-packing-bound': packing,
  'planting.pl-circle-packing-21': packing,
  'planting.pl-circle-packing-table': numbers(({ circles = Number.NaN }) => ({ radius_ratio: packingRadiusRatio(circles) })),
  'planting.pl-100ft-georgia': numbers((i) => ({
    plants: plantsInRow({ length_m: m(i['row_length_ft'], 'ft'), spacing_m: m(i['in_row_in'], 'in') }),
  })),
  'planting.pl-10ft-maine': numbers((i) => {
    const row = { length_m: m(i['row_length_ft'], 'ft'), spacing_m: m(i['in_row_in'], 'in') };
    return { half_spacing_ends: plantsInRow(row), plant_at_each_end: plantsInRow({ ...row, endMargin_m: 0 }) };
  }),
  'planting.pl-10ft-maine-tomato': numbers((i) => ({
    half_spacing_ends: plantsInRow({ length_m: m(i['row_length_ft'], 'ft'), spacing_m: m(i['in_row_in'], 'in') }),
  })),
  'planting.pl-per-acre': numbers((i) => ({
    plants_per_acre: plantsForArea(convert(1, 'acre', 'm2'), m(i['in_row_in'], 'in'), m(i['row_in'], 'in')),
  })),
};
