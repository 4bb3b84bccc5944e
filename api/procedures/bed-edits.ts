import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { addFills, addMeasures, addParts, partOfId, removePart } from '../../db/repositories/bed-history.ts';
import { changeBed, orderBeds, placeBeds, setOwnLayers, splitBed } from '../../db/repositories/beds.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { InputError, requireRange } from '../../planner/errors.ts';
import { calendarDate } from '../beds/entry.ts';
import { fillNeedsOfFarm } from '../beds/fill-needs-of-farm.ts';
import { requireFreeCode } from '../beds/free-code.ts';
import { layerEntry } from '../beds/layer-entry.ts';
import { loadBed, loadBeds, loadBedsOf } from '../beds/load-beds.ts';
import { ownMeasures } from '../beds/own-measures.ts';
import { litresInUnit } from '../beds/stock-litres.ts';
import { Refusal } from '../errors.ts';
import { takeFromStock } from '../orders/take-from-stock.ts';
import { change } from '../procedure.ts';

const metres = z.number('A length is needed here.').positive('A length must be more than zero.').max(500, 'At most 500 m.');
const place = z.object({
  bedId: z.string(),
  x_m: z.number().min(-10_000).max(10_000),
  y_m: z.number().min(-10_000).max(10_000),
  turn_deg: z.number().min(-360).max(360),
});

/** What can be changed of one bed in the table or the sheet. */
const bedValues = z
  .object({
    code: z.string().trim().min(1, 'A bed needs a code.').max(40, 'A code has at most 40 signs.'),
    name: z.string().trim().max(120),
    blockId: z.string(),
    designId: z.string(),
    sun: z.enum(['full', 'light-shade', 'shade']).nullable(),
    place: z.enum(['ground', 'deck', 'balcony', 'roof']),
    floorLimit_kg_per_m2: z.number().positive('A limit must be more than zero.').nullable(),
    length_m: metres,
    width_m: metres,
    depth_m: metres,
    fillDepth_m: z.number().min(0, 'A depth cannot be negative.').max(5),
    polygon_m: z
      .array(z.tuple([z.number(), z.number()]).readonly())
      .readonly()
      .nullable(),
    turn_deg: z.number().min(-360).max(360),
    /** Measured today, below the wanted surface. */
    drop_m: z.number('Write how far the surface has dropped.').min(0, 'A drop cannot be negative.'),
    builtDate: calendarDate,
    notes: z.string().max(4000),
  })
  .partial();

export const bedEdits = {
  setMany: change({
    note: ({ edits }, { db }) =>
      new Set(edits.map(({ bedId }) => bedId)).size === 1
        ? `Change bed ${nameOf(db, 'bed', edits[0]?.bedId ?? null)}`
        : `Change ${new Set(edits.map(({ bedId }) => bedId)).size} beds`,
    input: z.object({
      edits: z
        .array(z.object({ bedId: z.string(), revision: z.int(), values: bedValues }))
        .min(1)
        .max(5000),
    }),
    run({ db, today }, { edits }) {
      const bedIds = [...new Set(edits.map(({ bedId }) => bedId))];
      const befores = loadBedsOf(db, bedIds);
      const edited = new Set<string>();
      for (const { bedId, revision, values: given } of edits) {
        const { drop_m, ...values } = given;
        const before = (edited.has(bedId) ? undefined : befores.get(bedId)) ?? loadBed(db, bedId);
        edited.add(bedId);
        if (values.code !== undefined && values.code !== before.bed.code) requireFreeCode(db, values.code);
        if (!changeBed(db, bedId, revision, ownMeasures(before, values)))
          throw new Refusal({ code: 'changed-meanwhile', what: 'bed' });
        if (drop_m !== undefined) {
          requireRange('drop_m', drop_m, 0, before.spec.fillDepth_m, 'm');
          addMeasures(db, [{ id: newId(), bedId, date: today, drop_m }]);
        }
      }
      const afters = loadBedsOf(db, bedIds);
      for (const { bedId, values } of edits) {
        const after = afters.get(bedId);
        if (after !== undefined && after.fault !== null && after.fault !== befores.get(bedId)?.fault)
          throw faultOf(after.bed.code, after.fault, values);
      }
      return { changed: edits.length };
    },
  }),
  move: change({
    note: ({ places, what }, { db }) =>
      what ?? (places.length === 1 ? `Move bed ${nameOf(db, 'bed', places[0]?.bedId ?? null)}` : `Move ${places.length} beds`),
    input: z.object({ places: z.array(place).min(1).max(5000), what: z.string().max(60).optional() }),
    run({ db }, { places }) {
      if (placeBeds(db, places) !== places.length) throw new Refusal({ code: 'not-found', what: 'bed' });
      return { moved: places.length };
    },
  }),
  order: change({
    note: ({ bedIds }) => `Put ${bedIds.length} beds in order along the tubing`,
    input: z.object({ bedIds: z.array(z.string()).min(1).max(5000) }),
    run({ db }, { bedIds }) {
      orderBeds(db, bedIds);
      return { ordered: bedIds.length };
    },
  }),
  split: change({
    note: ({ bedId, shares }, { db }) => `Split bed ${nameOf(db, 'bed', bedId)} into ${shares.length} shares`,
    input: z.object({
      bedId: z.string(),
      shares: z.array(z.object({ name: z.string().trim().min(1, 'A share needs a name.').max(60), to: z.number() })).max(12),
    }),
    run({ db }, { bedId, shares }) {
      const rows = shares.map(({ name, to }, at) => {
        const from = at === 0 ? 0 : (shares[at - 1]?.to ?? 0);
        requireRange(`shares.${at}.to`, to, from + 0.01, 1, '');
        return { id: newId(), bedId, name, fromShare: from, toShare: to };
      });
      if (rows.length > 0 && Math.abs((rows.at(-1)?.toShare ?? 0) - 1) > 1e-6)
        throw new InputError([
          {
            path: `shares.${rows.length - 1}.to`,
            code: 'does-not-sum',
            message: 'The last share ends at the end of the bed, 100 %.',
          },
        ]);
      splitBed(db, bedId, rows);
      return { shares: rows.length };
    },
  }),
  setRecipe: change({
    note: ({ bedId }, { db }) => `Change the fill recipe of bed ${nameOf(db, 'bed', bedId)}`,
    input: z.object({ bedId: z.string(), layers: z.array(layerEntry).max(12).nullable() }),
    run({ db }, { bedId, layers }) {
      setOwnLayers(
        db,
        bedId,
        (layers ?? []).map((layer, position) => ({ id: newId(), bedId, position, ...layer })),
      );
      const after = loadBed(db, bedId);
      if (after.fault !== null) throw new InputError([{ path: 'layers', code: 'does-not-fit', message: after.fault }]);
      return { bedId };
    },
  }),
  measure: change({
    note: ({ bedIds }, { db }) =>
      bedIds.length === 1
        ? `Measure the fill of bed ${nameOf(db, 'bed', bedIds[0] ?? null)}`
        : `Measure the fill of ${bedIds.length} beds`,
    input: z.object({
      bedIds: z.array(z.string()).min(1).max(5000),
      date: calendarDate,
      drop_m: z.number('Write how far the surface has dropped.'),
      note: z.string().max(400),
    }),
    run({ db }, { bedIds, date, drop_m, note }) {
      for (const row of bedIds.map((id) => loadBed(db, id))) requireRange('drop_m', drop_m, 0, row.spec.fillDepth_m, 'm');
      addMeasures(
        db,
        bedIds.map((bedId) => ({ id: newId(), bedId, date, drop_m, note })),
      );
      return { measured: bedIds.length };
    },
  }),
  /**
   * Records that the beds were filled or topped up as wanted. What lay in stock is taken out of it at its average cost; the rest came
   * from outside the books and stands at the price of the day, marked as such.
   */
  recordFill: change({
    note: ({ bedIds }, { db }) =>
      bedIds.length === 1 ? `Record filling bed ${nameOf(db, 'bed', bedIds[0] ?? null)}` : `Record filling ${bedIds.length} beds`,
    input: z.object({ bedIds: z.array(z.string()).min(1).max(5000), date: calendarDate }),
    run({ db, today }, { bedIds, date }) {
      const wanted = new Set(bedIds);
      const litres = litresInUnit(db);
      const needs = fillNeedsOfFarm(
        db,
        today,
        loadBeds(db).filter((bed) => wanted.has(bed.bed.id)),
      );
      const known = needs.filter((need) => litres.has(need.materialId));
      const taken = takeFromStock(
        db,
        known.map((need) => ({
          materialId: need.materialId,
          amount: need.loose_L / (litres.get(need.materialId) ?? 1),
          bedId: need.bedId,
          reason: need.reason,
        })),
        date,
      );
      const costs = new Map(known.map((need, at) => [need, taken[at]]));
      addFills(
        db,
        needs.map((need, position) => {
          const cost = costs.get(need);
          return {
            id: newId(),
            bedId: need.bedId,
            date,
            kind: need.kind,
            position,
            materialId: need.materialId,
            loose_L: need.loose_L,
            cost_minor: (cost?.stock_minor ?? 0) + (cost?.priced_minor ?? 0),
            priced_minor: cost?.priced_minor ?? 0,
            unpriced_L: cost === undefined ? (need.isOwn ? 0 : need.loose_L) : cost.unpriced * (litres.get(need.materialId) ?? 0),
          };
        }),
      );
      const priced_minor = taken.reduce((sum, each) => sum + each.priced_minor, 0);
      const unpriced =
        taken.filter((each) => each.unpriced > 0).length +
        needs.filter((need) => !need.isOwn && !litres.has(need.materialId)).length;
      return { filled: needs.length, priced_minor, unpriced };
    },
  }),
  /** Puts a new part in for a worn one: out of stock as far as it lies there. Without a price it stands at what that cost. */
  replacePart: change({
    note: ({ partId }, { db }) => `Replace ${nameOf(db, 'bedPart', partId)} of bed ${nameOf(db, 'bedOfPart', partId)}`,
    input: z.object({
      partId: z.string(),
      date: calendarDate,
      reason: z.string().trim().min(1, 'Say why it was replaced.').max(200),
      amount: z.number().positive('An amount must be more than zero.'),
      price_minor: z.int().nonnegative('A price cannot be negative.').nullable(),
      life_years: z.number().positive('A life must be more than zero.').max(100),
    }),
    run({ db }, { partId, date, reason, price_minor, ...part }) {
      const old = partOfId(db, partId);
      if (old === undefined) throw new Refusal({ code: 'not-found', what: 'part' });
      if (date < old.installedDate)
        throw new InputError([
          { path: 'date', code: 'too-early', message: `It was put in on ${old.installedDate}: it cannot come out before.` },
        ]);
      removePart(db, partId, date, reason);
      const { bedId, materialId, salvageShare } = old;
      const id = newId<string>();
      const taking = { materialId, amount: part.amount, bedId, reason: `Part replaced: ${reason}`, partId: id };
      const [taken] = takeFromStock(db, [taking], date);
      const cost_minor = (taken?.stock_minor ?? 0) + (taken?.priced_minor ?? 0);
      const unpricedAmount = price_minor === null ? (taken?.unpriced ?? 0) : 0;
      addParts(db, [
        {
          id,
          bedId,
          materialId,
          salvageShare,
          installedDate: date,
          price_minor: price_minor ?? cost_minor,
          unpricedAmount,
          ...part,
        },
      ]);
      return { partId: id };
    },
  }),
};

/** Names the fault by the field that was changed, so that it stands there. */
function faultOf(code: string, fault: string, values: Readonly<Record<string, unknown>>): InputError {
  const path = Object.keys(values)[0] ?? 'code';
  return new InputError([{ path, code: 'does-not-fit', message: `${code}: ${fault}` }]);
}
