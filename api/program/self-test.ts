import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { bed } from '../../db/schema/beds.ts';
import { fillSampleFarm } from '../sample/fill-sample-farm.ts';
import { localNow } from './places.ts';
import { createProgram, type ProgramPlaces } from './program.ts';

export type SelfTestLine = { readonly what: string; readonly fine: boolean; readonly detail: string };

/**
 * Tries what every start rests on, in a folder of its own: making a farm, writing and taking back a change, a backup, opening again.
 * Says what is fine and what is not; leaves nothing behind.
 */
export async function selfTest(places: ProgramPlaces): Promise<readonly SelfTestLine[]> {
  const folder = mkdtempSync(join(tmpdir(), 'bedwright-self-test-'));
  const lines: SelfTestLine[] = [];
  const program = createProgram(
    { ...places, data: folder },
    () => localNow(),
    () => undefined,
  );
  const step = (what: string, run: () => boolean): void => {
    try {
      lines.push({ what, fine: run(), detail: '' });
    } catch (error) {
      lines.push({ what, fine: false, detail: error instanceof Error ? error.message : String(error) });
    }
  };
  const path = join(folder, 'self-test.bedwright');
  const beds = () => program.farm(null).db.select().from(bed).all();
  step('a farm can be made from the shipped libraries', () => {
    program.create(path, (farm) => fillSampleFarm(farm, { resources: places.resources, beds: 6, years: 0, seed: 1 }));
    return beds().length === 6;
  });
  step('a change is kept and can be taken back', () => {
    const farm = program.farm(null);
    const before = JSON.stringify(beds());
    farm.change('self-test', () => farm.db.update(bed).set({ x_m: -1 }).run());
    const changed = JSON.stringify(beds()) !== before;
    farm.undo();
    return changed && JSON.stringify(beds()) === before;
  });
  step('a backup can be written', () => program.farm(null).backup('by-hand').length > 0);
  await program.closeAll();
  step('the farm opens again, whole', () => {
    program.open(path);
    return program.farm(null).sqlite.pragma('integrity_check', { simple: true }) === 'ok';
  });
  await program.closeAll();
  rmSync(folder, { recursive: true, force: true });
  return lines;
}
