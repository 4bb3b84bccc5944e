import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { bed } from './beds.ts';
import { flag, key, revision } from './columns.ts';
import { material } from './materials.ts';

/** One supply with its pump and tubing. Heights are above the site's zero level. */
export const waterLine = sqliteTable('water_line', {
  id: key(),
  name: text('name').notNull().unique(),
  supply: text('supply', { enum: ['reservoir', 'tap'] }).notNull(),
  supplySource: text('supply_source', { enum: ['public', 'well', 'surface', 'roof', 'reuse'] })
    .notNull()
    .default('public'),
  reservoir_L: real('reservoir_L'),
  reservoirArea_m2: real('reservoir_area_m2'),
  reservoirBase_m: real('reservoir_base_m'),
  highLevel_m: real('high_level_m'),
  lowLevel_m: real('low_level_m'),
  usableShare: real('usable_share').notNull().default(0.9),
  floatTopUp_L_per_day: real('float_top_up_L_per_day'),
  tapHead_m: real('tap_head_m'),
  tapFlow_L_per_min: real('tap_flow_L_per_min'),
  vented: flag('vented').notNull().default(false),
  ventHole_m: real('vent_hole_m'),
  foodGrade: flag('food_grade').notNull().default(false),
  reserveHead_m: real('reserve_head_m').notNull().default(0.1),
  water_C: real('water_C').notNull().default(20),
  roofArea_m2: real('roof_area_m2'),
  roofShare: real('roof_share'),
  firstFlush_mm: real('first_flush_mm'),
  /** Level in the reservoir on the day it was last looked at. */
  level_L: real('level_L'),
  levelDate: text('level_date'),
  notes: text('notes').notNull().default(''),
  revision: revision(),
});

export const pump = sqliteTable('pump', {
  id: key(),
  lineId: text('line_id')
    .notNull()
    .references(() => waterLine.id, { onDelete: 'cascade' }),
  name: text('name').notNull(),
  materialId: text('material_id').references(() => material.id),
  curveKind: text('curve_kind', { enum: ['points', 'three-points', 'one-point', 'rated'] }).notNull(),
  power_W: real('power_W').notNull(),
  inletHeight_m: real('inlet_height_m').notNull().default(0),
  count: integer('count').notNull().default(1),
});

export const pumpPoint = sqliteTable('pump_point', {
  id: key(),
  pumpId: text('pump_id')
    .notNull()
    .references(() => pump.id, { onDelete: 'cascade' }),
  flow_L_per_h: real('flow_L_per_h').notNull(),
  head_m: real('head_m').notNull(),
});

/** A place on the line: the source, a tee, or an end. The line is a tree; every node but the source has one feeding run. */
export const lineNode = sqliteTable(
  'line_node',
  {
    id: key(),
    lineId: text('line_id')
      .notNull()
      .references(() => waterLine.id, { onDelete: 'cascade' }),
    kind: text('kind', { enum: ['source', 'tee', 'end'] }).notNull(),
    name: text('name').notNull(),
    x_m: real('x_m').notNull().default(0),
    y_m: real('y_m').notNull().default(0),
    elevation_m: real('elevation_m').notNull().default(0),
    zone: integer('zone').notNull().default(1),
    position: integer('position').notNull().default(0),
  },
  (t) => [index('line_node_line').on(t.lineId)],
);

/** A length of tube from one node to the next, away from the source. */
export const lineRun = sqliteTable(
  'line_run',
  {
    id: key(),
    lineId: text('line_id')
      .notNull()
      .references(() => waterLine.id, { onDelete: 'cascade' }),
    fromNodeId: text('from_node_id')
      .notNull()
      .references(() => lineNode.id, { onDelete: 'cascade' }),
    toNodeId: text('to_node_id')
      .notNull()
      .references(() => lineNode.id, { onDelete: 'cascade' }),
    length_m: real('length_m').notNull(),
    insideDiameter_m: real('inside_diameter_m').notNull(),
    roughness_m: real('roughness_m').notNull().default(0.0000015),
    /** Sum of fitting coefficients on this run (bends, where flow divides), on its own velocity head; a barbed tee's bore adds its own. */
    fittingK: real('fitting_K').notNull().default(0),
    teeBore_m: real('tee_bore_m'),
    materialId: text('material_id').references(() => material.id),
  },
  (t) => [index('line_run_line').on(t.lineId)],
);

/** Where water leaves the line to a bed. */
export const lineOutlet = sqliteTable(
  'line_outlet',
  {
    id: key(),
    lineId: text('line_id')
      .notNull()
      .references(() => waterLine.id, { onDelete: 'cascade' }),
    nodeId: text('node_id')
      .notNull()
      .references(() => lineNode.id, { onDelete: 'cascade' }),
    bedId: text('bed_id').references(() => bed.id),
    kind: text('kind', { enum: ['open-end', 'drip', 'hand'] }).notNull(),
    outlet_m: real('outlet_m').notNull(),
    bore_m: real('bore_m').notNull(),
    drowned: flag('drowned').notNull().default(false),
    openK: real('open_K').notNull().default(15),
    /** The valve as set: its loss coefficient; empty means fully open. */
    setK: real('set_K'),
    calibrated: flag('calibrated').notNull().default(false),
    measured_L_per_h: real('measured_L_per_h'),
    measuredDate: text('measured_date'),
    /** Wanted share of the line's flow relative to the others. */
    wantShare: real('want_share').notNull().default(1),
    emitters: integer('emitters'),
    emitter_L_per_h: real('emitter_L_per_h'),
    emitterExponent: real('emitter_exponent'),
    emitterHead_m: real('emitter_head_m'),
    emitterCv: real('emitter_Cv'),
    /** Water wanted in one run; empty takes what the bed's basin holds when filled. */
    fill_L: real('fill_L'),
    position: integer('position').notNull().default(0),
  },
  (t) => [index('line_outlet_line').on(t.lineId), index('line_outlet_bed').on(t.bedId)],
);

/** A setting of one valve that was read: turns from shut, and the loss coefficient fitted to the flow seen. */
export const valveReading = sqliteTable(
  'valve_reading',
  {
    id: key(),
    outletId: text('outlet_id')
      .notNull()
      .references(() => lineOutlet.id, { onDelete: 'cascade' }),
    turns: real('turns').notNull(),
    flow_L_per_h: real('flow_L_per_h').notNull(),
    lossK: real('loss_K').notNull(),
    date: text('date').notNull(),
  },
  (t) => [index('valve_reading_outlet').on(t.outletId)],
);

/** What the timer does in a month. */
export const timerEvent = sqliteTable('timer_event', {
  id: key(),
  lineId: text('line_id')
    .notNull()
    .references(() => waterLine.id, { onDelete: 'cascade' }),
  month: integer('month').notNull(),
  every_days: integer('every_days').notNull(),
  start: text('start').notNull(),
  run_min: real('run_min').notNull(),
  zone: integer('zone').notNull().default(1),
});

export const powerSource = sqliteTable('power_source', {
  id: key(),
  lineId: text('line_id')
    .notNull()
    .references(() => waterLine.id, { onDelete: 'cascade' }),
  kind: text('kind', { enum: ['mains', 'battery', 'engine'] }).notNull(),
  battery: text('battery', { enum: ['lead-acid', 'lithium-iron-phosphate', 'other-lithium'] }),
  capacity_Wh: real('capacity_Wh'),
  usableShare: real('usable_share'),
  inverterShare: real('inverter_share'),
  selfDischarge_share_per_month: real('self_discharge_share_per_month'),
  controller_W: real('controller_W').notNull().default(0),
  idle_W: real('idle_W').notNull().default(0),
  idleOff_h: real('idle_off_h'),
  panel_W: real('panel_W'),
  panelLossShare: real('panel_loss_share'),
  /** Peak-sun hours in the month of use. */
  peakSun_h: real('peak_sun_h'),
  /** Most the source gives at once; lines are staggered to stay under it. */
  limit_W: real('limit_W'),
});

/** A reading of the irrigation water's quality. */
export const waterTest = sqliteTable('water_test', {
  id: key(),
  lineId: text('line_id').references(() => waterLine.id, { onDelete: 'set null' }),
  date: text('date').notNull(),
  point: text('point').notNull().default(''),
  analyte: text('analyte').notNull(),
  value: real('value').notNull(),
  unit: text('unit').notNull(),
  method: text('method').notNull().default(''),
  laboratory: text('laboratory').notNull().default(''),
  action: text('action').notNull().default(''),
});

/** Water given by hand or by the line, as it happened. */
export const waterEntry = sqliteTable('water_entry', {
  id: key(),
  date: text('date').notNull(),
  lineId: text('line_id').references(() => waterLine.id, { onDelete: 'set null' }),
  bedId: text('bed_id').references(() => bed.id, { onDelete: 'set null' }),
  volume_L: real('volume_L').notNull(),
  run_min: real('run_min'),
  note: text('note').notNull().default(''),
});

/** A part of a line from the day it was put in to the day it came out: what wears has a life, and becomes a need when it is due. */
export const linePart = sqliteTable(
  'line_part',
  {
    id: key(),
    lineId: text('line_id')
      .notNull()
      .references(() => waterLine.id, { onDelete: 'cascade' }),
    materialId: text('material_id')
      .notNull()
      .references(() => material.id),
    /** In the material's base unit. */
    amount: real('amount').notNull(),
    price_minor: integer('price_minor').notNull().default(0),
    /** How much of the amount has a price that nobody knows: it is not in the price above. */
    unpricedAmount: real('unpriced_amount').notNull().default(0),
    life_years: real('life_years').notNull(),
    installedDate: text('installed_date').notNull(),
    removedDate: text('removed_date'),
    reason: text('reason').notNull().default(''),
  },
  (t) => [index('line_part_line').on(t.lineId)],
);
