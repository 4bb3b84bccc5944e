import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { addParts } from '../../db/repositories/bed-history.ts';
import { takeOffBedPlans } from '../../db/repositories/bed-plans.ts';
import { addBeds, addBlock, bedsOfIds, blocksOfFarm, codesInUse, type NewBed } from '../../db/repositories/beds.ts';
import { designOfId, designParts } from '../../db/repositories/designs.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import { outlineOfBed } from '../../planner/beds/bed-spec.ts';
import { extentOf } from '../../planner/beds/extent.ts';
import { codesFrom, layOutBeds } from '../../planner/beds/lay-out.ts';
import { InputError } from '../../planner/errors.ts';
import { specOfDesign } from '../beds/bed-spec-of.ts';
import { calendarDate } from '../beds/entry.ts';
import { readSiteGeoJson } from '../beds/read-geojson.ts';
import { Refusal } from '../errors.ts';
import { takeFromStock } from '../orders/take-from-stock.ts';
import { change, read } from '../procedure.ts';
import { addNewDesign, designContents } from './designs.ts';

const blockChoice = z.object({
  blockId: z.string().nullable(),
  newBlock: z.object({ code: z.string().trim().max(20), name: z.string().trim().max(80) }),
});

/** The block chosen, or a new one at a place. @throws InputError when its code is taken or missing */
function blockFor(db: FarmDb, choice: z.output<typeof blockChoice>, x_m: number, y_m: number): string {
  if (choice.blockId !== null) return choice.blockId;
  const { code, name } = choice.newBlock;
  const known = blocksOfFarm(db);
  if (code === '')
    throw new InputError([{ path: 'newBlock.code', code: 'empty', message: 'A new block needs a code, for instance F.' }]);
  if (known.some((block) => block.code === code))
    throw new InputError([
      { path: 'newBlock.code', code: 'in-use', message: `There is a block ${code} already: choose it from the list.` },
    ]);
  const id = newId();
  addBlock(db, { id, code, name: name === '' ? `Block ${code}` : name, x_m, y_m, position: known.length });
  return id;
}

/**
 * Beds with the parts of their design, put in on the day they were built: out of stock as far as they lie there, else at the
 * price of the day. Beds that were to be built of the design are that many fewer.
 */
function addWithParts(db: FarmDb, designId: string, beds: readonly NewBed[]): { readonly offPlan: number } {
  addBeds(db, beds);
  const parts = designParts(db, designId);
  for (const [builtDate, built] of Map.groupBy(beds, (bed) => bed.builtDate)) {
    const rows = built.flatMap((bed) => parts.map((part) => ({ bed, part, partId: newId<string>() })));
    const taken = takeFromStock(
      db,
      rows.map(({ bed, part, partId }) => ({
        materialId: part.materialId,
        amount: part.amount,
        bedId: bed.id,
        reason: `Built ${bed.code}`,
        partId,
      })),
      builtDate,
    );
    addParts(
      db,
      rows.map(({ bed, part, partId }, at) => ({
        id: partId,
        bedId: bed.id,
        materialId: part.materialId,
        amount: part.amount,
        price_minor: (taken[at]?.stock_minor ?? 0) + (taken[at]?.priced_minor ?? 0),
        unpricedAmount: taken[at]?.unpriced ?? 0,
        life_years: part.life_years,
        salvageShare: part.salvageShare,
        installedDate: builtDate,
      })),
    );
  }
  return { offPlan: takeOffBedPlans(db, designId, beds.length) };
}

/** How many beds, in what rows and where; the design stands apart. */
const buildFields = {
  block: blockChoice,
  firstCode: z.string(),
  count: z.int('Write how many beds.').min(1, 'Build at least one bed.').max(2000, 'At most 2000 beds at once.'),
  perRow: z.int('Write how many beds stand in a row.').min(1).max(2000),
  endPath_m: z.number(),
  sidePath_m: z.number(),
  x_m: z.number(),
  y_m: z.number(),
  turn_deg: z.number(),
  builtDate: calendarDate,
};
const buildInput = z.object({ designId: z.string(), ...buildFields });

const buildNote = ({ count, firstCode }: { readonly count: number; readonly firstCode: string }): string =>
  count === 1 ? `Build bed ${firstCode}` : `Build ${count} beds from ${firstCode}`;

function buildBeds(db: FarmDb, input: z.output<typeof buildInput>) {
  const design = designOfId(db, input.designId);
  if (design === undefined) throw new Refusal({ code: 'not-found', what: 'design' });
  const size = extentOf(outlineOfBed(specOfDesign(design)));
  const first_m = [input.x_m + size.length_m / 2, input.y_m + size.width_m / 2] as const;
  const places = layOutBeds({ ...input, ...size, first_m });
  const codes = codesFrom(input.firstCode, input.count, codesInUse(db));
  const blockId = blockFor(db, input.block, input.x_m, input.y_m);
  const rows = places.map(
    (place, at): NewBed => ({
      id: newId(),
      code: codes[at] ?? '',
      blockId,
      designId: design.id,
      builtDate: input.builtDate,
      position: at,
      ...place,
    }),
  );
  const { offPlan } = addWithParts(db, design.id, rows);
  return { bedIds: rows.map((row) => row.id), offPlan };
}

export const bedBuilding = {
  build: change({ note: buildNote, input: buildInput, run: ({ db }, input) => buildBeds(db, input) }),
  /** A design and the first beds of it, in one step: refused whole, taken back whole. */
  buildFirst: change({
    note: ({ values, count, firstCode }) =>
      count === 1
        ? `Add design ${values.name} and build bed ${firstCode}`
        : `Add design ${values.name} and build ${count} beds from ${firstCode}`,
    input: z.object({ ...designContents, ...buildFields }),
    run: ({ db }, input) => buildBeds(db, { ...input, designId: addNewDesign(db, input) }),
  }),
  duplicate: change({
    note: ({ bedIds }, { db }) =>
      bedIds.length === 1 ? `Duplicate bed ${nameOf(db, 'bed', bedIds[0] ?? null)}` : `Duplicate ${bedIds.length} beds`,
    input: z.object({
      bedIds: z.array(z.string()).min(1).max(2000),
      dx_m: z.number(),
      dy_m: z.number(),
      builtDate: calendarDate,
    }),
    run({ db }, { bedIds, dx_m, dy_m, builtDate }) {
      const order = new Map(bedIds.map((id, at) => [id, at]));
      const originals = bedsOfIds(db, bedIds).toSorted((a, b) => (order.get(a.id) ?? 0) - (order.get(b.id) ?? 0));
      const taken = new Set(codesInUse(db));
      const made = originals.map(({ revision: _, retiredDate: __, retiredBecause: ___, ...bed }): NewBed => {
        const [code = ''] = codesFrom(bed.code, 1, taken);
        taken.add(code);
        return { ...bed, id: newId(), code, builtDate, x_m: bed.x_m + dx_m, y_m: bed.y_m + dy_m };
      });
      for (const [designId, rows] of Map.groupBy(made, (bed) => bed.designId)) addWithParts(db, designId, rows);
      return { bedIds: made.map((bed) => bed.id) };
    },
  }),
  /** Reads a GeoJSON text whole and tells what it holds, without writing anything. */
  checkGeoJson: read({
    input: z.object({ text: z.string().max(20_000_000), firstCode: z.string() }),
    run({ db }, { text, firstCode }) {
      const farm = farmOfFile(db);
      if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
      return readSiteGeoJson(text, farm, firstCode, codesInUse(db));
    },
  }),
  importGeoJson: change({
    note: 'Import beds from a GeoJSON file',
    input: z.object({
      text: z.string().max(20_000_000),
      firstCode: z.string(),
      designId: z.string(),
      block: blockChoice,
      builtDate: calendarDate,
    }),
    run({ db }, { text, firstCode, designId, block, builtDate }) {
      const farm = farmOfFile(db);
      if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
      const site = readSiteGeoJson(text, farm, firstCode, codesInUse(db));
      if (site.faults.length > 0)
        throw new InputError(
          site.faults.map((fault) => ({ path: `features.${fault.feature}`, code: 'unreadable', message: fault.message })),
        );
      if (site.beds.length === 0)
        throw new InputError([{ path: 'text', code: 'empty', message: 'No polygon of a bed was found in it.' }]);
      const first = site.beds[0];
      const blockId = blockFor(db, block, first?.x_m ?? 0, first?.y_m ?? 0);
      const rows = site.beds.map(
        (bed, position): NewBed => ({
          id: newId(),
          code: bed.code,
          blockId,
          designId,
          builtDate,
          position,
          x_m: bed.x_m,
          y_m: bed.y_m,
          ownPolygon_m: bed.polygon_m,
        }),
      );
      addWithParts(db, designId, rows);
      return { beds: rows.length, outline_m: site.outline_m };
    },
  }),
};
