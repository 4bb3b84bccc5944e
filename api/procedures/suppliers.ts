import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { materialFacts } from '../../db/repositories/stock.ts';
import {
  addOffer,
  addSupplier,
  changeOffer,
  changeSupplier,
  keepOfferPrice,
  offerBreaks,
  offerOfId,
  offerPrices,
  offersByName,
  setOfferBreaks,
  suppliersOfFarm,
} from '../../db/repositories/suppliers.ts';
import { parseIsoDate } from '../../planner/calendar.ts';
import { InputError, refuse } from '../../planner/errors.ts';
import { Refusal } from '../errors.ts';
import { type OfferFacts, readOffersCsv } from '../orders/read-offers-csv.ts';
import { change, nothing, read } from '../procedure.ts';

const money = z.int('Money is kept in whole minor units.').nonnegative('This cannot be negative.');
const days = z.int('Whole days.').nonnegative('This cannot be negative.').max(730, 'More than two years will not do.');

const supplierFields = z.object({
  name: z.string().trim().min(1, 'A supplier needs a name.').max(120),
  contact: z.string().max(400),
  deliveryFee_minor: money,
  freeDeliveryFrom_minor: money.nullable(),
  minimumOrder_minor: money,
  tax_share: z.number().min(0, 'A tax cannot be negative.').max(1, 'A tax over 100 % will not do.'),
  lead_days: days,
  pickUp: z.boolean(),
  retired: z.boolean(),
  notes: z.string().max(2000),
});

const offerFields = z.object({
  name: z.string().trim().min(1, 'Say what the package is, e.g. bag of 50 lb.').max(120),
  packageAmount: z.number().positive('A package holds more than nothing.'),
  price_minor: money,
  minimumPackages: z.int('Whole packages.').min(1, 'One package at least.'),
  lead_days: days.nullable(),
  packageWeight_kg: z.number().positive('This must be more than zero.').nullable(),
  pricedDate: z.string(),
  retired: z.boolean(),
});

const breaks = z
  .array(z.object({ fromPackages: z.int().min(2, 'A break begins at two packages or more.'), price_minor: money }))
  .max(12);

/** Only what was given: a value left out is not the same as one set to nothing. */
const given = <Values extends object>(values: Values) =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));

const priceList = z.object({ csv: z.string().max(4_000_000, 'This file is too large to be a price list.') });

function offerFacts(db: FarmDb, today: string): OfferFacts {
  const farm = farmOfFile(db);
  return {
    system: farm?.unitSystem ?? 'us',
    currency: farm?.currency ?? 'USD',
    today,
    suppliers: suppliersOfFarm(db),
    materials: [...materialFacts(db).values()],
    offers: offersByName(db),
  };
}

export const suppliers = {
  list: read({ input: nothing, run: ({ db }) => suppliersOfFarm(db) }),
  add: change({
    note: ({ name }) => `Add supplier ${name}`,
    input: supplierFields.partial().required({ name: true }),
    run({ db }, values) {
      const supplierId = newId();
      addSupplier(db, { ...given(values), name: values.name, id: supplierId });
      return { supplierId };
    },
  }),
  setMany: change({
    note: ({ edits }, { db }) =>
      edits.length === 1
        ? `Change supplier ${nameOf(db, 'supplier', edits[0]?.supplierId ?? null)}`
        : `Change ${edits.length} suppliers`,
    input: z.object({
      edits: z
        .array(z.object({ supplierId: z.string(), revision: z.int(), values: supplierFields.partial() }))
        .min(1)
        .max(500),
    }),
    run({ db }, { edits }) {
      for (const { supplierId, revision, values } of edits) {
        if (!changeSupplier(db, supplierId, revision, given(values)))
          throw new Refusal({ code: 'changed-meanwhile', what: 'supplier' });
      }
      return { changed: edits.length };
    },
  }),
  offers: read({ input: nothing, run: ({ db }) => offersByName(db) }),
  offer: read({
    input: z.object({ offerId: z.string() }),
    run: ({ db }, { offerId }) => ({ breaks: offerBreaks(db, offerId), prices: offerPrices(db, offerId) }),
  }),
  addOffer: change({
    note: ({ name }) => `Add offer ${name}`,
    input: offerFields
      .partial()
      .required({ name: true, packageAmount: true, price_minor: true })
      .extend({ supplierId: z.string().min(1, 'Choose a supplier.'), materialId: z.string().min(1, 'Choose a material.') }),
    run({ db, today }, values) {
      const offerId = newId();
      const twin = offersByName(db).find(
        (each) =>
          !each.retired &&
          each.supplierId === values.supplierId &&
          each.materialId === values.materialId &&
          each.name.trim().toLowerCase() === values.name.toLowerCase(),
      );
      if (twin !== undefined)
        refuse('name', 'duplicate', `${twin.supplier} offers this package of ${twin.material} already: change its price there.`);
      addOffer(db, {
        ...given(values),
        supplierId: values.supplierId,
        materialId: values.materialId,
        name: values.name,
        packageAmount: values.packageAmount,
        price_minor: values.price_minor,
        id: offerId,
        pricedDate: values.pricedDate === undefined ? today : parseIsoDate(values.pricedDate, 'pricedDate'),
      });
      return { offerId };
    },
  }),
  setOffers: change({
    note: ({ edits }, { db }) =>
      edits.length === 1 ? `Change offer ${nameOf(db, 'offer', edits[0]?.offerId ?? null)}` : `Change ${edits.length} offers`,
    input: z.object({
      edits: z
        .array(z.object({ offerId: z.string(), revision: z.int(), values: offerFields.partial() }))
        .min(1)
        .max(2000),
    }),
    run({ db, today }, { edits }) {
      for (const { offerId, revision, values } of edits) {
        const before = offerOfId(db, offerId);
        if (before === undefined) throw new Refusal({ code: 'not-found', what: 'offer' });
        const priced = values.price_minor !== undefined && values.price_minor !== before.price_minor;
        if (priced) keepOfferPrice(db, { id: newId(), offerId, date: before.pricedDate, price_minor: before.price_minor });
        const dated =
          values.pricedDate === undefined ? (priced ? today : before.pricedDate) : parseIsoDate(values.pricedDate, 'pricedDate');
        if (!changeOffer(db, offerId, revision, { ...given(values), pricedDate: dated })) {
          throw new Refusal({ code: 'changed-meanwhile', what: 'offer' });
        }
      }
      return { changed: edits.length };
    },
  }),
  setBreaks: change({
    note: ({ offerId }, { db }) => `Change the price breaks of ${nameOf(db, 'offer', offerId)}`,
    input: z.object({ offerId: z.string(), breaks }),
    run({ db }, { offerId, breaks: wanted }) {
      const before = offerOfId(db, offerId);
      if (before === undefined) throw new Refusal({ code: 'not-found', what: 'offer' });
      const sorted = [...wanted].sort((a, b) => a.fromPackages - b.fromPackages);
      sorted.forEach((each, at) => {
        if (each.fromPackages === sorted[at - 1]?.fromPackages)
          refuse(`breaks.${at}.fromPackages`, 'twice', `Two breaks begin at ${each.fromPackages} packages.`);
      });
      setOfferBreaks(
        db,
        offerId,
        sorted.map((each) => ({ id: newId(), offerId, ...each })),
      );
      return { breaks: sorted.length };
    },
  }),
  /** Reads a price list whole and tells what it would change; nothing is written. */
  lookIntoOffers: read({ input: priceList, run: ({ db, today }, { csv }) => readOffersCsv(csv, offerFacts(db, today)) }),
  importOffers: change({
    note: 'Import a price list',
    input: priceList,
    run({ db, today }, { csv }) {
      const { rows, faults } = readOffersCsv(csv, offerFacts(db, today));
      if (faults.length > 0)
        throw new InputError(
          faults.slice(0, 200).map((fault) => ({
            path: `line.${fault.line}.${fault.column}`,
            code: 'row',
            message: `Line ${fault.line}, ${fault.column}: ${fault.message}`,
          })),
        );
      for (const row of rows) {
        const { present, line: _, supplier: __, material: ___, baseUnit: ____, ...values } = row;
        if (present === null) {
          addOffer(db, { ...values, id: newId() });
          continue;
        }
        const before = offerOfId(db, present.id);
        if (before !== undefined && before.price_minor !== row.price_minor)
          keepOfferPrice(db, { id: newId(), offerId: present.id, date: before.pricedDate, price_minor: before.price_minor });
        if (!changeOffer(db, present.id, present.revision, values))
          throw new Refusal({ code: 'changed-meanwhile', what: 'offer' });
      }
      return {
        added: rows.filter((row) => row.present === null).length,
        repriced: rows.filter((row) => row.present !== null).length,
      };
    },
  }),
};
