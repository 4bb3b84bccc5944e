import { requirePositive, requireRange, requireWhole } from '../errors.ts';

/** Room for a last bucket that rounding alone would ask for. */
const ON_THE_LIMIT = 1e-9;

/**
 * Share of a container that a count of buckets fills, level and settled alike: n b / V.
 * Loose heaped buckets look fuller: expect 0.15 more by eye (common practice, no source).
 * @throws InputError naming the field
 */
export function filledShare(buckets: number, bucket_L: number, capacity_L: number): number {
  requireRange('buckets', buckets, 0, 1e6, '');
  requirePositive('bucket_L', bucket_L, 'L');
  requirePositive('capacity_L', capacity_L, 'L');
  return (buckets * bucket_L) / capacity_L;
}

export type BucketsInput = {
  readonly beds: number;
  readonly capacity_L: number;
  /** Share of each bed's volume to fill. */
  readonly share: number;
  readonly bucket_L: number;
};

/** Whole level buckets that fill a share of equal beds, rounded up. @throws InputError naming the field */
export function bucketsForBeds(input: BucketsInput): number {
  requireWhole('beds', input.beds, 0, 100_000);
  requireRange('share', input.share, 0, 1, '');
  requirePositive('bucket_L', input.bucket_L, 'L');
  requireRange('capacity_L', input.capacity_L, 0, 1e6, 'L');
  return Math.ceil((input.beds * input.capacity_L * input.share) / input.bucket_L - ON_THE_LIMIT);
}
