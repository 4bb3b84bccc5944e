import type { FarmDb } from '../../db/file/open-farm.ts';
import { applicationsPlanned } from '../../db/repositories/applications.ts';
import { partsInUse } from '../../db/repositories/bed-history.ts';
import { cropsOfFarm } from '../../db/repositories/crops.ts';
import { plantingsOfSeason } from '../../db/repositories/plantings.ts';
import { seasonOfId, seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { needChoices, packingUsed, seedAndTrayMaterials } from '../../db/repositories/stock.ts';
import { partDue } from '../../planner/beds/part-life.ts';
import { addDays, type IsoDate } from '../../planner/calendar.ts';
import { mulchVolume_L } from '../../planner/orders/mulch-volume.ts';
import type { FarmNeed } from '../../planner/orders/needs.ts';
import { seedMass_g, seedNeed } from '../../planner/season/seed-need.ts';
import { trayNeed } from '../../planner/season/trays.ts';
import { convert } from '../../planner/units/convert.ts';
import { fillNeedsOfFarm } from '../beds/fill-needs-of-farm.ts';
import { type LoadedBed, loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { kgPerBaseUnit } from '../soil/base-unit-mass.ts';

/** Something needed for which the farm has no material yet, such as seed of a crop. */
export type NamelessNeed = {
  readonly key: string;
  readonly name: string;
  readonly amount: number;
  readonly unit: string;
  readonly reason: string;
};

export type SeasonNeeds = { readonly needs: readonly FarmNeed[]; readonly nameless: readonly NamelessNeed[] };

/** Mulch goes on some hundred days into the year, fill before the first plantings. Common practice, no source. */
const MULCH_AFTER_DAYS = 110;
const FILL_AFTER_DAYS = 45;
const DAYS_BEFORE_SOWING = 14;
/** Where neither lot nor library knows the germination. Common practice, no source. */
const USUAL_GERMINATION = 0.85;
const OUTDOOR_EMERGENCE = 0.75;
const SEED_OVERAGE = 0.1;

/** All that the farm needs for a season, each with its reason and the day it is wanted. @throws Refusal when the season is gone */
export function needsOfSeason(db: FarmDb, seasonId: string, today: IsoDate): SeasonNeeds {
  const season = seasonOfId(db, seasonId);
  if (season === undefined) throw new Refusal({ code: 'not-found', what: 'season' });
  const start = season.startDate as IsoDate;
  const end = season.endDate as IsoDate;
  const beds = loadBeds(db);
  const seeds = seedNeeds(db, seasonId);
  const choices = needChoices(db, seasonId);
  const byHand = choices
    .filter((row) => row.needKey === null && row.amount !== null)
    .map(
      (row): FarmNeed => ({
        key: row.id,
        source: 'hand',
        materialId: row.materialId,
        amount: row.amount ?? 0,
        reason: row.reason || 'Added by hand',
        wanted: (row.wantedDate ?? start) as IsoDate,
      }),
    );
  return {
    needs: [
      ...fillAndTopUp(db, today, addDays(start, FILL_AFTER_DAYS), beds),
      ...wornParts(db, end),
      ...amendments(db),
      ...mulches(beds, addDays(start, MULCH_AFTER_DAYS)),
      ...seeds.needs,
      ...packing(db, seasonId, start),
      ...byHand,
    ].filter((need) => need.amount > 0),
    nameless: seeds.nameless,
  };
}

function fillAndTopUp(db: FarmDb, today: IsoDate, wanted: IsoDate, beds: readonly LoadedBed[]): readonly FarmNeed[] {
  return fillNeedsOfFarm(db, today, beds)
    .filter((need) => !need.isOwn)
    .map((need) => ({
      key: `${need.kind}:${need.bedId}:${need.materialId}`,
      source: need.kind === 'first-fill' ? ('fill' as const) : ('top-up' as const),
      materialId: need.materialId,
      amount: need.loose_L,
      reason: need.reason,
      wanted,
    }));
}

function wornParts(db: FarmDb, end: IsoDate): readonly FarmNeed[] {
  return partsInUse(db).flatMap((part): readonly FarmNeed[] => {
    const due = partDue(part.installedDate as IsoDate, part.life_years);
    if (due > end) return [];
    return [
      {
        key: `part:${part.bedId}:${part.materialId}:${part.installedDate}`,
        source: 'worn-part',
        materialId: part.materialId,
        amount: part.amount,
        reason: `Worn part of ${part.code}, due ${due}`,
        wanted: due,
      },
    ];
  });
}

function amendments(db: FarmDb): readonly FarmNeed[] {
  return applicationsPlanned(db).flatMap((row): readonly FarmNeed[] => {
    const perUnit = kgPerBaseUnit(row.material);
    if (perUnit === null) return [];
    return [
      {
        key: `dose:${row.applicationBedId}`,
        source: 'amendment',
        materialId: row.material.id,
        amount: row.amount_kg / perUnit,
        reason: `Dose of ${row.code}${row.application.reason === '' ? '' : `: ${row.application.reason}`}`,
        wanted: row.application.date as IsoDate,
      },
    ];
  });
}

function mulches(beds: readonly LoadedBed[], wanted: IsoDate): readonly FarmNeed[] {
  return beds.flatMap((bed): readonly FarmNeed[] => {
    const { mulchMaterialId, mulchDepth_m } = bed.design;
    if (mulchMaterialId === null || mulchDepth_m === null || bed.figures === null) return [];
    return [
      {
        key: `mulch:${bed.bed.id}`,
        source: 'mulch',
        materialId: mulchMaterialId,
        amount: mulchVolume_L(bed.figures.area_m2, mulchDepth_m),
        reason: `Mulch of ${bed.bed.code}`,
        wanted,
      },
    ];
  });
}

/** Seed for each planting still to be sown, and the trays that its starts stand in at the busiest. */
function seedNeeds(db: FarmDb, seasonId: string): SeasonNeeds {
  const materials = seedAndTrayMaterials(db);
  const crops = new Map(cropsOfFarm(db).map((crop) => [crop.id, crop.name]));
  const needs: FarmNeed[] = [];
  const nameless = new Map<string, NamelessNeed>();
  const starts: {
    readonly from: IsoDate;
    readonly to: IsoDate;
    readonly cells: number;
    readonly tray: string;
    readonly perTray: number;
  }[] = [];
  const trays = materials.filter((each) => each.cells !== null);
  for (const planting of plantingsOfSeason(db, seasonId)) {
    if (planting.state !== 'planned' || planting.method === 'set') continue;
    const material = materials.find(
      (each) =>
        each.kind === 'seed' &&
        each.cropId === planting.cropId &&
        (each.varietyId === null || each.varietyId === planting.varietyId),
    );
    const { seeds, stations } = seedNeed({
      plants: planting.plants,
      germination_share: material?.germinationShare ?? USUAL_GERMINATION,
      emergence_share: planting.method === 'direct' ? OUTDOOR_EMERGENCE : 1,
      seedsPerHole: planting.seedsPerHole,
      overage_share: SEED_OVERAGE,
    });
    const name = crops.get(planting.cropId) ?? '';
    const sown = (planting.sowDate ?? planting.inBedDate) as IsoDate;
    if (planting.method === 'transplant') {
      const tray = trays.find((each) => each.cells === planting.cells) ?? trays[0];
      if (tray !== undefined && tray.cells !== null)
        starts.push({
          from: sown,
          to: planting.inBedDate as IsoDate,
          cells: stations,
          tray: tray.materialId,
          perTray: tray.cells,
        });
    }
    if (material === undefined) {
      const known = nameless.get(planting.cropId);
      nameless.set(planting.cropId, {
        key: `seed:${planting.cropId}`,
        name: `Seed of ${name}`,
        amount: (known?.amount ?? 0) + seeds,
        unit: 'count',
        reason: `${name}: plantings of the season`,
      });
      continue;
    }
    needs.push({
      key: `seed:${planting.id}`,
      source: 'seed',
      materialId: material.materialId,
      amount:
        material.baseUnit === 'kg' && material.seedsPer_g !== null
          ? convert(seedMass_g(seeds, material.seedsPer_g), 'g', 'kg')
          : seeds,
      reason: `${name} ${planting.number}, sown ${sown}`,
      wanted: addDays(sown, -DAYS_BEFORE_SOWING),
    });
  }
  return { needs: [...needs, ...trayNeeds(starts)], nameless: [...nameless.values()] };
}

type Start = {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly cells: number;
  readonly tray: string;
  readonly perTray: number;
};

function trayNeeds(starts: readonly Start[]): readonly FarmNeed[] {
  return [...Map.groupBy(starts, (start) => start.tray)].flatMap(([materialId, of]): readonly FarmNeed[] => {
    const busiest = of.reduce(
      (most, start) => {
        const standing = of.filter((each) => each.from <= start.from && start.from < each.to);
        const trays = standing.reduce((sum, each) => sum + trayNeed({ cells: each.cells, cellsPerTray: each.perTray }).trays, 0);
        return trays > most.trays ? { trays, day: start.from } : most;
      },
      { trays: 0, day: '' as IsoDate },
    );
    if (busiest.trays === 0) return [];
    return [
      {
        key: `trays:${materialId}`,
        source: 'tray',
        materialId,
        amount: busiest.trays,
        reason: `Trays in use at once on ${busiest.day}`,
        wanted: addDays(busiest.day, -DAYS_BEFORE_SOWING),
      },
    ];
  });
}

/** As much packing as the season before used. */
function packing(db: FarmDb, seasonId: string, start: IsoDate): readonly FarmNeed[] {
  const seasons = seasonsOfFarm(db);
  const before = seasons[seasons.findIndex((each) => each.id === seasonId) - 1];
  if (before === undefined) return [];
  return packingUsed(db, before.startDate, before.endDate).map((row) => ({
    key: `packing:${row.materialId}`,
    source: 'packing',
    materialId: row.materialId,
    amount: Math.ceil(row.amount),
    reason: `As much as ${before.name} used`,
    wanted: addDays(start, FILL_AFTER_DAYS),
  }));
}
