import type { AppliedBed } from '../../db/repositories/applications.ts';
import { looseVolume_L } from '../../planner/fertility/bed-dose.ts';
import { measuredDose } from '../../planner/fertility/measures.ts';

/** One dose as it stands on a bed's card. */
export function doseView(row: AppliedBed, scoop_L: number) {
  const { application, material } = row;
  const density = material.moistDensity_kg_per_m3;
  const volume_L = density === null ? null : looseVolume_L(row.amount_kg, density);
  return {
    applicationBedId: row.applicationBedId,
    applicationId: application.id,
    bedId: row.bedId,
    code: row.code,
    materialId: material.id,
    material: material.name,
    date: application.date,
    state: application.state,
    method: application.method,
    reason: application.reason,
    who: application.who,
    incorporatedDate: application.incorporatedDate,
    amount_kg: row.amount_kg,
    volume_L,
    measure: volume_L === null ? null : measuredDose(volume_L, scoop_L),
    cost_minor: row.cost_minor,
    lot: row.lot ?? '',
    supplier: row.supplier ?? '',
    source: material.source,
    organicUse: material.organicUse,
    animalOrigin: material.animalOrigin,
    dusty: material.dusty,
    caustic: (material.neutralisingShare ?? 0) > 1.1,
    density_kg_per_m3: density,
    note: application.note,
  };
}

export type DoseView = ReturnType<typeof doseView>;
