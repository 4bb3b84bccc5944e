/** `npm run farm -- --out FILE [--beds N] [--years N] [--seed N]`: makes an invented farm of any size. */
import { parseArgs } from 'node:util';
import { FarmFileError } from '../../db/file/errors.ts';
import { createFarm, removeFarmFile } from '../../db/file/open-farm.ts';
import { InputError } from '../../planner/errors.ts';
import { localNow } from '../program/places.ts';
import { placesOf } from '../program/start-program.ts';
import { fillSampleFarm, requireSampleOptions } from './fill-sample-farm.ts';

const usage = 'npm run farm -- --out FILE [--beds 96] [--years 2] [--seed 1]';

try {
  const { values } = parseArgs({
    options: { out: { type: 'string' }, beds: { type: 'string' }, years: { type: 'string' }, seed: { type: 'string' } },
  });
  if (values.out === undefined)
    throw new InputError([{ path: 'out', code: 'missing', message: `Say where the farm goes: ${usage}` }]);
  const size = { beds: Number(values.beds ?? 96), years: Number(values.years ?? 2), seed: Number(values.seed ?? 1) };
  requireSampleOptions(size);
  const places = placesOf(import.meta.url, process.env);
  const farm = createFarm(values.out, { migrations: places.migrations, now: () => localNow() });
  try {
    farm.unrecorded(() => fillSampleFarm(farm, { resources: places.resources, ...size }));
  } catch (error) {
    farm.close();
    removeFarmFile(farm.path);
    throw error;
  }
  farm.close();
  console.log(`Made ${values.out}: an invented farm of ${size.beds} beds and ${size.years} past seasons (seed ${size.seed}).`);
} catch (error) {
  if (error instanceof InputError || error instanceof FarmFileError || (error instanceof TypeError && 'code' in error)) {
    console.error(error.message);
    process.exit(2);
  }
  throw error;
}
