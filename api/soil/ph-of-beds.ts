import { derived } from '../../db/file/derived.ts';
import type { FarmDb } from '../../db/file/open-farm.ts';
import { applicationsDone } from '../../db/repositories/applications.ts';
import { feedingMaterials } from '../../db/repositories/feeding.ts';
import { type SoilTestRecord, soilTests } from '../../db/repositories/soil-tests.ts';
import { type PhPlan, type PhPlanInput, phPlan } from '../../planner/fertility/ph-plan.ts';
import type { SoilTables } from '../../planner/fertility/soil-tables.ts';
import { type LoadedBed, loadBeds } from '../beds/load-beds.ts';
import { feedingPlanFor } from './feeding-plan.ts';
import { testsByBed } from './test-view.ts';

export type BedPh = {
  readonly bed: LoadedBed;
  readonly test: SoilTestRecord | undefined;
  readonly input: PhPlanInput | null;
  readonly plan: PhPlan | null;
  readonly materialId: string | null;
  readonly material: string;
  readonly dusty: boolean;
  readonly density_kg_per_m3: number | null;
};

/** Lime is worked in so deep, where the sheet does not say: 6 in. Common practice, no source. */
const WORKED_IN_M = 0.1524;

/** What every bed's pH asks for by its newest sheet, in the lime and sulfur of the season's plan. */
export const phOfBeds = (db: FarmDb, seasonId: string, tables: SoilTables): readonly BedPh[] =>
  derived(db, `ph ${seasonId}`, () => phRead(db, seasonId, tables));

function phRead(db: FarmDb, seasonId: string, tables: SoilTables): readonly BedPh[] {
  const plan = feedingPlanFor(db, seasonId);
  const materials = new Map(feedingMaterials(db).map((each) => [each.id, each]));
  const lime = plan.limeMaterialId === null ? undefined : materials.get(plan.limeMaterialId);
  const sulfur = plan.sulfurMaterialId === null ? undefined : materials.get(plan.sulfurMaterialId);
  const limeWorthShare = (lime?.neutralisingShare ?? 1) * (lime?.finenessShare ?? 1);
  const tests = testsByBed(soilTests(db));
  const limed = Map.groupBy(
    applicationsDone(db).filter((row) => (row.material.neutralisingShare ?? 0) > 0.3),
    (row) => row.bedId,
  );
  return loadBeds(db).map((bed) => {
    const test = tests.get(bed.bed.id)?.find((each) => each.test.ph !== null);
    const area_m2 = bed.figures?.area_m2 ?? 0;
    if (test === undefined || test.test.ph === null || area_m2 === 0)
      return { bed, test, input: null, plan: null, materialId: null, material: '', dusty: false, density_kg_per_m3: null };
    const since_kg = (limed.get(bed.bed.id) ?? [])
      .filter((row) => row.application.date > test.test.date)
      .reduce((sum, row) => sum + row.amount_kg * (row.material.neutralisingShare ?? 0) * (row.material.finenessShare ?? 1), 0);
    const input: PhPlanInput = {
      tables,
      kind: test.test.kind,
      soilPh: test.test.ph,
      bufferPh: test.test.bufferPh,
      bufferMethod: test.test.bufferMethod,
      texture: test.test.texture ?? bed.block.texture,
      targetPh: test.test.kind === 'media' ? Math.min(plan.targetPh, 6) : plan.targetPh,
      area_m2,
      depth_m:
        test.test.kind === 'media' ? bed.spec.fillDepth_m : Math.min(bed.spec.fillDepth_m, test.test.depth_m ?? WORKED_IN_M),
      limeSince_kg_per_m2: since_kg / area_m2,
      limeWorthShare,
      sulfurShare: sulfur?.sShare ?? 0.9,
    };
    const found = phPlan(input);
    const material = found.act === 'lime' ? lime : found.act === 'sulfur' ? sulfur : undefined;
    return {
      bed,
      test,
      input,
      plan: found,
      materialId: material?.id ?? null,
      material: material?.name ?? '',
      dusty: material?.dusty ?? false,
      density_kg_per_m3: material?.moistDensity_kg_per_m3 ?? null,
    };
  });
}
