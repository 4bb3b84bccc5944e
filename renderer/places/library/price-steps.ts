export type PricePoint = { readonly date: string; readonly price_minor: number };

/** Earlier prices and the present one, the oldest first; of two on one day the later entry stands, the present one last of all. */
export function priceSteps(newestFirst: readonly PricePoint[], now: PricePoint): readonly PricePoint[] {
  const ofDay = new Map(newestFirst.toReversed().map((each) => [each.date, each.price_minor]));
  ofDay.set(now.date, now.price_minor);
  return [...ofDay].map(([date, price_minor]) => ({ date, price_minor })).toSorted((a, b) => a.date.localeCompare(b.date));
}
