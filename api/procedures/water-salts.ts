import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { seasonsOfFarm } from '../../db/repositories/seasons.ts';
import { addWaterTest, conductivityTests, removeWaterTest } from '../../db/repositories/water-demand.ts';
import { InputError, refuse } from '../../planner/errors.ts';
import { soilStore_L } from '../../planner/water/bed-store.ts';
import {
  dissolved_mg_per_L,
  explainLeaching,
  leachingShare,
  saltForYield_dS_per_m,
  saltRestriction,
  saltsCarried_g,
  waterBeforeFlush_L,
  yieldInSalt,
} from '../../planner/water/salts.ts';
import { Refusal } from '../errors.ts';
import { change, read } from '../procedure.ts';
import { demandOfFarm } from '../water/demand-of-year.ts';
import { loadWater, type PlantedOnBed } from '../water/load-water.ts';
import { choicesOfFarm } from '../water/water-choices.ts';

/** The share of the water that must drain, or null where no share below one would do. */
function leachingOrNone(ecw_dS_per_m: number, ece_dS_per_m: number): number | null {
  try {
    return leachingShare({ ecw_dS_per_m, ece_dS_per_m });
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

const toleranceOf = ({ crop: { water } }: PlantedOnBed) =>
  water.saltThreshold_dS_per_m === null || water.saltSlope_share_per_dS_per_m === null
    ? null
    : { threshold_dS_per_m: water.saltThreshold_dS_per_m, slope_share_per_dS_per_m: water.saltSlope_share_per_dS_per_m };

export const waterSalts = {
  /** Salts of the water against the season's crops, and when each closed bed is to be flushed. */
  salts: read({
    input: z.object({ seasonId: z.string().nullable() }),
    run({ db }, input) {
      const tests = conductivityTests(db);
      const choices = choicesOfFarm(db);
      const ecw = tests[0]?.value ?? choices.ecw_dS_per_m;
      const farm = seasonsOfFarm(db).length === 0 ? { beds: [], record: null } : loadWater(db, input.seasonId);
      const planted = new Map(farm.beds.flatMap((bed) => bed.plantings).map((planting) => [planting.cropId, planting]));
      const year = farm.record?.years.at(-1);
      const demand =
        !('season' in farm) || farm.record === null || year === undefined ? [] : demandOfFarm(db, farm, farm.record, year).beds;
      const need = new Map(demand.map((bed) => [bed.bedId, bed.need_L]));
      return {
        tests,
        ecw_dS_per_m: ecw,
        restriction: ecw === null ? null : saltRestriction(ecw),
        dissolved_mg_per_L: ecw === null ? null : dissolved_mg_per_L(ecw),
        yieldShare: choices.saltYieldShare,
        crops: [...planted.values()]
          .map((planting) => {
            const tolerance = toleranceOf(planting);
            const bears = tolerance === null ? null : saltForYield_dS_per_m(tolerance, choices.saltYieldShare);
            return {
              cropId: planting.cropId,
              name: planting.crop.name,
              threshold_dS_per_m: tolerance?.threshold_dS_per_m ?? null,
              bears_dS_per_m: bears,
              leachingShare: bears === null || ecw === null ? null : leachingOrNone(ecw, bears),
              tooSalty: bears !== null && ecw !== null && leachingOrNone(ecw, bears) === null,
              // at 15 to 20 % leaching the soil's extract comes to 1.5 times the water
              yieldShare: tolerance === null || ecw === null ? null : yieldInSalt(tolerance, 1.5 * ecw),
            };
          })
          .sort((a, b) => a.name.localeCompare(b.name, 'en')),
        closedBeds: farm.beds
          .filter((bed) => bed.store.free !== null)
          .map((bed) => {
            const thresholds = bed.plantings.flatMap((planting) => toleranceOf(planting)?.threshold_dS_per_m ?? []);
            const least = thresholds.length === 0 ? null : Math.min(...thresholds);
            const soilWater_L = soilStore_L(bed.store) + (bed.store.free?.fill_L ?? 0);
            const need_L = need.get(bed.bedId) ?? null;
            const before =
              ecw === null || ecw <= 0 || least === null
                ? null
                : waterBeforeFlush_L({ ecw_dS_per_m: ecw, soilWater_L, threshold_dS_per_m: least });
            return {
              bedId: bed.bedId,
              code: bed.code,
              kind: bed.store.free?.kind ?? 'basin',
              threshold_dS_per_m: least,
              soilWater_L,
              season_L: need_L,
              salts_g: ecw === null || need_L === null ? null : saltsCarried_g(ecw, need_L),
              before_L: before,
              flushes: before === null || need_L === null || before <= 0 ? null : Math.max(1, Math.ceil(need_L / before)),
            };
          }),
      };
    },
  }),
  explainLeaching: read({
    input: z.object({ ecw_dS_per_m: z.number(), ece_dS_per_m: z.number() }),
    run: (_, input) => explainLeaching(input),
  }),
  addSaltTest: change({
    note: ({ date }) => `Enter the water test of ${date}`,
    input: z.object({
      date: z.iso.date('A test has a date.'),
      point: z.string().max(200),
      ecw_dS_per_m: z.number('The conductivity is a number.'),
      laboratory: z.string().max(200),
    }),
    run({ db }, input) {
      if (input.ecw_dS_per_m < 0 || input.ecw_dS_per_m > 20)
        refuse(
          'ecw_dS_per_m',
          'out-of-range',
          'Irrigation water has 0 to 20 dS/m. A meter in µS/cm reads a thousand times as much.',
        );
      const id = newId<string>();
      addWaterTest(db, {
        id,
        date: input.date,
        point: input.point,
        analyte: 'conductivity',
        value: input.ecw_dS_per_m,
        unit: 'dS/m',
        laboratory: input.laboratory,
      });
      return { id };
    },
  }),
  removeSaltTest: change({
    note: 'Take a water test away',
    input: z.object({ testId: z.string() }),
    run({ db }, { testId }) {
      if (!removeWaterTest(db, testId)) throw new Refusal({ code: 'not-found', what: 'water test' });
      return { removed: true };
    },
  }),
};
