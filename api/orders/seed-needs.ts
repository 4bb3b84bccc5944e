import type { FarmDb } from '../../db/file/open-farm.ts';
import { cropsOfFarm } from '../../db/repositories/crops.ts';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { plantingsOfSeason } from '../../db/repositories/plantings.ts';
import { type MaterialFacts, materialFacts, seedAndTrayMaterials } from '../../db/repositories/stock.ts';
import { addDays, type IsoDate } from '../../planner/calendar.ts';
import type { FarmNeed } from '../../planner/orders/needs.ts';
import { mostTraysAtOnce, type StandingTrays } from '../../planner/orders/trays-at-once.ts';
import { seedMass_g, seedNeed } from '../../planner/season/seed-need.ts';
import { trayNeed, usualTray } from '../../planner/season/trays.ts';
import { convert } from '../../planner/units/convert.ts';
import { type Gathered, gathered, inBaseUnit, type OpenNeed } from './gathered.ts';

const DAYS_BEFORE_SOWING = 14;
/** Where neither lot nor library knows the germination. Common practice, no source. */
const USUAL_GERMINATION = 0.85;
const OUTDOOR_EMERGENCE = 0.75;
const SEED_OVERAGE = 0.1;
/** Some starts do not take: so many more are bought. Common practice, no source. */
const START_OVERAGE = 0.05;

type Materials = ReturnType<typeof seedAndTrayMaterials>;
type Planting = ReturnType<typeof plantingsOfSeason>[number];

/**
 * Seed for each planting still to be sown, the mix that its cells are filled with and the trays that its starts stand in at the busiest; starts, sets, crowns or tubers for
 * those that are set out. A crop raised from seed for which the farm has only starts is bought as starts.
 */
export function seedNeeds(db: FarmDb, seasonId: string): Gathered {
  const materials = seedAndTrayMaterials(db);
  const crops = new Map(cropsOfFarm(db).map((crop) => [crop.id, crop.name]));
  const trays = materials.filter((each) => each.cells !== null);
  const mix = trayMix(db);
  const standing: (StandingTrays & { readonly tray: string })[] = [];
  const all: (FarmNeed | OpenNeed)[] = [];
  for (const planting of plantingsOfSeason(db, seasonId)) {
    if (planting.state !== 'planned') continue;
    const name = crops.get(planting.cropId) ?? '';
    const seed = ofPlanting(materials, planting, 'seed');
    const start = ofPlanting(materials, planting, 'start');
    const asStarts = planting.method === 'set' || (planting.method === 'transplant' && seed === undefined && start !== undefined);
    if (asStarts) {
      all.push(startNeed(planting, name, start ?? (planting.method === 'set' ? seed : undefined)));
      continue;
    }
    const { seeds, stations } = seedNeed({
      plants: planting.plants,
      germination_share: seed?.germinationShare ?? USUAL_GERMINATION,
      emergence_share: planting.method === 'direct' ? OUTDOOR_EMERGENCE : 1,
      seedsPerHole: planting.seedsPerHole,
      overage_share: SEED_OVERAGE,
    });
    const sown = (planting.sowDate ?? planting.inBedDate) as IsoDate;
    const tray = planting.method === 'transplant' ? (trays.find((each) => each.cells === planting.cells) ?? trays[0]) : undefined;
    const cellsPerTray = tray?.cells ?? planting.cells ?? usualTray(planting.cropId);
    const inTrays = planting.method === 'transplant' ? trayNeed({ cells: stations, cellsPerTray }) : undefined;
    if (tray !== undefined && inTrays !== undefined)
      standing.push({
        from: sown,
        to: planting.inBedDate as IsoDate,
        trays: inTrays.trays,
        tray: tray.materialId,
      });
    if (inTrays !== undefined) all.push(mixNeed(mix, planting, name, sown, inTrays.mix_L));
    all.push(ofSeed(planting, name, sown, seeds, seed));
  }
  return gathered([...summed(all), ...trayNeeds(standing)]);
}

/** The material of a planting: that of its variety before that of its crop. */
function ofPlanting(materials: Materials, planting: Planting, kind: 'seed' | 'start'): Materials[number] | undefined {
  const ofCrop = materials.filter((each) => each.kind === kind && each.cropId === planting.cropId);
  return (
    ofCrop.find((each) => each.varietyId !== null && each.varietyId === planting.varietyId) ??
    ofCrop.find((each) => each.varietyId === null)
  );
}

function ofSeed(
  planting: Planting,
  name: string,
  sown: IsoDate,
  seeds: number,
  seed: Materials[number] | undefined,
): FarmNeed | OpenNeed {
  const reason = `${name}: plantings of the season`;
  if (seed === undefined)
    return { key: `seed:${planting.cropId}`, name: `Seed of ${name}`, amount: seeds, unit: 'count', reason, lacks: 'material' };
  return byPieces(seed, seeds, reason, {
    key: `seed:${planting.id}`,
    source: 'seed',
    reason: `${name} ${planting.number}, sown ${sown}`,
    wanted: addDays(sown, -DAYS_BEFORE_SOWING),
  });
}

type TrayMix = { readonly facts: MaterialFacts; readonly materialId: string };

/** The mix that trays are filled with, as the farm has chosen it. */
const trayMix = (db: FarmDb): TrayMix => ({ facts: materialFacts(db), materialId: farmOfFile(db)?.trayMixId ?? '' });

/** Cells are filled on the day of sowing: the mix is there as early as the seed. */
function mixNeed(
  { facts, materialId }: TrayMix,
  planting: Planting,
  name: string,
  sown: IsoDate,
  mix_L: number,
): FarmNeed | OpenNeed {
  const reason = `Mix for trays: ${name} ${planting.number}, sown ${sown}`;
  if (!facts.has(materialId))
    return { key: 'tray-mix', name: 'Mix for trays', amount: mix_L, unit: 'L', reason: 'Trays of the season', lacks: 'tray-mix' };
  return inBaseUnit(facts, {
    key: `tray-mix:${planting.id}`,
    source: 'tray-mix',
    materialId,
    loose_L: mix_L,
    reason,
    wanted: addDays(sown, -DAYS_BEFORE_SOWING),
  });
}

/** Starts are wanted on the day they are set out: they do not keep. */
function startNeed(planting: Planting, name: string, start: Materials[number] | undefined): FarmNeed | OpenNeed {
  const amount = Math.ceil(planting.plants * (1 + START_OVERAGE) - 1e-9);
  const wanted = planting.inBedDate as IsoDate;
  if (start === undefined)
    return {
      key: `start:${planting.cropId}`,
      name: `Starts of ${name}`,
      amount,
      unit: 'count',
      reason: `${name}: plantings of the season`,
      lacks: 'material',
    };
  return byPieces(start, amount, `${name}: plantings of the season`, {
    key: `start:${planting.id}`,
    source: 'start',
    reason: `${name} ${planting.number}, set out ${wanted}`,
    wanted,
  });
}

/** Seeds, sets or tubers in the unit they are bought by; by weight only where it is known how many make a gram. */
function byPieces(
  material: Materials[number],
  pieces: number,
  openReason: string,
  need: Pick<FarmNeed, 'key' | 'source' | 'reason' | 'wanted'>,
): FarmNeed | OpenNeed {
  const { materialId, baseUnit, seedsPer_g } = material;
  if (baseUnit !== 'kg') return { ...need, materialId, amount: pieces };
  return seedsPer_g === null
    ? {
        key: `pieces:${materialId}`,
        name: material.name,
        amount: pieces,
        unit: 'count',
        reason: openReason,
        lacks: 'seeds-per-gram',
      }
    : { ...need, materialId, amount: convert(seedMass_g(pieces, seedsPer_g), 'g', 'kg') };
}

/** Open needs of one crop are one line. */
function summed(all: readonly (FarmNeed | OpenNeed)[]): readonly (FarmNeed | OpenNeed)[] {
  const { needs, open } = gathered(all);
  const byKey = [...Map.groupBy(open, (each) => each.key).values()].flatMap((of): readonly OpenNeed[] => {
    const [first] = of;
    return first === undefined ? [] : [{ ...first, amount: of.reduce((sum, each) => sum + each.amount, 0) }];
  });
  return [...needs, ...byKey];
}

function trayNeeds(standing: readonly (StandingTrays & { readonly tray: string })[]): readonly FarmNeed[] {
  return [...Map.groupBy(standing, (each) => each.tray)].flatMap(([materialId, of]): readonly FarmNeed[] => {
    const busiest = mostTraysAtOnce(of);
    return busiest === null
      ? []
      : [
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
