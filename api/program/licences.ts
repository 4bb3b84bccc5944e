import { readFileSync } from 'node:fs';
import { join } from 'node:path';

export type PackageLicence = { readonly name: string; readonly version: string; readonly licence: string };

/** The packages that the program is built with, from the list that ships (`npm run licences` writes it). */
export function licencesIn(resources: string): readonly PackageLicence[] {
  return readFileSync(join(resources, 'licences.md'), 'utf8')
    .split('\n')
    .flatMap((line) => {
      const [name, version, licence] = line.startsWith('| ') ? line.slice(2).split(' | ') : [];
      return name === undefined || version === undefined || licence === undefined || name === 'package' || name.startsWith('---')
        ? []
        : [{ name, version, licence }];
    });
}
