import type { FarmNeed } from '../../planner/orders/needs.ts';

const NAMED = 3;

/** For each material, what it is needed for: the first reasons by name, the rest by number. */
export function listReasons(needs: readonly FarmNeed[]): ReadonlyMap<string, string> {
  return new Map(
    [...Map.groupBy(needs, (need) => need.materialId)].map(([materialId, of]) => {
      const reasons = [...new Set(of.map((need) => need.reason))];
      const rest = reasons.length - NAMED;
      return [materialId, rest > 0 ? `${reasons.slice(0, NAMED).join('; ')} and ${rest} more` : reasons.join('; ')] as const;
    }),
  );
}
