import { farmOfFile } from '../../db/repositories/farm.ts';
import { Refusal } from '../errors.ts';
import type { MakeDownload } from '../http/downloads.ts';
import { loadBeds } from './load-beds.ts';
import { siteGeoJson } from './write-geojson.ts';

/** The site outline and every bed in use as a GeoJSON file. */
export const siteDownload: MakeDownload = ({ db }) => {
  const farm = farmOfFile(db);
  if (farm === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
  return { name: 'site.geojson', type: 'application/geo+json', body: siteGeoJson(farm, farm.siteOutline_m, loadBeds(db)) };
};
