import { derived, sameRows } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import { lineOfBeds, mulchOfDesigns, plantedBetween, suppliesOfFarm, timersOfFarm } from '../../db/repositories/water-demand.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import type { BedStore } from '../../planner/water/bed-store.ts';
import { type BedYear, bedYear } from '../../planner/water/bed-year.ts';
import { bareReductionOf, cropOnBed, type Mulch } from '../../planner/water/crop-on-bed.ts';
import { underShade_mm_per_day } from '../../planner/water/kc-adjustments.ts';
import { mixRise_mm_per_day } from '../../planner/water/store-of-bed.ts';
import { type LoadedBed, loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { chosenSeason } from '../season/load-season.ts';
import { type CropOfFarm, cropWaters } from './crops-of-farm.ts';
import { storeOfLoadedBed } from './store-of-loaded-bed.ts';
import { choicesOfFarm, type WaterChoices } from './water-choices.ts';
import { type WeatherRecord, weatherOfFarm } from './weather-record.ts';

export type PlantedOnBed = {
  readonly cropId: string;
  readonly crop: CropOfFarm;
  readonly inBedDate: IsoDate;
  readonly clearDate: IsoDate;
  readonly share: number;
};

export type WaterBed = {
  readonly bedId: string;
  readonly code: string;
  readonly block: string;
  readonly watering: string;
  readonly lineId: string | null;
  readonly store: BedStore;
  readonly year: BedYear;
  /** All that its store and year are worked out of, as text: beds of the same text have the same. */
  readonly madeOf: string;
  readonly plantings: readonly PlantedOnBed[];
  readonly loaded: LoadedBed;
  readonly planted: readonly Planted[];
};

export type LineName = { readonly lineId: string; readonly name: string };

export type WaterFarm = {
  readonly season: SeasonRecord;
  readonly choices: WaterChoices;
  readonly can_L: number;
  readonly record: WeatherRecord | null;
  readonly beds: readonly WaterBed[];
  /** Beds whose measures do not fit. */
  readonly left: readonly string[];
  readonly supplies: ReturnType<typeof suppliesOfFarm>;
  readonly timers: ReturnType<typeof timersOfFarm>;
  readonly notes: readonly string[];
  /** What the beds rest on beside themselves and what stands in them: while each of these is the same, so is an unchanged bed. */
  readonly restsOn: readonly unknown[];
};

function mulchOf(found: { readonly name: string; readonly kind: string } | undefined): Mulch {
  if (found === undefined) return 'none';
  return /plastic|film|landscape fabric/i.test(found.name) || found.kind === 'film' ? 'plastic' : 'organic';
}

/** All that the water of a season rests on, read once. @throws Refusal when the season is gone */
export function loadWater(db: FarmDb, seasonId: string | null): WaterFarm {
  const { id } = chosenSeason(db, seasonId);
  return derived(db, `water ${id}`, (before: WaterFarm | undefined) => waterLoaded(db, id, before));
}

const choicesKept = (db: FarmDb) => derived(db, 'water choices', () => choicesOfFarm(db));
const cropsKept = (db: FarmDb) => derived(db, 'water of crops', () => cropWaters(db));

/** What a season's water rests on, part by part, to be worked out ahead. */
export const partsOfWater = (db: FarmDb, season: SeasonRecord): readonly (() => unknown)[] => [
  () => cropsKept(db),
  () => standingIn(db, season),
];

type Planted = ReturnType<typeof plantedBetween>[number];

/** What stands in the beds in a season, by bed. */
const standingIn = (db: FarmDb, { startDate, endDate }: SeasonRecord): ReadonlyMap<string, readonly Planted[]> =>
  derived(db, `water: standing ${startDate} ${endDate}`, () =>
    Map.groupBy(plantedBetween(db, startDate, endDate), (row) => row.bedId),
  );

/** A bed that is made of the same as before keeps its store and year: a change seldom meets more than a few of a thousand. */
function waterLoaded(db: FarmDb, seasonId: string, farmBefore: WaterFarm | undefined): WaterFarm {
  const farm = farmOfFile(db);
  if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
  const season = chosenSeason(db, seasonId);
  const choices = choicesKept(db);
  const record = weatherOfFarm(db);
  const crops = cropsKept(db);
  const standing = standingIn(db, season);
  const lines = derived(db, 'line of beds', () => lineOfBeds(db));
  const mulches = derived(
    db,
    'mulch of designs',
    () => new Map(mulchOfDesigns(db).map(({ designId, ...rest }) => [designId, rest])),
  );
  const restsOn = [choices, record, crops, lines, mulches];
  const restsOnSame = restsOn.every((each, at) => each === farmBefore?.restsOn[at]);
  const before = new Map(farmBefore?.beds.map((bed) => [bed.bedId, bed]));
  const left: string[] = [];
  const beds: WaterBed[] = [];
  const standIns = new Set<string>();
  const noteStandIn = ({ name, water }: CropOfFarm): void => {
    if (water.like !== null) standIns.add(`${name} like ${water.like}`);
  };
  // beds of one design are alike: the rise is worked out once for each depth
  const rises = new Map<number, number>();
  const rise = (depth_m: number): number => {
    const known = rises.get(depth_m) ?? mixRise_mm_per_day(depth_m);
    rises.set(depth_m, known);
    return known;
  };
  for (const loaded of loadBeds(db)) {
    const planted = standing.get(loaded.bed.id) ?? [];
    const asBefore = restsOnSame ? before.get(loaded.bed.id) : undefined;
    if (asBefore?.loaded === loaded && sameRows(asBefore.planted, planted)) {
      for (const { crop } of asBefore.plantings) noteStandIn(crop);
      beds.push(asBefore);
      continue;
    }
    const store = storeOfLoadedBed(loaded, choices.wallFactor, rise);
    if (store === null) {
      left.push(loaded.bed.code);
      continue;
    }
    const mulch = mulchOf(mulches.get(loaded.design.id));
    const onBed = planted.flatMap((row) => {
      const crop = crops.get(row.cropId);
      return crop === undefined
        ? []
        : [{ ...row, crop, inBedDate: row.inBedDate as IsoDate, clearDate: row.clearDate as IsoDate }];
    });
    for (const { crop } of onBed) noteStandIn(crop);
    const around = { area_m2: store.area_m2, mulch, air: record?.air ?? null };
    const yearOf = {
      area_m2: store.area_m2,
      depth_m: store.depth_m,
      cover: {
        bareReduction: bareReductionOf(mulch),
        exposure: underShade_mm_per_day(choices.exposure, choices.shadeShare),
      },
      crops: onBed.map(({ inBedDate, clearDate, share, plants, inRow_m, row_m, crop }) =>
        cropOnBed(
          { inBedDate, clearDate, share, canopy_m2: plants > 0 ? plants * inRow_m * row_m : null, crop: crop.water },
          around,
        ),
      ),
    };
    const madeOf = JSON.stringify([store, yearOf]);
    const known = before.get(loaded.bed.id);
    const same = known?.madeOf === madeOf ? known : undefined;
    beds.push({
      bedId: loaded.bed.id,
      code: loaded.bed.code,
      block: loaded.block.code,
      watering: loaded.spec.watering,
      lineId: lines.get(loaded.bed.id) ?? null,
      store: same?.store ?? store,
      year: same?.year ?? bedYear(yearOf),
      madeOf,
      loaded,
      planted,
      plantings: onBed.map(({ cropId, crop, inBedDate, clearDate, share }) => ({ cropId, crop, inBedDate, clearDate, share })),
    });
  }
  return {
    season,
    choices,
    can_L: farm.can_L,
    record,
    restsOn,
    beds,
    left,
    supplies: suppliesOfFarm(db),
    timers: timersOfFarm(db),
    notes:
      standIns.size === 0
        ? []
        : [`No coefficients of their own, so another crop’s printed row stands in: ${[...standIns].sort().join('; ')}.`],
  };
}
