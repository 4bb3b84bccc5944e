import type { FarmDb } from '../../db/file/open-farm.ts';
import { cropsOfFarm } from '../../db/repositories/crops.ts';
import { plantingsOfSeason, spansOfSeason } from '../../db/repositories/plantings.ts';
import type { SeasonRecord } from '../../db/repositories/seasons.ts';
import { loadBeds } from '../beds/load-beds.ts';
import type { ReportReader } from './report-reader.ts';
import type { Cell, ReportSection } from './section.ts';

/** What goes in which bed, and when. */
export function planSection(db: FarmDb, season: SeasonRecord, { date }: ReportReader): ReportSection {
  const crops = new Map(cropsOfFarm(db).map((crop) => [crop.id, crop.name]));
  const beds = new Map(loadBeds(db).map((bed) => [bed.bed.id, bed]));
  const plantings = new Map(plantingsOfSeason(db, season.id).map((planting) => [planting.id, planting]));
  const spans = spansOfSeason(db, season.id);
  const rows = spans
    .flatMap((span) => {
      const planting = plantings.get(span.plantingId);
      if (planting === undefined) return [];
      const bed = beds.get(span.bedId);
      const share = span.toShare - span.fromShare;
      const area = bed?.figures?.area_m2;
      const cells: Cell[] = [
        bed?.bed.code ?? 'retired bed',
        crops.get(planting.cropId) ?? planting.cropId,
        area === undefined ? null : area * share,
        span.plants,
        planting.sowDate ?? '',
        planting.inBedDate,
        planting.firstHarvestDate,
        planting.lastHarvestDate,
        planting.clearDate,
        planting.yieldTypical === null
          ? null
          : { amount: planting.yieldTypical * shareOfPlanting(span.plants, planting.plants), unit: planting.yieldUnit },
        planting.yieldUnit,
      ];
      return [cells];
    })
    .sort(
      (a, b) => String(a[0]).localeCompare(String(b[0]), 'en', { numeric: true }) || String(a[5]).localeCompare(String(b[5])),
    );
  const area = new Map<string, number>();
  for (const row of rows) area.set(String(row[1]), (area.get(String(row[1])) ?? 0) + Number(row[2] ?? 0));
  const bars = [...area]
    .sort((a, b) => b[1] - a[1])
    .slice(0, 30)
    .map(([label, value]) => ({ label, parts: [{ name: 'Area', value }] }));
  const planted = new Set(spans.map((span) => span.bedId)).size;
  return {
    title: 'What goes where, and when',
    says: [
      `${plantings.size} plantings of ${area.size} crops in ${planted} of ${beds.size} beds, from ${date(season.startDate)} to ${date(season.endDate)}.`,
    ],
    charts: bars.length === 0 ? [] : [{ title: 'Planted area by crop, all plantings of the season added', unit: 'm2', bars }],
    tables: [
      {
        name: 'plan-by-bed',
        title: 'Plan by bed',
        columns: [
          { head: 'Bed', unit: null, name: 'bed' },
          { head: 'Crop', unit: null, name: 'crop' },
          { head: 'Area', unit: 'm2', name: 'area_m2' },
          { head: 'Plants', unit: '', name: 'plants' },
          { head: 'Sow', unit: null, name: 'sow' },
          { head: 'In bed', unit: null, name: 'in_bed' },
          { head: 'First harvest', unit: null, name: 'first_harvest' },
          { head: 'Last harvest', unit: null, name: 'last_harvest' },
          { head: 'Bed free', unit: null, name: 'bed_free' },
          { head: 'Expected', unit: 'count', name: 'expected_amount' },
          { head: 'Unit', unit: null, name: 'unit', onlyInFile: true },
        ],
        rows,
      },
    ],
    cautions: [],
    sources: [],
  };
}

const shareOfPlanting = (plants: number, all: number): number => (all > 0 ? plants / all : 0);
