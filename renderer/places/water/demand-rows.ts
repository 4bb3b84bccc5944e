import type { Demand, GroupDemand } from './demand-data.ts';

const WEEK = 7;

/** Need of some supplies as a running mean of the seven days that end on each day. */
export function weekMeans(demand: Pick<Demand, 'byDay'>, groupIds: readonly string[]) {
  const sums = demand.byDay.map((day) => groupIds.reduce((sum, groupId) => sum + (day.need_L[groupId] ?? 0), 0));
  return demand.byDay.map((day, at) => {
    const own = sums.slice(Math.max(0, at - WEEK + 1), at + 1);
    return { date: day.date, need_L_per_day: own.reduce((sum, value) => sum + value, 0) / own.length };
  });
}

/** What a line's timer gives on a day, mean of its interval; nothing where the month has no entry. */
export function capacityOn(group: Pick<GroupDemand, 'months'>, date: string): number {
  return group.months[Number(date.slice(5, 7)) - 1]?.timer_L_per_day ?? 0;
}
