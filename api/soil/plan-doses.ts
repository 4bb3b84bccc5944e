import { newId } from '../../db/file/new-id.ts';
import type { NewApplication, NewApplicationBed } from '../../db/repositories/applications.ts';
import { addDays, type IsoDate } from '../../planner/calendar.ts';

export type DoseToPlan = {
  readonly bedId: string;
  readonly materialId: string;
  readonly dose_kg: number;
  readonly date: IsoDate;
};

/** Doses as planned applications: one for each material and day, with its beds; parts of a dose so many weeks apart. */
export function plannedApplications(
  doses: readonly DoseToPlan[],
  seasonId: string,
  reason: string,
  parts: number,
  weeksApart: number,
): { readonly applications: readonly NewApplication[]; readonly beds: readonly NewApplicationBed[] } {
  const applications = new Map<string, NewApplication>();
  const beds: NewApplicationBed[] = [];
  for (const dose of doses) {
    for (let part = 0; part < parts; part += 1) {
      const date = addDays(dose.date, 7 * weeksApart * part);
      const key = `${dose.materialId} ${date}`;
      const application = applications.get(key) ?? {
        id: newId(),
        seasonId,
        materialId: dose.materialId,
        date,
        state: 'planned' as const,
        method: part === 0 ? 'broadcast and worked in' : 'side-dressed',
        reason,
      };
      applications.set(key, application);
      beds.push({ id: newId(), applicationId: application.id, bedId: dose.bedId, amount_kg: dose.dose_kg / parts });
    }
  }
  return { applications: [...applications.values()], beds };
}
