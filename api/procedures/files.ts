import { existsSync } from 'node:fs';
import { basename, isAbsolute, resolve } from 'node:path';
import { z } from 'zod';
import { listBackups } from '../../db/file/backup.ts';
import { compareFarms } from '../../db/file/compare-farms.ts';
import { insertAll } from '../../db/repositories/insert-all.ts';
import { farm as farmTable } from '../../db/schema/farm.ts';
import { season } from '../../db/schema/plantings.ts';
import { refuse } from '../../planner/errors.ts';
import { convert } from '../../planner/units/convert.ts';
import { FARM_EXTENSION, farmPath, placeFor } from '../files/farm-path.ts';
import { folderView } from '../files/folder-view.ts';
import { fillLibrary } from '../library/fill-library.ts';
import { act, ask, ctxOf, nothing, read } from '../procedure.ts';
import { fillSampleFarm } from '../sample/fill-sample-farm.ts';

/** Round measures to dose with, in the grower's own units (common practice, no source). */
const usMeasures = { bucket_L: convert(5, 'us_gal', 'L'), barrow_L: convert(3, 'ft3', 'L'), can_L: convert(2, 'us_gal', 'L') };
const metricMeasures = { bucket_L: 12, barrow_L: 85, can_L: 10 };

const path = z.object({ path: z.string().max(1000) });

export const files = {
  state: ask({
    input: nothing,
    run: ({ program }) => ({
      open: program.farms(),
      folder: program.places.data,
      /** Where the page's Choose button leads: to the system's dialog, or to the page's own view of folders. */
      chooser: program.desktop === null ? ('page' as const) : ('system' as const),
      recent: program.recent
        .list()
        .map((each) => ({ path: each, name: basename(each, FARM_EXTENSION), there: existsSync(each) })),
    }),
  }),
  folder: ask({
    input: z.object({ folder: z.string().max(1000) }),
    run: ({ program }, { folder }) => folderView(folder, program.places.data),
  }),
  choose: act({
    input: z.object({ kind: z.enum(['open', 'save', 'folder']), title: z.string().max(120), at: z.string().max(1000) }),
    async run({ program }, wish) {
      if (program.desktop === null)
        return refuse('path', 'no-dialog', 'Only the desktop window has the system’s own dialog for files.');
      const at = wish.at.trim() === '' ? program.places.data : wish.kind === 'save' ? farmPath(program, wish.at) : wish.at;
      return { path: await program.desktop.chooseFile({ ...wish, at }) };
    },
  }),
  open: act({
    input: path,
    run({ program }, input) {
      const plain = input.path.trim();
      return program.open(isAbsolute(plain) && existsSync(plain) ? resolve(plain) : farmPath(program, plain));
    },
  }),
  close: act({
    input: z.object({ key: z.string().max(20) }),
    run({ program }, { key }) {
      program.close(key);
      return program.farms();
    },
  }),
  forget: act({
    input: path,
    run({ program }, input) {
      program.recent.forget(input.path);
      return program.recent.list();
    },
  }),
  clearRecent: act({
    input: nothing,
    run({ program }) {
      program.recent.clear();
      return program.recent.list();
    },
  }),
  create: act({
    input: z.object({
      path: z.string().max(1000),
      name: z.string().trim().min(1, 'A farm needs a name.').max(120),
      latitude_deg: z.number().min(-90).max(90),
      longitude_deg: z.number().min(-180).max(180),
      elevation_m: z.number().min(-430).max(6000),
      unitSystem: z.enum(['us', 'metric']),
      currency: z.string().regex(/^[A-Z]{3}$/, 'Write the currency as three letters, such as USD.'),
      year: z.int().min(1950).max(2200),
    }),
    run({ program }, { path: wanted, year, ...values }) {
      return program.create(farmPath(program, wanted), ({ db }) => {
        fillLibrary(db, program.places.resources);
        db.insert(farmTable)
          .values({ id: 1, ...values, ...(values.unitSystem === 'us' ? usMeasures : metricMeasures) })
          .run();
        insertAll(db, season, [
          { id: `season-${year}`, name: String(year), startDate: `${year}-01-01`, endDate: `${year}-12-31`, state: 'planning' },
        ]);
      });
    },
  }),
  createSample: act({
    input: z.object({
      path: z.string().max(1000),
      beds: z.int().min(0).max(5000).default(96),
      years: z.int().min(0).max(10).default(2),
      seed: z.int().nonnegative().default(1),
    }),
    run({ program }, { path: wanted, ...size }) {
      return program.create(farmPath(program, wanted), (file) =>
        fillSampleFarm(file, { resources: program.places.resources, ...size }),
      );
    },
  }),
  backups: read({ input: nothing, run: ({ farm }) => listBackups(farm.path) }),
  backUp: act({ input: nothing, run: (door) => ({ path: ctxOf(door).farm.backup('by-hand') }) }),
  saveCopy: act({
    input: path,
    run(door, input) {
      const { farm } = ctxOf(door);
      const target = placeFor(door.program, input.path, farm.path);
      if (existsSync(target)) refuse('path', 'exists', `There is already a file at ${target}. Choose another name.`);
      farm.saveCopy(target);
      return { path: target };
    },
  }),
  preview: ask({
    input: path,
    run({ program, farmKey }, input) {
      const farm = program.farm(farmKey);
      const known = listBackups(farm.path).find((backup) => backup.path === input.path);
      if (known === undefined) return refuse('path', 'not-found', 'This backup is no longer there.');
      return compareFarms(farm.sqlite, known.path);
    },
  }),
  move: act({
    input: path,
    run: (door, input) => door.program.move(door.farmKey, placeFor(door.program, input.path, ctxOf(door).farm.path)),
  }),
  restore: act({
    input: z.object({ path: z.string().max(1000) }),
    run(door, input) {
      const { farm } = ctxOf(door);
      const known = listBackups(farm.path).find((backup) => backup.path === input.path);
      if (known === undefined) refuse('path', 'not-found', 'This backup is no longer there.');
      return door.program.restore(door.farmKey, known.path);
    },
  }),
};
