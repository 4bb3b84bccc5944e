import { z } from 'zod';
import { changeFarm, farmOfFile, rememberedSetting, rememberedSettings, rememberSetting } from '../../db/repositories/farm.ts';
import { Refusal } from '../errors.ts';
import { act, change, ctxOf, nothing, read } from '../procedure.ts';

const monthDay = z.string().regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/, 'Write month and day as 04-15.');
const money = z.int('Money is kept in whole minor units.').nonnegative('This cannot be negative.');

const farmFields = z
  .object({
    name: z.string().trim().min(1, 'A farm needs a name.').max(120),
    latitude_deg: z
      .number()
      .min(-90, 'A latitude lies between -90 and 90 degrees.')
      .max(90, 'A latitude lies between -90 and 90 degrees.'),
    longitude_deg: z
      .number()
      .min(-180, 'A longitude lies between -180 and 180 degrees.')
      .max(180, 'A longitude lies between -180 and 180 degrees.'),
    elevation_m: z.number().min(-430, 'No land lies lower than 430 m below the sea.').max(6000, 'Above 6000 m nothing is grown.'),
    coastal: z.boolean(),
    currency: z.string().regex(/^[A-Z]{3}$/, 'Write the currency as three letters, such as USD.'),
    unitSystem: z.enum(['us', 'metric']),
    language: z.string().min(2).max(20),
    wage_minor_per_h: money,
    interest_share_per_year: z.number().min(0, 'A rate cannot be negative.').max(1, 'A rate over 100 % a year will not do.'),
    partsMethod: z.enum(['straight-line', 'capital-recovery']),
    overheadKey: z.enum(['area', 'bed-days', 'plants', 'hours', 'income']),
    electricity_minor_per_kWh: z.number().nonnegative('This cannot be negative.'),
    water_minor_per_m3: z.number().nonnegative('This cannot be negative.'),
    recordsRegime: z.enum(['none', 'organic', 'produce-safety', 'both']),
    organicOnly: z.boolean(),
    lastFrostEarly: monthDay.nullable(),
    lastFrostMedian: monthDay.nullable(),
    lastFrostLate: monthDay.nullable(),
    firstFrostEarly: monthDay.nullable(),
    firstFrostMedian: monthDay.nullable(),
    firstFrostLate: monthDay.nullable(),
    stationId: z.string().nullable(),
    north_deg: z.number().min(-360).max(360),
    siteOutline_m: z
      .array(z.tuple([z.number(), z.number()]))
      .min(3, 'An outline needs three corners or more.')
      .nullable(),
    bucket_L: z.number().positive('A bucket holds more than nothing.').max(200),
    barrow_L: z.number().positive('A barrow holds more than nothing.').max(1000),
    can_L: z.number().positive('A can holds more than nothing.').max(100),
    trayMixId: z.string().min(1, 'Choose a mix.'),
    vehicle_L: z.number().positive('This must be more than zero.').nullable(),
    vehicle_kg: z.number().positive('This must be more than zero.').nullable(),
    contact: z.string().max(400),
  })
  .partial();

export const farm = {
  get: read({
    input: nothing,
    run({ db, farm: file }) {
      const row = farmOfFile(db);
      if (row === undefined) throw new Refusal({ code: 'not-found', what: 'farm' });
      return { ...row, path: file.path };
    },
  }),
  set: change({
    note: 'Change the farm’s settings',
    input: z.object({ values: farmFields, revision: z.int() }),
    run({ db }, { values, revision }) {
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      if (!changeFarm(db, given, revision)) throw new Refusal({ code: 'changed-meanwhile', what: 'farm' });
      return { changed: true };
    },
  }),
  remembered: read({
    input: z.object({ name: z.string().max(80) }),
    run: ({ db }, { name }) => ({ value: rememberedSetting(db, name) }),
  }),
  /** All that is remembered under names with one beginning, such as the chosen columns of every table. */
  rememberedUnder: read({
    input: z.object({ prefix: z.string().min(1, 'Say how the names begin.').max(80) }),
    run: ({ db }, { prefix }) => rememberedSettings(db, prefix),
  }),
  remember: act({
    input: z.object({ name: z.string().max(80), value: z.json() }),
    run(door, { name, value }) {
      const { farm: file, db } = ctxOf(door);
      file.unrecorded(() => rememberSetting(db, name, value));
      return { name };
    },
  }),
};
