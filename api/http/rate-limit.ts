/** Counts requests by key in a sliding window of whole seconds; true while under the limit. */
export function rateLimit(most: number, window_ms: number, now_ms: () => number) {
  const seen = new Map<string, number[]>();
  return (key: string): boolean => {
    const from = now_ms() - window_ms;
    const recent = (seen.get(key) ?? []).filter((time) => time > from);
    if (recent.length >= most) {
      seen.set(key, recent);
      return false;
    }
    recent.push(now_ms());
    seen.set(key, recent);
    if (seen.size > 1000) for (const [other, times] of seen) if (times.every((time) => time <= from)) seen.delete(other);
    return true;
  };
}
