import { z } from 'zod';
import { newId } from '../../db/file/new-id.ts';
import { nameOf } from '../../db/repositories/name-of.ts';
import {
  addPlantings,
  changePlanting,
  harvestedAmong,
  type PlantingChange,
  type PlantingRecord,
  plantingOfId,
  removePlantings,
  replaceSpans,
  spansOfPlanting,
} from '../../db/repositories/plantings.ts';
import { addSuccession } from '../../db/repositories/seasons.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { refuse } from '../../planner/errors.ts';
import { type MovableDates, moved, stretchedEnd, stretchedStart } from '../../planner/season/move-planting.ts';
import { loadBeds } from '../beds/load-beds.ts';
import { Refusal } from '../errors.ts';
import { change } from '../procedure.ts';
import { countPlants } from '../season/count-plants.ts';
import { loadSeason } from '../season/load-season.ts';
import { newPlantings, requirePlantable, spanRows } from '../season/new-plantings.ts';
import { growEntry, isoDate, spanEntry, successionEntry } from '../season/planting-entry.ts';

const moveEntry = z.object({
  plantingId: z.string(),
  revision: z.int(),
  how: z.enum(['move', 'start', 'end']),
  days: z.int('Whole days are needed.').min(-1000, 'That is too far.').max(1000, 'That is too far.'),
  /** Where it stands from now on; left out it stays where it is. */
  spans: z.array(spanEntry).max(500).optional(),
});

const datesOf = (record: PlantingRecord): MovableDates => ({
  sow: record.sowDate as IsoDate | null,
  potOn: record.potOnDate as IsoDate | null,
  inBed: record.inBedDate as IsoDate,
  firstHarvest: record.firstHarvestDate as IsoDate,
  lastHarvest: record.lastHarvestDate as IsoDate,
  free: record.clearDate as IsoDate,
});

const columnsOf = (dates: MovableDates): PlantingChange => ({
  sowDate: dates.sow,
  potOnDate: dates.potOn,
  inBedDate: dates.inBed,
  firstHarvestDate: dates.firstHarvest,
  lastHarvestDate: dates.lastHarvest,
  clearDate: dates.free,
});

function requirePlanting(found: PlantingRecord | undefined): PlantingRecord {
  if (found === undefined) throw new Refusal({ code: 'not-found', what: 'planting' });
  return found;
}

/** Yields in proportion to the plants, when the piece of bed changes. */
const yieldsFor = (record: PlantingRecord, plants: number): PlantingChange => {
  const times = record.plants > 0 ? plants / record.plants : 1;
  const scaled = (value: number | null): number | null => (value === null ? null : value * times);
  return {
    yieldLow: scaled(record.yieldLow),
    yieldTypical: scaled(record.yieldTypical),
    yieldHigh: scaled(record.yieldHigh),
    cells: record.cells === null ? null : Math.ceil(record.cells * times),
  };
};

export const plantingEdits = {
  add: change({
    note: ({ entry, succession }, { db }) =>
      succession === null
        ? `Add a planting of ${nameOf(db, 'crop', entry.cropId)}`
        : `Add a succession of ${nameOf(db, 'crop', entry.cropId)}`,
    input: z.object({
      seasonId: z.string(),
      entry: growEntry,
      spans: z.array(spanEntry).max(500),
      succession: successionEntry.nullable(),
    }),
    run({ db }, { seasonId, entry, spans, succession }) {
      const loaded = loadSeason(db, seasonId);
      requirePlantable(loaded, entry);
      const made = newPlantings(loaded, entry, spans, succession);
      const outside = made.rows.find((row) => row.inBedDate < loaded.rules.start || row.inBedDate >= loaded.rules.end);
      if (outside !== undefined)
        refuse(
          'anchor.date',
          'outside-season',
          `It would go into the bed on ${outside.inBedDate}, outside the season of ${loaded.season.startDate} to ${loaded.season.endDate}.`,
        );
      const successionId = succession === null ? null : newId<string>();
      if (succession !== null && successionId !== null)
        addSuccession(db, { id: successionId, seasonId, cropId: entry.cropId, interval_days: succession.interval_days });
      addPlantings(
        db,
        made.rows.map((row) => ({ ...row, successionId })),
        made.spans,
      );
      return { plantingIds: made.rows.map((row) => row.id), unplaced: made.unplaced };
    },
  }),
  /** Moves or stretches plantings, and puts them into other beds: one act of the hand, one step back. */
  move: change({
    note: ({ moves }, { db }) =>
      moves.length === 1
        ? `Move the planting of ${nameOf(db, 'planting', moves[0]?.plantingId ?? null)}`
        : `Move ${moves.length} plantings`,
    input: z.object({ moves: z.array(moveEntry).min(1, 'Choose a planting.').max(4000) }),
    run({ db }, { moves }) {
      const beds = moves.some((move) => move.spans !== undefined) ? loadBeds(db) : [];
      for (const move of moves) {
        const record = requirePlanting(plantingOfId(db, move.plantingId));
        const dates = datesOf(record);
        const next =
          move.how === 'move'
            ? moved(dates, move.days)
            : move.how === 'start'
              ? stretchedStart(dates, move.days)
              : stretchedEnd(dates, move.days);
        const counted = move.spans === undefined ? null : countPlants(beds, move.spans, record);
        const plants = counted === null ? record.plants : counted.reduce((sum, each) => sum + each.plants, 0);
        const written = changePlanting(db, record.id, move.revision, {
          ...columnsOf(next),
          ...(move.how === 'move' ? {} : { datesBy: 'hand' as const }),
          ...(counted === null ? {} : { plants, ...yieldsFor(record, plants) }),
        });
        if (!written) throw new Refusal({ code: 'changed-meanwhile', what: 'planting' });
        if (counted !== null) replaceSpans(db, record.id, spanRows(record.id, counted));
      }
      return { moved: moves.length };
    },
  }),
  /** A copy, so many days later, in the same beds or in others. */
  copy: change({
    note: ({ plantingId }, { db }) => `Copy the planting of ${nameOf(db, 'planting', plantingId)}`,
    input: z.object({
      plantingId: z.string(),
      days: z.int().min(-1000).max(1000),
      spans: z.array(spanEntry).max(500).optional(),
    }),
    run({ db }, { plantingId, days, spans }) {
      const record = requirePlanting(plantingOfId(db, plantingId));
      const id = newId<string>();
      const places = spans ?? spansOfPlanting(db, plantingId);
      const counted = countPlants(loadBeds(db), places, record);
      const plants = counted.reduce((sum, each) => sum + each.plants, 0);
      const { sownActual, inBedActual, firstHarvestActual, lastHarvestActual, clearedActual, plantsActual, ...plan } = record;
      addPlantings(
        db,
        [
          {
            ...plan,
            id,
            ...columnsOf(moved(datesOf(record), days)),
            ...yieldsFor(record, plants),
            plants,
            number: record.number + 1,
            state: 'planned',
            revision: 1,
          } as Parameters<typeof addPlantings>[1][number],
        ],
        spanRows(id, counted),
      );
      return { plantingId: id };
    },
  }),
  set: change({
    note: ({ plantingId }, { db }) => `Change the planting of ${nameOf(db, 'planting', plantingId)}`,
    input: z.object({
      plantingId: z.string(),
      revision: z.int(),
      values: z
        .object({
          sowDate: isoDate.nullable(),
          inBedDate: isoDate,
          firstHarvestDate: isoDate,
          lastHarvestDate: isoDate,
          clearDate: isoDate,
          varietyId: z.string().nullable(),
          number: z.int().min(1).max(999),
          yieldLow: z.number().min(0, 'This cannot be negative.').nullable(),
          yieldTypical: z.number().min(0, 'This cannot be negative.').nullable(),
          yieldHigh: z.number().min(0, 'This cannot be negative.').nullable(),
          pinned: z.boolean(),
          notes: z.string().max(4000),
          state: z.enum(['planned', 'sown', 'growing', 'harvesting', 'cleared', 'failed']),
        })
        .partial(),
    }),
    run({ db }, { plantingId, revision, values }) {
      const record = requirePlanting(plantingOfId(db, plantingId));
      const given = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as PlantingChange;
      const next = { ...record, ...given } as PlantingRecord;
      const order = [next.sowDate, next.inBedDate, next.firstHarvestDate, next.lastHarvestDate, next.clearDate].filter(
        (date) => date !== null,
      );
      const names = [
        next.sowDate === null ? null : 'sowDate',
        'inBedDate',
        'firstHarvestDate',
        'lastHarvestDate',
        'clearDate',
      ].filter((name) => name !== null);
      order.forEach((date, at) => {
        const before = order[at - 1];
        if (before !== undefined && date < before)
          refuse(`values.${names[at]}`, 'dates-out-of-order', `This date lies before the one above it (${before}).`);
      });
      const dated = order.length > 0 && Object.keys(given).some((key) => key.endsWith('Date'));
      if (!changePlanting(db, plantingId, revision, dated ? { ...given, datesBy: 'hand' } : given))
        throw new Refusal({ code: 'changed-meanwhile', what: 'planting' });
      return { plantingId };
    },
  }),
  /** What has really happened; each date moves those after it. */
  record: change({
    note: ({ plantingId }, { db }) => `Record what happened with ${nameOf(db, 'planting', plantingId)}`,
    input: z.object({
      plantingId: z.string(),
      revision: z.int(),
      actual: z
        .object({
          sownActual: isoDate.nullable(),
          inBedActual: isoDate.nullable(),
          firstHarvestActual: isoDate.nullable(),
          lastHarvestActual: isoDate.nullable(),
          clearedActual: isoDate.nullable(),
          plantsActual: z.int('Whole plants are needed.').min(0, 'This cannot be negative.').max(10_000_000).nullable(),
        })
        .partial(),
    }),
    run({ db, today }, { plantingId, revision, actual }) {
      const record = requirePlanting(plantingOfId(db, plantingId));
      const given = Object.fromEntries(Object.entries(actual).filter(([, value]) => value !== undefined)) as PlantingChange;
      const next = { ...record, ...given } as PlantingRecord;
      const named = ['sownActual', 'inBedActual', 'firstHarvestActual', 'lastHarvestActual', 'clearedActual'] as const;
      let before: string | null = null;
      for (const name of named) {
        const date = next[name];
        if (date === null) continue;
        if (date > today) refuse(`actual.${name}`, 'too-late', 'What happened cannot lie in the future.');
        if (before !== null && date < before)
          refuse(`actual.${name}`, 'dates-out-of-order', `This lies before the step above it (${before}).`);
        before = date;
      }
      const state =
        next.clearedActual !== null
          ? 'cleared'
          : next.firstHarvestActual !== null
            ? 'harvesting'
            : next.inBedActual !== null
              ? 'growing'
              : next.sownActual !== null
                ? 'sown'
                : 'planned';
      if (!changePlanting(db, plantingId, revision, { ...given, state: record.state === 'failed' ? 'failed' : state }))
        throw new Refusal({ code: 'changed-meanwhile', what: 'planting' });
      return { plantingId };
    },
  }),
  remove: change({
    note: ({ plantingIds }, { db }) =>
      plantingIds.length === 1
        ? `Take away the planting of ${nameOf(db, 'planting', plantingIds[0] ?? null)}`
        : `Take away ${plantingIds.length} plantings`,
    input: z.object({ plantingIds: z.array(z.string()).min(1, 'Choose a planting.').max(4000) }),
    run({ db }, { plantingIds }) {
      if (harvestedAmong(db, plantingIds).size > 0)
        throw new Refusal(
          { code: 'in-use', what: 'planting' },
          'Something was harvested from it: it is part of the history. Mark it as cleared or failed instead.',
        );
      return { removed: removePlantings(db, plantingIds) };
    },
  }),
};
