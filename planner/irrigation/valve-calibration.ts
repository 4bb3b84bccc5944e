import { refuse, requirePositive, requireRange } from '../errors.ts';

/** A valve's loss coefficient at a setting that somebody read. */
export type ValveReading = { readonly turns: number; readonly lossK: number };

/** Least readings before turns may be printed. */
export const LEAST_READINGS = 3;

/**
 * Turns that give a wanted loss coefficient on a valve that was calibrated, log K straight between its readings.
 * Null outside the readings: nobody publishes turns for cheap valves, so none are guessed.
 *
 * Source: common practice, no source; interpolation of log K.
 * @throws InputError on fewer than three readings, or readings that neither rise nor fall throughout
 */
export function turnsFor(readings: readonly ValveReading[], wantedK: number): number | null {
  requirePositive('wantedK', wantedK, '');
  if (readings.length < LEAST_READINGS)
    refuse('readings', 'too-few', `readings: ${LEAST_READINGS} settings of one valve are needed before turns can be told.`);
  readings.forEach((reading, at) => {
    requireRange(`readings.${at}.turns`, reading.turns, 0, 100, '');
    requirePositive(`readings.${at}.lossK`, reading.lossK, '');
  });
  const order = [...readings].sort((a, b) => a.turns - b.turns);
  const steps = order.slice(1).map((reading, at) => Math.log(reading.lossK) - Math.log((order[at] as ValveReading).lossK));
  if (!(steps.every((step) => step > 0) || steps.every((step) => step < 0)))
    refuse('readings', 'not-one-way', 'readings: turned one way, a valve must take more and more head; these readings do not.');
  for (let at = 1; at < order.length; at += 1) {
    const [one, other] = [order[at - 1] as ValveReading, order[at] as ValveReading];
    const part = (Math.log(wantedK) - Math.log(one.lossK)) / (Math.log(other.lossK) - Math.log(one.lossK));
    if (part >= 0 && part <= 1) return one.turns + part * (other.turns - one.turns);
  }
  return null;
}
