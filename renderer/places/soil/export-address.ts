import { farmOfAddress } from '../../client/farm-of-address.ts';

/** Where a file of records of the open farm is fetched. */
export function exportAddress(name: string): string {
  const farm = farmOfAddress(window.location.search);
  return `/export/${name}${farm === undefined ? '' : `?farm=${encodeURIComponent(farm)}`}`;
}
