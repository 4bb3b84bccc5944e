// Writes resources/licences.md: every package of the lock file with its version and licence.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './node-runtime.mjs';

const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
const rows = Object.entries(lock.packages)
  .filter(([path]) => path !== '')
  .map(([path, entry]) => ({
    name: path.slice(path.lastIndexOf('node_modules/') + 13),
    version: entry.version,
    licence: entry.license ?? 'not named',
    ships: entry.dev !== true,
  }));
const seen = new Map(rows.map((row) => [`${row.name}@${row.version}`, row]));
const table = [...seen.values()]
  .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0))
  .map((row) => `| ${row.name} | ${row.version} | ${row.licence} | ${row.ships ? 'yes' : 'bundled or for development'} |`);
const text = `# Packages and their licences

Made by \`npm run licences\` from the lock file. Packages marked "yes" lie beside the program; parts of the others are in its bundles or serve development only.

| package | version | licence | beside the program |
| --- | --- | --- | --- |
${table.join('\n')}
`;
writeFileSync(join(root, 'resources', 'licences.md'), text);
console.log(`${table.length} packages listed.`);
