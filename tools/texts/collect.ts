// Writes resources/texts/en.json: every sentence of the program, to translate from.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { catalogueOf } from './catalogue.ts';

const root = new URL('../..', import.meta.url).pathname;
const catalogue = catalogueOf(root);
writeFileSync(join(root, 'resources/texts/en.json'), `${JSON.stringify(catalogue, null, 1)}\n`);
console.log(`${Object.keys(catalogue).length} sentences.`);
