import type { BoardLine } from './board-lines.ts';
import type { Lifted } from './lifted.ts';

/** Which strip has the focus: a line and a planting on it. */
export type Place = { readonly lineId: string; readonly plantingId: string };

const withStrips = (lines: readonly BoardLine[]) =>
  lines.flatMap((line) => (line.kind === 'block' || line.plantings.length === 0 ? [] : [line]));

/** Where the focus goes: left and right along the bed, up and down to the nearest planting of the next bed that has one. */
export function nextPlace(lines: readonly BoardLine[], place: Place | null, key: string): Place | null {
  const all = withStrips(lines);
  const at = all.findIndex((line) => line.id === place?.lineId);
  const line = all[at];
  const first = all[0];
  if (place === null || line === undefined)
    return first === undefined ? null : { lineId: first.id, plantingId: first.plantings[0]?.id ?? '' };
  const here = line.plantings.findIndex((planting) => planting.id === place.plantingId);
  const along = { ArrowRight: here + 1, ArrowLeft: here - 1, Home: 0, End: line.plantings.length - 1 }[key];
  if (along !== undefined) {
    const next = line.plantings[along];
    return next === undefined ? place : { lineId: line.id, plantingId: next.id };
  }
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, PageDown: at + 10, PageUp: at - 10 }[key];
  if (to === undefined) return place;
  const next = all[Math.min(Math.max(to, 0), all.length - 1)];
  const start = line.plantings[here]?.inBed ?? '';
  const nearest = next?.plantings.find((planting) => planting.inBed >= start) ?? next?.plantings.at(-1);
  return next === undefined || nearest === undefined ? place : { lineId: next.id, plantingId: nearest.id };
}

/** A lifted planting under the arrow keys: a day, a week with Shift, or to the bed above or below. Null for other keys. */
export function liftedByKey(lines: readonly BoardLine[], lifted: Lifted, key: string, shift: boolean): Lifted | null {
  const step = shift ? 7 : 1;
  if (key === 'ArrowRight') return { ...lifted, days: lifted.days + step };
  if (key === 'ArrowLeft') return { ...lifted, days: lifted.days - step };
  if ((key !== 'ArrowUp' && key !== 'ArrowDown') || lifted.how !== 'move') return null;
  const beds = lines.filter((line) => line.kind === 'bed');
  const at = beds.findIndex((line) => line.id === lifted.bedId);
  const next = beds[key === 'ArrowDown' ? at + 1 : Math.max(0, at - 1)];
  return next === undefined ? lifted : { ...lifted, bedId: next.id };
}
