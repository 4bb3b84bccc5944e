import { sql } from 'drizzle-orm';
import { check, index, integer, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { flag, key, revision } from './columns.ts';
import { material } from './materials.ts';

export const sunClasses = ['full', 'light-shade', 'shade'] as const;
export const bedKinds = ['in-ground', 'framed', 'bag', 'trough', 'mound'] as const;
export const outlines = ['rectangle', 'round', 'oval', 'hexagon', 'polygon', 'half-ellipsoid', 'ridge'] as const;
export const wateringKinds = ['top', 'drip', 'basin', 'reservoir'] as const;

/** Beds that lie together. */
export const block = sqliteTable('block', {
  id: key(),
  code: text('code').notNull().unique(),
  name: text('name').notNull(),
  x_m: real('x_m').notNull().default(0),
  y_m: real('y_m').notNull().default(0),
  outline_m: text('outline_m', { mode: 'json' }).$type<readonly (readonly [number, number])[]>(),
  sun: text('sun', { enum: sunClasses }).notNull().default('full'),
  covered: flag('covered').notNull().default(false),
  texture: text('texture').notNull().default('loam'),
  notes: text('notes').notNull().default(''),
  position: integer('position').notNull().default(0),
  revision: revision(),
});

/** A way to build a bed. Lengths are outer top sizes; for a round outline length and width are the diameter. */
export const design = sqliteTable(
  'design',
  {
    id: key(),
    name: text('name').notNull().unique(),
    kind: text('kind', { enum: bedKinds }).notNull(),
    outline: text('outline', { enum: outlines }).notNull(),
    length_m: real('length_m').notNull(),
    width_m: real('width_m').notNull(),
    bottomLength_m: real('bottom_length_m'),
    bottomWidth_m: real('bottom_width_m'),
    polygon_m: text('polygon_m', { mode: 'json' }).$type<readonly (readonly [number, number])[]>(),
    depth_m: real('depth_m').notNull(),
    fillDepth_m: real('fill_depth_m').notNull(),
    topWidth_m: real('top_width_m'),
    watering: text('watering', { enum: wateringKinds }).notNull(),
    basinLength_m: real('basin_length_m'),
    basinWidth_m: real('basin_width_m'),
    basinDepth_m: real('basin_depth_m'),
    basinFill_m: real('basin_fill_m'),
    reservoirDepth_m: real('reservoir_depth_m'),
    overflow_m: real('overflow_m'),
    reservoirVoid_share: real('reservoir_void_share'),
    coreShare: real('core_share'),
    mulchMaterialId: text('mulch_material_id').references(() => material.id),
    mulchDepth_m: real('mulch_depth_m'),
    barrierOverlap_m: real('barrier_overlap_m'),
    trellis: flag('trellis').notNull().default(false),
    wallMaterial: text('wall_material').notNull().default(''),
    fillLife_years: real('fill_life_years').notNull().default(10),
    notes: text('notes').notNull().default(''),
    retired: flag('retired').notNull().default(false),
    revision: revision(),
  },
  (t) => [check('design_sizes', sql`${t.length_m} > 0 and ${t.width_m} > 0 and ${t.depth_m} > 0 and ${t.fillDepth_m} >= 0`)],
);

export const designPart = sqliteTable('design_part', {
  id: key(),
  designId: text('design_id')
    .notNull()
    .references(() => design.id, { onDelete: 'cascade' }),
  position: integer('position').notNull().default(0),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  /** In the material's base unit. */
  amount: real('amount').notNull(),
  life_years: real('life_years').notNull(),
  salvageShare: real('salvage_share').notNull().default(0),
});

/** The fill recipe, bottom up. */
export const designLayer = sqliteTable('design_layer', {
  id: key(),
  designId: text('design_id')
    .notNull()
    .references(() => design.id, { onDelete: 'cascade' }),
  position: integer('position').notNull(),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  amountKind: text('amount_kind', { enum: ['depth', 'share', 'volume', 'rest'] }).notNull(),
  /** m for depth, 0..1 for share, L for volume; not used for the rest. */
  amount: real('amount'),
  settlingShare: real('settling_share'),
});

/** Beds that are to be built of a design by a day. Building beds of the design takes them off. */
export const bedPlan = sqliteTable('bed_plan', {
  id: key(),
  designId: text('design_id')
    .notNull()
    .references(() => design.id, { onDelete: 'cascade' }),
  count: integer('count').notNull(),
  wantedDate: text('wanted_date').notNull(),
  note: text('note').notNull().default(''),
});

export const bed = sqliteTable(
  'bed',
  {
    id: key(),
    code: text('code').notNull(),
    name: text('name').notNull().default(''),
    blockId: text('block_id')
      .notNull()
      .references(() => block.id),
    designId: text('design_id')
      .notNull()
      .references(() => design.id),
    /** Centre on the site drawing, x to the east, y to the north. */
    x_m: real('x_m').notNull().default(0),
    y_m: real('y_m').notNull().default(0),
    turn_deg: real('turn_deg').notNull().default(0),
    position: integer('position').notNull().default(0),
    builtDate: text('built_date').notNull(),
    retiredDate: text('retired_date'),
    retiredBecause: text('retired_because'),
    place: text('place', { enum: ['ground', 'deck', 'balcony', 'roof'] })
      .notNull()
      .default('ground'),
    floorLimit_kg_per_m2: real('floor_limit_kg_per_m2'),
    sun: text('sun', { enum: sunClasses }),
    trellis: flag('trellis'),
    covered: flag('covered'),
    /** The bed's own measures over its design's; empty means as designed. */
    ownLength_m: real('own_length_m'),
    ownWidth_m: real('own_width_m'),
    ownDepth_m: real('own_depth_m'),
    ownFillDepth_m: real('own_fill_depth_m'),
    ownPolygon_m: text('own_polygon_m', { mode: 'json' }).$type<readonly (readonly [number, number])[]>(),
    ownBasinFill_m: real('own_basin_fill_m'),
    /** Height of the bed's outlet or rim above the site's zero level. */
    elevation_m: real('elevation_m').notNull().default(0),
    notes: text('notes').notNull().default(''),
    revision: revision(),
  },
  (t) => [
    uniqueIndex('bed_code').on(t.code).where(sql`${t.retiredDate} is null`),
    index('bed_block').on(t.blockId),
    index('bed_design').on(t.designId),
  ],
);

/** A part of a bed from the day it was put in to the day it came out. */
export const bedPart = sqliteTable(
  'bed_part',
  {
    id: key(),
    bedId: text('bed_id')
      .notNull()
      .references(() => bed.id, { onDelete: 'cascade' }),
    materialId: text('material_id')
      .notNull()
      .references(() => material.id),
    amount: real('amount').notNull(),
    price_minor: integer('price_minor').notNull().default(0),
    /** How much of the amount has a price that nobody knows: it is not in the price above. */
    unpricedAmount: real('unpriced_amount').notNull().default(0),
    life_years: real('life_years').notNull(),
    salvageShare: real('salvage_share').notNull().default(0),
    installedDate: text('installed_date').notNull(),
    removedDate: text('removed_date'),
    reason: text('reason').notNull().default(''),
  },
  (t) => [index('bed_part_bed').on(t.bedId)],
);

/** What was put into a bed, first fill and top-ups, by layer. */
export const bedFill = sqliteTable(
  'bed_fill',
  {
    id: key(),
    bedId: text('bed_id')
      .notNull()
      .references(() => bed.id, { onDelete: 'cascade' }),
    date: text('date').notNull(),
    kind: text('kind', { enum: ['first-fill', 'top-up', 'taken-out'] }).notNull(),
    position: integer('position').notNull().default(0),
    materialId: text('material_id')
      .notNull()
      .references(() => material.id),
    loose_L: real('loose_L').notNull(),
    cost_minor: integer('cost_minor').notNull().default(0),
    /** The part of the cost that stands at the price of the day, since it came out of no stock. */
    priced_minor: integer('priced_minor').notNull().default(0),
    /** How much of it has a price that nobody knows: it is not in the cost above. */
    unpriced_L: real('unpriced_L').notNull().default(0),
  },
  (t) => [index('bed_fill_bed').on(t.bedId)],
);

/** The fill recipe of one bed where it differs from the design's. */
export const bedLayer = sqliteTable('bed_layer', {
  id: key(),
  bedId: text('bed_id')
    .notNull()
    .references(() => bed.id, { onDelete: 'cascade' }),
  position: integer('position').notNull(),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  amountKind: text('amount_kind', { enum: ['depth', 'share', 'volume', 'rest'] }).notNull(),
  amount: real('amount'),
  settlingShare: real('settling_share'),
});

/** A named piece of a bed, as a span of its length from 0 to 1. */
export const bedShare = sqliteTable('bed_share', {
  id: key(),
  bedId: text('bed_id')
    .notNull()
    .references(() => bed.id, { onDelete: 'cascade' }),
  name: text('name').notNull(),
  fromShare: real('from_share').notNull(),
  toShare: real('to_share').notNull(),
});

/** How far the surface had dropped below the wanted fill on a day. */
export const bedMeasure = sqliteTable('bed_measure', {
  id: key(),
  bedId: text('bed_id')
    .notNull()
    .references(() => bed.id, { onDelete: 'cascade' }),
  date: text('date').notNull(),
  drop_m: real('drop_m').notNull(),
  note: text('note').notNull().default(''),
});

/** Soil or fill lying in a heap, measured by its shape. */
export const stockpile = sqliteTable('stockpile', {
  id: key(),
  name: text('name').notNull(),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  shape: text('shape', { enum: ['cone', 'half-ellipsoid', 'windrow'] }).notNull(),
  length_m: real('length_m').notNull(),
  width_m: real('width_m').notNull(),
  height_m: real('height_m').notNull(),
  measuredDate: text('measured_date').notNull(),
});
