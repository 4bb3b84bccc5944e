import { refuse, requirePositive, requireRange, requireWhole } from '../errors.ts';
import { entry, source, type Working } from '../working.ts';

function meanOf(values: readonly number[], path: string): number {
  if (values.length === 0) return refuse(path, 'too-few', `${path}: at least one measured value is needed.`);
  for (const [at, value] of values.entries()) requireRange(`${path}.${at}`, value, 0, Number.MAX_VALUE, '');
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** DU from its two means. @throws InputError when nothing was caught at all */
export function distributionUniformityOfMeans(meanOfLowQuarter: number, meanOfAll: number): number {
  requireRange('meanOfLowQuarter', meanOfLowQuarter, 0, Number.MAX_VALUE, '');
  requirePositive('meanOfAll', meanOfAll, '');
  return meanOfLowQuarter / meanOfAll;
}

/**
 * Distribution uniformity of the low quarter, a share: the mean of the lowest quarter over the mean of all.
 *
 * With a number of values that four does not divide, the floor(n/4) lowest, at least one (common practice, no source).
 * Where shares differ on purpose hand in flow over target.
 * Source: University of California Cooperative Extension (Sonoma): 0.44/0.48 gal/h is 92 %.
 * @throws InputError when there are no values or all are zero
 */
export function distributionUniformity(values: readonly number[]): number {
  const mean = meanOf(values, 'values');
  const low = [...values].sort((a, b) => a - b).slice(0, Math.max(1, Math.floor(values.length / 4)));
  return distributionUniformityOfMeans(meanOf(low, 'values'), mean);
}

/**
 * Christiansen's uniformity coefficient, a share: 1 - sum|x - mean| / sum x.
 * Source: J. E. Christiansen 1942; the formula read in an open uniformity package.
 * @throws InputError when there are no values or all are zero
 */
export function christiansenUniformity(values: readonly number[]): number {
  const mean = meanOf(values, 'values');
  requirePositive('values', mean, '');
  return 1 - values.reduce((sum, value) => sum + Math.abs(value - mean), 0) / (mean * values.length);
}

export type EmissionUniformityInput = {
  readonly manufacturingCv: number;
  readonly emittersPerPlant: number;
  readonly leastOverMeanFlow: number;
};

/**
 * Design emission uniformity of emitters, a share.
 *
 *   EU = (1 - 1.27 Cv/sqrt n) qmin/qmean
 *
 *   Cv   spread of the emitters as made   -   0 to 0.5; good drip below 0.05
 *   n    emitters at a plant              -   1 or more
 *
 * Source: Keller and Karmeli; ASABE EP405.
 * @throws InputError naming the field
 */
export function emissionUniformity(input: EmissionUniformityInput): number {
  requireRange('manufacturingCv', input.manufacturingCv, 0, 0.5, '');
  requireWhole('emittersPerPlant', input.emittersPerPlant, 1, 100_000);
  requireRange('leastOverMeanFlow', input.leastOverMeanFlow, 0, 1, '');
  return (1 - (1.27 * input.manufacturingCv) / Math.sqrt(input.emittersPerPlant)) * input.leastOverMeanFlow;
}

export type UniformityRating = 'excellent' | 'good' | 'fair' | 'poor';

/** Field rating of a uniformity: 0.9 and up excellent, 0.8 good, 0.7 fair. Source: Merriam and Keller 1978 (memory). */
export function ratingOf(uniformity: number): UniformityRating {
  if (uniformity >= 0.9) return 'excellent';
  if (uniformity >= 0.8) return 'good';
  return uniformity >= 0.7 ? 'fair' : 'poor';
}

/**
 * Water to give so that the low quarter gets the wanted depth, gross = net / DU.
 * Source: an encyclopaedia article on distribution uniformity, 1.0 in at 75 % needs 1.33 in.
 * @throws InputError when the uniformity is not above 0 to 1
 */
export function grossDepth_m(netDepth_m: number, uniformity: number): number {
  requireRange('netDepth_m', netDepth_m, 0, 10, 'm');
  requirePositive('uniformity', uniformity, '');
  requireRange('uniformity', uniformity, 0, 1, '');
  return netDepth_m / uniformity;
}

/**
 * Flow of an outlet at another pressure, q2/q1 = (p2/p1)^x: an orifice (x = 0.5) loses 10 % of flow to a fifth less pressure.
 * Source: an extension page after Jarrett 2000.
 * @throws InputError naming the field
 */
export function flowRatioOfPressure(pressureRatio: number, outletExponent: number): number {
  requireRange('pressureRatio', pressureRatio, 0, 1000, '');
  requireRange('outletExponent', outletExponent, 0, 2, '');
  return pressureRatio ** outletExponent;
}

/** How {@link distributionUniformity} came to its share. */
export function explainDistributionUniformity(values: readonly number[]): Working {
  const uniformity = distributionUniformity(values);
  const count = Math.max(1, Math.floor(values.length / 4));
  return {
    title: 'Distribution uniformity of the low quarter',
    formula: 'DU = mean of the lowest quarter / mean of all',
    symbols: [
      { symbol: 'n', name: 'beds', figure: { value: values.length, unit: '' }, origin: entry('the line') },
      {
        symbol: 'k',
        name: 'beds in the lowest quarter',
        figure: { value: count, unit: '' },
        origin: source('common practice: floor(n/4), at least one'),
      },
    ],
    steps: [
      {
        text: 'mean of all, relative flows',
        figures: `${values.length} beds`,
        result: { value: meanOf(values, 'values'), unit: '' },
      },
    ],
    result: { value: uniformity, unit: 'share' },
    sources: [
      'University of California Cooperative Extension (Sonoma), distribution uniformity',
      'Rating bands: Merriam and Keller 1978 (memory)',
    ],
    notes: [],
  };
}
