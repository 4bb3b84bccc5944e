import { outlineOfBed } from '../../planner/beds/bed-spec.ts';
import { ringOf } from '../../planner/beds/extent.ts';
import type { Point } from '../../planner/beds/outline.ts';
import { signedArea_m2 } from '../../planner/beds/polygon.ts';
import { degreesOfPlace, type SiteOrigin } from '../../planner/beds/site-coordinates.ts';
import type { LoadedBed } from './load-beds.ts';

const NOTE = 'Positions are from a drawing in metres about one surveyed or entered point: approximate unless surveyed.';

/** The site outline and all beds as GeoJSON (RFC 7946), in degrees about the farm's place. */
export function siteGeoJson(origin: SiteOrigin, outline_m: readonly Point[] | null, beds: readonly LoadedBed[]): string {
  const polygon = (ring: readonly Point[]) => {
    const wound = signedArea_m2(ring) < 0 ? ring.toReversed() : ring;
    const closed = [...wound, ...wound.slice(0, 1)];
    return { type: 'Polygon', coordinates: [closed.map(([x, y]) => degreesOfPlace(origin, x, y))] };
  };
  const site =
    outline_m === null ? [] : [{ type: 'Feature', geometry: polygon(outline_m), properties: { kind: 'site', note: NOTE } }];
  const features = beds.map(({ bed, block, design, spec, figures }) => {
    const angle = (bed.turn_deg * Math.PI) / 180;
    const ring = ringOf(outlineOfBed(spec)).map(
      ([x, y]): Point => [
        bed.x_m + x * Math.cos(angle) - y * Math.sin(angle),
        bed.y_m + x * Math.sin(angle) + y * Math.cos(angle),
      ],
    );
    return {
      type: 'Feature',
      id: bed.id,
      geometry: polygon(ring),
      properties: {
        code: bed.code,
        block: block.code,
        design: design.name,
        kind: spec.kind,
        area_m2: figures?.area_m2 ?? null,
        built_iso: bed.builtDate,
        note: NOTE,
      },
    };
  });
  return JSON.stringify({ type: 'FeatureCollection', features: [...site, ...features] }, null, 1);
}
