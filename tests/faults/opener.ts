/** A process that opens a farm with the migrations it is given, and says when it is open. Killed by its test. */
import { writeSync } from 'node:fs';
import { openFarm } from '../../db/file/open-farm.ts';

const [path = '', migrations = ''] = process.argv.slice(2);
openFarm(path, { migrations, now: () => '2026-11-25T09:00:00' });
writeSync(1, 'open\n');
