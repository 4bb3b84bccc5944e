import type { FarmFile } from '../../db/file/open-farm.ts';
import { insertAll } from '../../db/repositories/insert-all.ts';
import { bed, bedFill, bedMeasure, bedPart, block, design, designLayer, designPart } from '../../db/schema/beds.ts';
import { farm, overhead } from '../../db/schema/farm.ts';
import { harvest, harvestLot, sale, saleLine } from '../../db/schema/harvests.ts';
import { material, offer, offerBreak, supplier } from '../../db/schema/materials.ts';
import { demand, outlet, planting, plantingBed, price, season } from '../../db/schema/plantings.ts';
import {
  application,
  applicationBed,
  compostBatch,
  compostIngredient,
  compostReading,
  feedingPlan,
  soilTest,
  soilTestBed,
  soilTestValue,
  teaBatch,
  teaBatchBed,
} from '../../db/schema/soil.ts';
import { stockMove } from '../../db/schema/stock.ts';
import {
  lineNode,
  lineOutlet,
  linePart,
  lineRun,
  powerSource,
  pump,
  pumpPoint,
  timerEvent,
  waterLine,
} from '../../db/schema/water.ts';
import { station, weatherDay } from '../../db/schema/weather.ts';
import { labourEntry } from '../../db/schema/work.ts';
import { requireWhole } from '../../planner/errors.ts';
import { convert } from '../../planner/units/convert.ts';
import { fillLibrary } from '../library/fill-library.ts';
import { readCropLibrary } from '../library/read-crops.ts';
import { bedHistory } from './bed-history.ts';
import { sampleBedSizes } from './bed-sizes.ts';
import { sampleBeds } from './beds.ts';
import { sampleCompost } from './compost-heap.ts';
import { factsByCrop } from './crop-facts.ts';
import { designRows } from './designs.ts';
import { sampleHardware } from './hardware.ts';
import { pastSeason } from './harvests.ts';
import { plantSeason } from './plantings.ts';
import { seededRandom } from './random.ts';
import { sampleSeed } from './seed.ts';
import { outlets, sampleDemand, samplePrices } from './selling.ts';
import { soilHistory } from './soil-history.ts';
import { sampleStock } from './stock.ts';
import { sampleOffers, suppliers, unitPriceOf } from './suppliers.ts';
import { sampleWaterLines } from './water-line.ts';
import { SAMPLE_STATION, sampleWeather } from './weather.ts';

export type SampleOptions = {
  readonly resources: string;
  readonly beds: number;
  /** Past seasons with harvests; one more is being planned. */
  readonly years: number;
  readonly seed: number;
};

/** The year being planned in the invented farm. */
const PLANNED_YEAR = 2027;

export function requireSampleOptions(options: Pick<SampleOptions, 'beds' | 'years' | 'seed'>): void {
  requireWhole('beds', options.beds, 0, 20_000);
  requireWhole('years', options.years, 0, 30);
  requireWhole('seed', options.seed, 0, 4_294_967_295);
}

/**
 * Fills a new farm file with the invented farm: beds of all kinds, two or more seasons behind it, one being planned. The same
 * options always give the same farm.
 * @throws InputError for options out of range
 */
export function fillSampleFarm({ db }: FarmFile, options: SampleOptions): void {
  requireSampleOptions(options);
  const random = seededRandom(options.seed);
  const years = Array.from({ length: options.years }, (_, at) => PLANNED_YEAR - options.years + at);
  const builtDate = `${PLANNED_YEAR - Math.max(1, options.years)}-02-20`;
  const seasonOf = (year: number) => `season-${year}`;

  fillLibrary(db, options.resources);
  insertAll(db, material, sampleHardware);
  insertAll(db, supplier, suppliers);
  const offers = sampleOffers('2026-11-02');
  insertAll(db, offer, offers.offers);
  const facts = factsByCrop(readCropLibrary(options.resources));
  const seed = sampleSeed(facts, '2026-11-02');
  insertAll(db, material, seed.materials);
  insertAll(db, offer, seed.offers);
  insertAll(db, offerBreak, offers.breaks);
  insertAll(db, station, [SAMPLE_STATION]);
  insertAll(db, weatherDay, sampleWeather(options.resources));
  db.insert(farm)
    .values({
      id: 1,
      name: 'Saltgrass Lane Market Garden (invented)',
      invented: true,
      latitude_deg: 47.6,
      longitude_deg: -122.3,
      elevation_m: 35,
      coastal: true,
      wage_minor_per_h: 1900,
      interest_share_per_year: 0.05,
      electricity_minor_per_kWh: 14,
      water_minor_per_m3: 180,
      recordsRegime: 'organic',
      organicOnly: true,
      stationId: SAMPLE_STATION.id,
      siteOutline_m: [
        [0, 0],
        [46, 0],
        [46, 46],
        [0, 46],
      ],
      bucket_L: convert(5, 'us_gal', 'L'),
      vehicle_L: 1500,
      vehicle_kg: 650,
    })
    .run();

  insertAll(db, design, designRows.designs);
  insertAll(db, designPart, designRows.parts);
  insertAll(db, designLayer, designRows.layers);
  const { blocks, beds } = sampleBeds(options.beds, builtDate);
  insertAll(db, block, blocks);
  insertAll(db, bed, beds);
  const sizes = sampleBedSizes(beds);
  const history = bedHistory(beds, sizes, (materialId) => unitPriceOf(offers.offers, materialId), years, random);
  insertAll(db, bedPart, history.parts);
  insertAll(db, bedFill, history.fills);
  insertAll(db, bedMeasure, history.measures);

  insertAll(db, outlet, outlets);
  insertAll(db, price, samplePrices(`${PLANNED_YEAR - options.years}-01-01`));
  const grown = new Map<string, string[]>();
  for (const year of [...years, PLANNED_YEAR]) {
    const past = year < PLANNED_YEAR;
    db.insert(season)
      .values({
        id: seasonOf(year),
        name: String(year),
        startDate: `${year}-01-01`,
        endDate: `${year}-12-31`,
        state: past ? 'closed' : 'planning',
        benchArea_m2: 12,
        labour_h_per_week: 60,
      })
      .run();
    const made = plantSeason({
      seasonId: seasonOf(year),
      year,
      past,
      beds: beds.map((row) => ({ bed: row, area_m2: sizes.get(row.id)?.area_m2 ?? 0 })),
      facts,
      history: grown,
      random,
    });
    insertAll(
      db,
      planting,
      made.map(({ row }) => row),
    );
    insertAll(
      db,
      plantingBed,
      made.map(({ bed: row }) => row),
    );
    insertAll(db, overhead, [
      {
        id: `overhead-${year}-insurance`,
        seasonId: seasonOf(year),
        name: 'Insurance',
        date: `${year}-01-15`,
        amount_minor: 62_000,
      },
      {
        id: `overhead-${year}-market`,
        seasonId: seasonOf(year),
        name: 'Market stall fees',
        date: `${year}-04-01`,
        amount_minor: 84_000,
        shareKey: 'income',
      },
      {
        id: `overhead-${year}-land`,
        seasonId: seasonOf(year),
        name: 'Land rent',
        date: `${year}-01-02`,
        amount_minor: 95_000,
        shareKey: 'area',
      },
    ]);
    if (!past) continue;
    const sold = pastSeason(
      made,
      outlets.filter((each) => each.kind !== 'own-use').map((each) => each.id),
      random,
    );
    insertAll(db, harvestLot, sold.lots);
    insertAll(db, harvest, sold.harvests);
    insertAll(db, sale, sold.sales);
    insertAll(db, saleLine, sold.saleLines);
    insertAll(db, labourEntry, sold.labour);
  }
  insertAll(db, demand, sampleDemand(seasonOf(PLANNED_YEAR), PLANNED_YEAR, beds.length));

  const soil = soilHistory(years, beds, new Map([...sizes].map(([id, size]) => [id, size.area_m2])), seasonOf, random);
  insertAll(db, soilTest, soil.tests);
  insertAll(db, soilTestValue, soil.values);
  insertAll(db, soilTestBed, soil.testBeds);
  insertAll(db, application, soil.applications);
  const materialOf = new Map(soil.applications.map((each) => [each.id, each.materialId]));
  insertAll(
    db,
    applicationBed,
    soil.applicationBeds.map((row) => ({
      ...row,
      cost_minor: Math.round(row.amount_kg * unitPriceOf(offers.offers, materialOf.get(row.applicationId) ?? '')),
    })),
  );
  const compost = sampleCompost(years, beds, new Map([...sizes].map(([id, size]) => [id, size.area_m2])));
  insertAll(db, compostBatch, compost.heaps);
  insertAll(db, compostIngredient, compost.ingredients);
  insertAll(db, compostReading, compost.readings);
  insertAll(db, teaBatch, compost.teas);
  insertAll(db, teaBatchBed, compost.teaBeds);
  insertAll(db, feedingPlan, [
    {
      id: 'feeding-planned',
      seasonId: seasonOf(PLANNED_YEAR),
      tolerance_share: 0.15,
      limeMaterialId: 'lime-pelleted',
      sulfurMaterialId: 'sulfur-elemental',
      materialIds: [
        'feather-meal',
        'soybean-meal',
        'bone-meal-steamed',
        'potassium-sulfate',
        'langbeinite',
        'kelp-meal',
        'alfalfa-meal',
      ],
    },
  ]);

  const line = sampleWaterLines(beds);
  insertAll(db, waterLine, line.lines);
  insertAll(db, pump, line.pumps);
  insertAll(db, pumpPoint, line.points);
  insertAll(db, lineNode, line.nodes);
  insertAll(db, lineRun, line.runs);
  insertAll(db, lineOutlet, line.outlets);
  insertAll(db, timerEvent, line.timers);
  insertAll(db, powerSource, line.power);
  insertAll(db, linePart, line.parts);

  const stock = sampleStock(years, beds.length, offers.offers, soil);
  insertAll(db, stock.purchaseTable, stock.purchases);
  insertAll(db, stock.lineTable, stock.lines);
  insertAll(db, stockMove, stock.moves);
}
