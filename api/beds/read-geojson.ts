import { z } from 'zod';
import { codesFrom } from '../../planner/beds/lay-out.ts';
import type { Point } from '../../planner/beds/outline.ts';
import { centroid_m, requireSimplePolygon, signedArea_m2 } from '../../planner/beds/polygon.ts';
import { placeOfDegrees, type SiteOrigin } from '../../planner/beds/site-coordinates.ts';
import { InputError } from '../../planner/errors.ts';

export type SiteFault = { readonly feature: number; readonly message: string };
export type SiteBed = {
  readonly code: string;
  readonly x_m: number;
  readonly y_m: number;
  /** Corners about the bed's middle. */
  readonly polygon_m: readonly Point[];
  readonly area_m2: number;
};
export type ReadSite = {
  readonly beds: readonly SiteBed[];
  readonly outline_m: readonly Point[] | null;
  readonly faults: readonly SiteFault[];
};

const position = z.array(z.number()).min(2);
const geometry = z.union([
  z.object({ type: z.literal('Polygon'), coordinates: z.array(z.array(position).min(4)).min(1) }),
  z.object({ type: z.literal('MultiPolygon'), coordinates: z.array(z.array(z.array(position).min(4)).min(1)) }),
  z.object({ type: z.string() }).loose(),
]);
const feature = z.object({
  type: z.literal('Feature'),
  geometry: geometry.nullable(),
  properties: z.record(z.string(), z.unknown()).nullable().optional(),
});
const collection = z.object({ type: z.literal('FeatureCollection'), features: z.array(z.unknown()).max(20_000) });

/** A ring's corners may be as close to their line as this before they are left out. */
const SAME_PLACE_M = 0.01;

/**
 * Reads beds and a site outline from a GeoJSON text (RFC 7946): each Polygon is a bed, one whose property `kind` is `site` is
 * the outline. Coordinates are degrees and become metres about the farm's place. Nothing is guessed: a feature that cannot be
 * read is told by its number, from 1.
 * @throws InputError at `text` when it is no GeoJSON at all
 */
export function readSiteGeoJson(text: string, origin: SiteOrigin, firstCode: string, taken: ReadonlySet<string>): ReadSite {
  const features = featuresOf(text);
  const used = new Set(taken);
  const beds: SiteBed[] = [];
  const faults: SiteFault[] = [];
  let outline_m: readonly Point[] | null = null;
  features.forEach((raw, at) => {
    try {
      const parsed = feature.safeParse(raw);
      if (!parsed.success) throw unreadable('is no GeoJSON feature.');
      const { properties } = parsed.data;
      const ring = ringOf(parsed.data.geometry, origin);
      if (properties?.['kind'] === 'site') outline_m = ring;
      else {
        const bed = bedOf(ring, codeOf(properties?.['code'], firstCode, used));
        used.add(bed.code);
        beds.push(bed);
      }
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      const reason = error.faults.map((fault) => fault.message).join(' ');
      faults.push({ feature: at + 1, message: `Feature ${at + 1} ${reason}` });
    }
  });
  return { beds, outline_m, faults };
}

const unreadable = (message: string): InputError => new InputError([{ path: 'feature', code: 'unreadable', message }]);

function featuresOf(text: string): readonly unknown[] {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : 'unreadable';
    throw new InputError([{ path: 'text', code: 'not-json', message: `This is no JSON text (${why}).` }]);
  }
  const many = collection.safeParse(json);
  if (many.success) return many.data.features;
  if (feature.safeParse(json).success) return [json];
  throw new InputError([
    { path: 'text', code: 'not-geojson', message: 'This is no GeoJSON: a FeatureCollection with polygons is needed.' },
  ]);
}

function ringOf(shape: z.output<typeof geometry> | null, origin: SiteOrigin): readonly Point[] {
  const rings = polygonRings(shape);
  if (rings.length > 1) throw unreadable('has a hole: draw a bed with a hole as two beds.');
  const [outer = []] = rings;
  const [first, last] = [outer[0], outer.at(-1)];
  if (first?.[0] !== last?.[0] || first?.[1] !== last?.[1])
    throw unreadable('is not closed: its first and last position must be the same.');
  const points = outer.slice(0, -1).map((each): Point => placeOfDegrees(origin, each[0] ?? Number.NaN, each[1] ?? Number.NaN));
  const kept = points.filter(([x, y], at) => {
    const [px, py] = points[(at + points.length - 1) % points.length] ?? [x, y];
    return Math.hypot(x - px, y - py) > SAME_PLACE_M;
  });
  requireSimplePolygon(kept, 'coordinates');
  return signedArea_m2(kept) < 0 ? kept.toReversed() : kept;
}

function polygonRings(shape: z.output<typeof geometry> | null): readonly (readonly (readonly number[])[])[] {
  if (shape === null) throw unreadable('has no geometry.');
  const polygon = z
    .object({ type: z.literal('Polygon'), coordinates: z.array(z.array(position).min(4)).min(1) })
    .safeParse(shape);
  if (polygon.success) return polygon.data.coordinates;
  const several = z
    .object({ type: z.literal('MultiPolygon'), coordinates: z.array(z.array(z.array(position).min(4)).min(1)).length(1) })
    .safeParse(shape);
  if (several.success) return several.data.coordinates[0] ?? [];
  throw unreadable(`is a ${shape.type}: only a Polygon is a bed.`);
}

function codeOf(given: unknown, firstCode: string, used: ReadonlySet<string>): string {
  const code = typeof given === 'string' || typeof given === 'number' ? String(given).trim() : '';
  if (code === '') return codesFrom(firstCode, 1, used)[0] ?? firstCode;
  if (used.has(code)) throw unreadable(`has the code ${code}, which another bed has.`);
  return code;
}

/** Beds larger than this are surely a whole site or in another unit. */
const LARGEST_M2 = 20_000;

function bedOf(ring: readonly Point[], code: string): SiteBed {
  const area_m2 = Math.abs(signedArea_m2(ring));
  if (area_m2 > LARGEST_M2) throw unreadable('is larger than 2 ha: mark a site outline with the property "kind": "site".');
  const [x_m, y_m] = centroid_m(ring);
  return { code, x_m, y_m, area_m2, polygon_m: ring.map(([x, y]): Point => [x - x_m, y - y_m]) };
}
