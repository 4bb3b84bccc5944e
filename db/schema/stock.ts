import { index, integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core';
import { bed } from './beds.ts';
import { flag, key, revision } from './columns.ts';
import { material, offer, supplier } from './materials.ts';
import { planting } from './plantings.ts';

/** A maker's or the farm's own lot of a material. */
export const materialLot = sqliteTable('material_lot', {
  id: key(),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  code: text('code').notNull(),
  supplierId: text('supplier_id').references(() => supplier.id),
  expiresDate: text('expires_date'),
  germinationShare: real('germination_share'),
  note: text('note').notNull().default(''),
});

export const purchase = sqliteTable('purchase', {
  id: key(),
  supplierId: text('supplier_id')
    .notNull()
    .references(() => supplier.id),
  orderedDate: text('ordered_date').notNull(),
  receivedDate: text('received_date'),
  delivery_minor: integer('delivery_minor').notNull().default(0),
  tax_minor: integer('tax_minor').notNull().default(0),
  documentNumber: text('document_number').notNull().default(''),
  note: text('note').notNull().default(''),
  revision: revision(),
});

export const purchaseLine = sqliteTable(
  'purchase_line',
  {
    id: key(),
    purchaseId: text('purchase_id')
      .notNull()
      .references(() => purchase.id, { onDelete: 'cascade' }),
    materialId: text('material_id')
      .notNull()
      .references(() => material.id),
    offerId: text('offer_id').references(() => offer.id),
    packages: real('packages').notNull(),
    receivedPackages: real('received_packages').notNull().default(0),
    returnedPackages: real('returned_packages').notNull().default(0),
    packageAmount: real('package_amount').notNull(),
    price_minor: integer('price_minor').notNull(),
    lotId: text('lot_id').references(() => materialLot.id),
    category: text('category').notNull().default('supplies'),
  },
  (t) => [index('purchase_line_purchase').on(t.purchaseId)],
);

/** Every movement of a material; the balance is never stored. `amount` is signed, in the base unit. */
export const stockMove = sqliteTable(
  'stock_move',
  {
    id: key(),
    materialId: text('material_id')
      .notNull()
      .references(() => material.id),
    date: text('date').notNull(),
    kind: text('kind', { enum: ['opening', 'purchase', 'made', 'use', 'correction', 'return'] }).notNull(),
    amount: real('amount').notNull(),
    value_minor: integer('value_minor').notNull().default(0),
    lotId: text('lot_id').references(() => materialLot.id),
    bedId: text('bed_id').references(() => bed.id),
    plantingId: text('planting_id').references(() => planting.id),
    purchaseLineId: text('purchase_line_id').references(() => purchaseLine.id),
    applicationId: text('application_id'),
    /** The part of a bed or of a water line that it became: such a part is paid for over its life, not in the season of its use. */
    partId: text('part_id'),
    /** It came in without a price that anyone knew: its value is not nothing, only not known. */
    unpriced: flag('unpriced').notNull().default(false),
    who: text('who').notNull().default(''),
    reason: text('reason').notNull().default(''),
    flagged: flag('flagged').notNull().default(false),
  },
  (t) => [index('stock_move_material').on(t.materialId, t.date)],
);

/** A need the grower added by hand, and choices made for a computed need. */
export const needChoice = sqliteTable('need_choice', {
  id: key(),
  seasonId: text('season_id'),
  /** The computed need this choice is about; empty for one added by hand. */
  needKey: text('need_key'),
  materialId: text('material_id')
    .notNull()
    .references(() => material.id),
  amount: real('amount'),
  reason: text('reason').notNull().default(''),
  wantedDate: text('wanted_date'),
  supplierId: text('supplier_id').references(() => supplier.id),
  left: flag('left_out').notNull().default(false),
  /** Whether the stand-ins allowed for the material may serve this need. */
  standIns: flag('stand_ins').notNull().default(true),
});

/** Lines of a shopping list kept while it is being bought. */
export const shoppingLine = sqliteTable('shopping_line', {
  id: key(),
  seasonId: text('season_id').notNull(),
  offerId: text('offer_id')
    .notNull()
    .references(() => offer.id),
  packages: integer('packages').notNull(),
  reason: text('reason').notNull().default(''),
  ticked: flag('ticked').notNull().default(false),
  purchaseId: text('purchase_id').references(() => purchase.id),
});

/** Money set aside for a season, by category and month. */
export const budget = sqliteTable('budget', {
  id: key(),
  seasonId: text('season_id').notNull(),
  category: text('category').notNull(),
  /** 1 to 12; empty for the whole season. */
  month: integer('month'),
  amount_minor: integer('amount_minor').notNull(),
});
