import { InputError, requirePositive, requireRange } from '../errors.ts';
import { type BedForm, requireForm } from './form.ts';
import type { Outline, Point } from './outline.ts';

export type BedKind = 'in-ground' | 'framed' | 'bag' | 'trough' | 'mound';
export type BedShape = 'rectangle' | 'round' | 'oval' | 'hexagon' | 'polygon' | 'half-ellipsoid' | 'ridge';
export type Watering = 'top' | 'drip' | 'basin' | 'reservoir';

/** A bed as it is to be built: its design with the bed's own measures over it. Empty measures are null. */
export type BedSpec = {
  readonly kind: BedKind;
  readonly outline: BedShape;
  /** Outer size at the top; the diameter of a round bed. */
  readonly length_m: number;
  /** Across; the width across flats of a hexagon. */
  readonly width_m: number;
  /** Size at the floor where the walls lean. */
  readonly bottomLength_m: number | null;
  readonly bottomWidth_m: number | null;
  readonly polygon_m: readonly Point[] | null;
  /** Wall, or height of a mound. */
  readonly depth_m: number;
  /** Height of the fill's surface above the floor. */
  readonly fillDepth_m: number;
  /** Width of a ridge's flat crown. */
  readonly topWidth_m: number | null;
  readonly watering: Watering;
  readonly basinLength_m: number | null;
  readonly basinWidth_m: number | null;
  readonly basinDepth_m: number | null;
  /** Water level in the basin when filled. */
  readonly basinFill_m: number | null;
  readonly reservoirDepth_m: number | null;
  readonly overflow_m: number | null;
  readonly reservoirVoid_share: number | null;
};

/** From this void share on the reservoir is taken up by a void former, and the fill begins above it. */
export const VOID_FORMER_FROM = 0.8;

/** The bed's outline seen from above. */
export function outlineOfBed(spec: BedSpec): Outline {
  const { length_m, width_m } = spec;
  switch (spec.outline) {
    case 'round':
      return { shape: 'round', diameter_m: length_m };
    case 'oval':
    case 'rectangle':
      return { shape: spec.outline, length_m, width_m };
    case 'hexagon':
      return { shape: 'hexagon', acrossFlats_m: width_m };
    case 'polygon':
      return { shape: 'polygon', vertices_m: spec.polygon_m ?? [] };
    case 'half-ellipsoid':
      return { shape: 'ellipse', length_m, width_m };
    case 'ridge':
      return { shape: 'rectangle', length_m, width_m };
  }
}

/** The solid that the bed's fill takes up. */
export function formOfBed(spec: BedSpec): BedForm {
  const { length_m, width_m, depth_m } = spec;
  if (spec.outline === 'half-ellipsoid') return { solid: 'half-ellipsoid', length_m, width_m, depth_m };
  if (spec.outline === 'ridge') {
    const crownWidth_m = spec.topWidth_m ?? width_m / 2;
    // the ends slope as the sides do
    const crownLength_m = Math.max(0, length_m - (width_m - crownWidth_m));
    return { solid: 'ridge', length_m, width_m, crownLength_m, crownWidth_m, depth_m };
  }
  const outline = outlineOfBed(spec);
  const bottom = bottomOf(spec, outline);
  return bottom === undefined ? { solid: 'straight', outline, depth_m } : { solid: 'tapered', outline, bottom, depth_m };
}

function bottomOf(spec: BedSpec, top: Outline): Outline | undefined {
  const { bottomLength_m: length_m, bottomWidth_m: width_m } = spec;
  if (length_m === null && width_m === null) return undefined;
  switch (top.shape) {
    case 'round':
      return { shape: 'round', diameter_m: length_m ?? width_m ?? top.diameter_m };
    case 'hexagon':
      return { shape: 'hexagon', acrossFlats_m: width_m ?? length_m ?? top.acrossFlats_m };
    case 'oval':
    case 'rectangle':
      return { shape: top.shape, length_m: length_m ?? top.length_m, width_m: width_m ?? top.width_m };
    default:
      return undefined;
  }
}

/** The basin a bag stands in: of the bag's own shape, upright walls. Undefined where the bed has none. */
export function basinOfBed(spec: BedSpec): BedForm | undefined {
  if (spec.watering !== 'basin' || spec.basinDepth_m === null || spec.basinLength_m === null) return undefined;
  const length_m = spec.basinLength_m;
  const width_m = spec.basinWidth_m ?? length_m;
  const outline: Outline =
    spec.outline === 'round' && Math.abs(length_m - width_m) < 1e-9
      ? { shape: 'round', diameter_m: length_m }
      : { shape: spec.outline === 'oval' ? 'oval' : 'rectangle', length_m, width_m };
  return { solid: 'straight', outline, depth_m: spec.basinDepth_m };
}

/** Height above the floor where the fill begins: above a void former, else at the floor. */
export function fillFrom_m(spec: BedSpec): number {
  const isFormer = spec.watering === 'reservoir' && (spec.reservoirVoid_share ?? 0) >= VOID_FORMER_FROM;
  return isFormer ? (spec.reservoirDepth_m ?? 0) : 0;
}

/** Field of the entry for each path that the geometry names. */
const entryPath: Readonly<Record<string, string>> = {
  diameter_m: 'length_m',
  acrossFlats_m: 'width_m',
  vertices_m: 'polygon_m',
  'bottom.length_m': 'bottomLength_m',
  'bottom.width_m': 'bottomWidth_m',
  'bottom.diameter_m': 'bottomLength_m',
  'bottom.acrossFlats_m': 'bottomWidth_m',
  crownWidth_m: 'topWidth_m',
  crownLength_m: 'topWidth_m',
  bag: 'basinLength_m',
  level_m: 'basinFill_m',
  voidShare: 'reservoirVoid_share',
};

/** Runs a computation on a bed and names its faults by the fields of {@link BedSpec}. */
export function withBedFields<Result>(compute: () => Result): Result {
  try {
    return compute();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    throw new InputError(
      error.faults.map((fault) => {
        const path = entryPath[fault.path] ?? fault.path.replace(/^vertices_m\./, 'polygon_m.');
        return { ...fault, path, message: fault.message.replace(new RegExp(`^${fault.path}:`), `${path}:`) };
      }),
    );
  }
}

/**
 * Refuses a bed that cannot be built as entered, with every fault at its field.
 * @throws InputError
 */
export function requireBedSpec(spec: BedSpec): void {
  const faults = [
    () => withBedFields(() => requireForm(formOfBed(spec))),
    () => requireRange('length_m', spec.length_m, 0.05, 500, 'm'),
    () => requireRange('width_m', spec.width_m, 0.05, 500, 'm'),
    () => requireRange('depth_m', spec.depth_m, 0.01, 5, 'm'),
    () => requireFillDepth(spec),
    () => requireWatering(spec),
  ].flatMap((check) => {
    try {
      check();
      return [];
    } catch (error) {
      if (error instanceof InputError) return error.faults;
      throw error;
    }
  });
  const first = new Map(faults.map((fault) => [`${fault.path} ${fault.code}`, fault]));
  if (first.size > 0) throw new InputError([...first.values()]);
}

function requireFillDepth(spec: BedSpec): void {
  requireRange('fillDepth_m', spec.fillDepth_m, 0, 5, 'm');
  if (spec.fillDepth_m <= spec.depth_m * (1 + 1e-9)) return;
  const message = `The fill stands above the wall: at most ${spec.depth_m} m fits.`;
  throw new InputError([{ path: 'fillDepth_m', code: 'too-large', message }]);
}

function requireWatering(spec: BedSpec): void {
  if (spec.watering === 'basin') {
    requirePositive('basinLength_m', spec.basinLength_m ?? Number.NaN, 'm');
    requirePositive('basinDepth_m', spec.basinDepth_m ?? Number.NaN, 'm');
  }
  if (spec.watering === 'reservoir') {
    requirePositive('reservoirDepth_m', spec.reservoirDepth_m ?? Number.NaN, 'm');
    requirePositive('reservoirVoid_share', spec.reservoirVoid_share ?? Number.NaN, '');
    requireRange('reservoirDepth_m', spec.reservoirDepth_m ?? 0, 0, spec.depth_m, 'm');
  }
}
