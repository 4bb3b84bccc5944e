/**
 * Lets the event loop go round once, as it does between two requests of a real page. Answers that come from one microtask to the next
 * never let it, and what native code frees after a collection (prepared statements, bodies of requests) would pile up meanwhile.
 */
export const loopRound = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** Counts the inputs that really went through the door, and how many of them were taken, so that a long run can say what it did. */
export function inputsTried(what: string) {
  let [inputs, taken] = [0, 0];
  const refusedFor = new Map<string, number>();
  const names = new Set<string>();
  return {
    add(name: string, refusal: string | undefined): void {
      inputs += 1;
      names.add(name);
      if (refusal === undefined) taken += 1;
      else refusedFor.set(refusal, (refusedFor.get(refusal) ?? 0) + 1);
    },
    tell(): void {
      const refused = [...refusedFor].map(([code, times]) => `${code} ${times}`).join(', ');
      const peak_MB = Math.round(process.resourceUsage().maxRSS / 1024);
      console.log(
        `fuzz ${what}: ${inputs} inputs to ${names.size} doors, ${taken} taken; refused: ${refused}; at most ${peak_MB} MB of memory`,
      );
    },
  };
}
