import { farmOfAddress } from '../../client/farm-of-address.ts';

/** Where a file of the open farm is fetched. */
export function fileOf(name: string, query: Readonly<Record<string, string>> = {}): string {
  const farm = farmOfAddress(window.location.search);
  const text = new URLSearchParams({ ...query, ...(farm === undefined ? {} : { farm }) }).toString();
  return `/export/${name}${text === '' ? '' : `?${text}`}`;
}
