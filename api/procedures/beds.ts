import { z } from 'zod';
import { fillsOfBed, latestDrops, measuresOfBed, partsInUse, partsOfBed } from '../../db/repositories/bed-history.ts';
import { blocksOfFarm, sharesOfBed } from '../../db/repositories/beds.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { moistDensities } from '../../db/repositories/material-choices.ts';
import { partDue } from '../../planner/beds/part-life.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { bedCards } from '../beds/bed-cards.ts';
import { bedRowOf } from '../beds/bed-row.ts';
import { hasOwnMeasures } from '../beds/bed-spec-of.ts';
import { bedWorkings } from '../beds/bed-workings.ts';
import { explainNeed } from '../beds/explain-need.ts';
import { coveredNeeds, fillNeedsOfFarm } from '../beds/fill-needs-of-farm.ts';
import { loadBed, loadBeds } from '../beds/load-beds.ts';
import { needsByMaterial } from '../beds/needs-by-material.ts';
import { stockLitres } from '../beds/stock-litres.ts';
import { wholeFarm } from '../beds/whole-farm.ts';
import { Refusal } from '../errors.ts';
import { nothing, read } from '../procedure.ts';

const bedId = z.string();

export const beds = {
  /** Every bed in use with its figures, for the table and the site drawing. */
  list: read({
    input: nothing,
    run({ db, today }) {
      const loaded = loadBeds(db);
      const topUp = new Map<string, number>();
      for (const need of fillNeedsOfFarm(db, today, loaded))
        if (need.kind === 'top-up') topUp.set(need.bedId, (topUp.get(need.bedId) ?? 0) + need.loose_L);
      const drops = new Map(latestDrops(db).map((drop) => [drop.bedId, drop.drop_m]));
      return loaded.map((bed) => bedRowOf(bed, topUp.get(bed.bed.id) ?? 0, drops.get(bed.bed.id) ?? null));
    },
  }),
  retired: read({ input: nothing, run: ({ db }) => loadBeds(db, 'retired').map((bed) => bedRowOf(bed, 0)) }),
  /** The site: its outline, north, and the blocks. */
  site: read({
    input: nothing,
    run({ db, today }) {
      const farm = farmOfFile(db);
      return {
        today,
        outline_m: farm?.siteOutline_m ?? null,
        north_deg: farm?.north_deg ?? 0,
        blocks: blocksOfFarm(db).map((block) => ({
          blockId: block.id,
          code: block.code,
          name: block.name,
          x_m: block.x_m,
          y_m: block.y_m,
        })),
      };
    },
  }),
  /** One bed whole: figures with their workings, parts, fills, measured drops, shares and what it wants. */
  one: read({
    input: z.object({ bedId }),
    run({ db, today }, { bedId: id }) {
      const bed = loadBed(db, id);
      return {
        row: bedRowOf(bed, 0),
        spec: bed.spec,
        designSpec: {
          length_m: bed.design.length_m,
          width_m: bed.design.width_m,
          depth_m: bed.design.depth_m,
          fillDepth_m: bed.design.fillDepth_m,
        },
        hasOwnMeasures: hasOwnMeasures(bed.bed),
        hasOwnRecipe: bed.hasOwnRecipe,
        notes: bed.bed.notes,
        wallMaterial: bed.design.wallMaterial,
        mulchDepth_m: bed.design.mulchDepth_m,
        layers: bed.recipe.map((part, at) => ({
          materialId: part.materialId as string,
          name: part.name,
          kind: part.kind,
          isOwn: part.isOwn,
          dusty: part.dusty,
          amount: part.amount,
          settlingShare: part.settlingShare,
          ...(bed.figures?.layers[at] ?? { from_m: 0, to_m: 0, settled_L: 0, loose_L: 0 }),
        })),
        figures: bed.figures,
        workings: bedWorkings(bed),
        parts: partsOfBed(db, id).map((part) => ({ ...part, dueDate: partDue(part.installedDate as IsoDate, part.life_years) })),
        fills: fillsOfBed(db, id),
        measures: measuresOfBed(db, id),
        shares: sharesOfBed(db, id),
        needs: coveredNeeds(fillNeedsOfFarm(db, today, [bed]), stockLitres(db)).map((need) => ({
          ...need,
          working: explainNeed(bed, need),
        })),
      };
    },
  }),
  /** What every bed wants this year, own soil and stock first. */
  needs: read({
    input: nothing,
    run: ({ db, today }) => coveredNeeds(fillNeedsOfFarm(db, today), stockLitres(db)),
  }),
  /** Area, volume, top-up, parts due by year and value of the whole farm. */
  wholeFarm: read({
    input: nothing,
    run: ({ db, today }) =>
      wholeFarm({ beds: loadBeds(db), parts: partsInUse(db), needs: fillNeedsOfFarm(db, today), today, db }),
  }),
  /** Cards to take outdoors: how many buckets and barrows of each material, bed by bed. */
  cards: read({
    input: z.object({ bedIds: z.array(bedId).max(2000), what: z.enum(['first-fill', 'wanted']) }),
    run: ({ db, today }, { bedIds, what }) => bedCards(db, today, bedIds, what),
  }),
  /** The same by material: weight, loads, barrows, and own soil to dig. */
  needsByMaterial: read({
    input: nothing,
    run({ db, today }) {
      const farm = farmOfFile(db);
      if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
      return needsByMaterial(coveredNeeds(fillNeedsOfFarm(db, today), stockLitres(db)), farm, moistDensities(db));
    },
  }),
};
