import { requireRange } from '../errors.ts';

/** What is to be carried. What has a weight or a volume that is not known is counted apart. */
export type Freight = { readonly weight_kg: number | null; readonly volume_L: number | null };
export type Vehicle = { readonly carries_kg: number | null; readonly holds_L: number | null };

export type LoadPlan = {
  readonly weight_kg: number;
  readonly volume_L: number;
  readonly unknown: number;
  /** Journeys at least: by weight or by volume, whichever asks for more. Empty where the vehicle is not known. */
  readonly trips: number | null;
  readonly by: 'weight' | 'volume' | null;
};

/**
 * Weight and volume of a purchase against the vehicle: `trips = ceil(max(weight / carries, volume / holds))`.
 *
 * Something to carry is one journey at least, also where no weight is known. A floor, not a stowing plan: pieces do not always fit together. The vehicle's own plate says what it may carry.
 * Common practice, no source.
 * @throws InputError naming the field
 */
export function loadPlan(freight: readonly Freight[], vehicle: Vehicle): LoadPlan {
  const weight_kg = freight.reduce((sum, each) => sum + (each.weight_kg ?? 0), 0);
  const volume_L = freight.reduce((sum, each) => sum + (each.volume_L ?? 0), 0);
  const unknown = freight.filter((each) => each.weight_kg === null || each.volume_L === null).length;
  const byWeight = vehicle.carries_kg === null ? null : ratio('carries_kg', weight_kg, vehicle.carries_kg, 'kg');
  const byVolume = vehicle.holds_L === null ? null : ratio('holds_L', volume_L, vehicle.holds_L, 'L');
  const most = Math.max(byWeight ?? 0, byVolume ?? 0);
  if (byWeight === null && byVolume === null) return { weight_kg, volume_L, unknown, trips: null, by: null };
  return {
    weight_kg,
    volume_L,
    unknown,
    trips: freight.length === 0 ? 0 : Math.max(1, Math.ceil(most - 1e-9)),
    by: (byWeight ?? 0) >= (byVolume ?? 0) ? 'weight' : 'volume',
  };
}

function ratio(path: string, amount: number, most: number, unit: string): number {
  requireRange(path, most, 1e-9, Infinity, unit);
  return amount / most;
}
