import { index, integer, real, sqliteTable, text, uniqueIndex } from 'drizzle-orm/sqlite-core';
import { flag, key, revision } from './columns.ts';

export const baseUnits = ['L', 'kg', 'count', 'm', 'm2'] as const;

/** Anything bought, dug or used. Amounts everywhere are in its base unit. Shares are 0 to 1 of the material as handled. */
export const material = sqliteTable('material', {
  id: key(),
  name: text('name').notNull().unique(),
  kind: text('kind').notNull(),
  baseUnit: text('base_unit', { enum: baseUnits }).notNull(),
  dryDensity_kg_per_m3: real('dry_density_kg_per_m3'),
  moistDensity_kg_per_m3: real('moist_density_kg_per_m3'),
  moistureShare: real('moisture_share'),
  capacityShare: real('capacity_share'),
  porosityShare: real('porosity_share'),
  voidShare: real('void_share'),
  swellShare: real('swell_share'),
  settlingFirstShare: real('settling_first_share'),
  settlingLaterShare: real('settling_later_share'),
  nShare: real('n_share'),
  p2o5Share: real('p2o5_share'),
  k2oShare: real('k2o_share'),
  caShare: real('ca_share'),
  mgShare: real('mg_share'),
  sShare: real('s_share'),
  firstYearNShare: real('first_year_n_share'),
  cToN: real('c_to_n'),
  neutralisingShare: real('neutralising_share'),
  finenessShare: real('fineness_share'),
  organicUse: text('organic_use', { enum: ['allowed', 'not-allowed', 'unknown'] })
    .notNull()
    .default('unknown'),
  animalOrigin: text('animal_origin', { enum: ['none', 'raw', 'composted', 'treated'] })
    .notNull()
    .default('none'),
  dusty: flag('dusty').notNull().default(false),
  registrationNumber: text('registration_number'),
  insideDiameter_m: real('inside_diameter_m'),
  boreDiameter_m: real('bore_diameter_m'),
  power_W: real('power_W'),
  life_years: real('life_years'),
  maxRate_kg_per_m2: real('max_rate_kg_per_m2'),
  cropId: text('crop_id'),
  varietyId: text('variety_id'),
  seedsPer_g: real('seeds_per_g'),
  germinationShare: real('germination_share'),
  cells: integer('cells'),
  own: flag('own').notNull().default(false),
  retired: flag('retired').notNull().default(false),
  source: text('source').notNull().default(''),
  notes: text('notes').notNull().default(''),
  revision: revision(),
});

/** Materials the grower lets stand in for each other. */
export const substitute = sqliteTable(
  'substitute',
  {
    id: key(),
    materialId: text('material_id')
      .notNull()
      .references(() => material.id, { onDelete: 'cascade' }),
    insteadId: text('instead_id')
      .notNull()
      .references(() => material.id, { onDelete: 'cascade' }),
    /** How much of the stand-in does the work of one base unit. */
    ratio: real('ratio').notNull().default(1),
  },
  (t) => [uniqueIndex('substitute_pair').on(t.materialId, t.insteadId)],
);

export const supplier = sqliteTable('supplier', {
  id: key(),
  name: text('name').notNull().unique(),
  contact: text('contact').notNull().default(''),
  deliveryFee_minor: integer('delivery_fee_minor').notNull().default(0),
  freeDeliveryFrom_minor: integer('free_delivery_from_minor'),
  minimumOrder_minor: integer('minimum_order_minor').notNull().default(0),
  tax_share: real('tax_share').notNull().default(0),
  lead_days: integer('lead_days').notNull().default(0),
  pickUp: flag('pick_up').notNull().default(false),
  retired: flag('retired').notNull().default(false),
  notes: text('notes').notNull().default(''),
  revision: revision(),
});

export const offer = sqliteTable(
  'offer',
  {
    id: key(),
    supplierId: text('supplier_id')
      .notNull()
      .references(() => supplier.id, { onDelete: 'cascade' }),
    materialId: text('material_id')
      .notNull()
      .references(() => material.id),
    name: text('name').notNull(),
    /** One package holds this much, in the material's base unit. */
    packageAmount: real('package_amount').notNull(),
    price_minor: integer('price_minor').notNull(),
    minimumPackages: integer('minimum_packages').notNull().default(1),
    lead_days: integer('lead_days'),
    packageWeight_kg: real('package_weight_kg'),
    pricedDate: text('priced_date').notNull(),
    retired: flag('retired').notNull().default(false),
    revision: revision(),
  },
  (t) => [index('offer_material').on(t.materialId)],
);

/** All-units price from a number of packages on. */
export const offerBreak = sqliteTable('offer_break', {
  id: key(),
  offerId: text('offer_id')
    .notNull()
    .references(() => offer.id, { onDelete: 'cascade' }),
  fromPackages: integer('from_packages').notNull(),
  price_minor: integer('price_minor').notNull(),
});

/** What an offer cost on earlier days. */
export const offerPrice = sqliteTable('offer_price', {
  id: key(),
  offerId: text('offer_id')
    .notNull()
    .references(() => offer.id, { onDelete: 'cascade' }),
  date: text('date').notNull(),
  price_minor: integer('price_minor').notNull(),
});
