/** A process that writes changes to a farm as fast as it can and says each one after it was acknowledged. Killed by its test. */
import { writeSync } from 'node:fs';
import { eq } from 'drizzle-orm';
import { openFarm } from '../../db/file/open-farm.ts';
import { bed } from '../../db/schema/beds.ts';
import { setting } from '../../db/schema/farm.ts';

const [path = '', migrations = '', from = '0'] = process.argv.slice(2);
const farm = openFarm(path, { migrations, now: () => '2026-11-25T09:00:00' });
const beds = farm.db.select({ id: bed.id }).from(bed).all();
writeSync(1, 'ready\n');
for (let n = Number(from); ; n += 1) {
  farm.change(`change ${n}`, () => {
    farm.db
      .insert(setting)
      .values({ name: `n${n}`, value: n })
      .run();
    for (const { id } of beds) farm.db.update(bed).set({ x_m: n }).where(eq(bed.id, id)).run();
  });
  writeSync(1, `${n}\n`);
}
