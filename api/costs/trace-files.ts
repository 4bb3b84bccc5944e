import { stringify } from 'csv-stringify/sync';
import { farmOfFile } from '../../db/repositories/farm.ts';
import { harvestLog } from '../../db/repositories/harvests.ts';
import { saleLog } from '../../db/repositories/sales.ts';
import { logEntries } from '../../db/repositories/trace.ts';
import type { MakeDownload } from '../http/downloads.ts';
import { type TraceStart, traceBack, traceForward } from './trace.ts';

type Cell = string | number | null;

const csvOf = (name: string, head: readonly string[], rows: readonly (readonly Cell[])[]) => ({
  name,
  type: 'text/csv; charset=utf-8',
  body: stringify([[...head], ...rows.map((row) => [...row])], { bom: true, escape_formulas: true, record_delimiter: '\r\n' }),
});

/** From a lot back to bed, planting, inputs and water, as one sortable sheet. */
export const traceBackCsv: MakeDownload = ({ db }, query) => {
  const found = traceBack(db, query['lot'] ?? '');
  const farm = farmOfFile(db)?.name ?? '';
  const rows: Cell[][] = [
    ...found.harvests.map((row) => [
      farm,
      found.lot.code,
      'harvest',
      row.date,
      row.bed,
      `${row.crop} ${row.variety ?? ''}`.trim(),
      row.amount,
      row.unit,
      row.picker,
      row.seedLot === null ? '' : `seed lot ${row.seedLot}`,
    ]),
    ...found.inputs.map((row) => [
      farm,
      found.lot.code,
      'input',
      row.date,
      row.bed,
      row.material,
      row.amount_kg,
      'kg',
      row.who,
      [row.lot === null ? '' : `lot ${row.lot}`, row.supplier ?? '', row.method].filter(Boolean).join(', '),
    ]),
    ...found.tea.map((row) => [
      farm,
      found.lot.code,
      'tea',
      row.date,
      row.bed,
      row.tea,
      row.volume_L,
      'L',
      '',
      `compost ${row.compost ?? ''}, water ${row.water}`,
    ]),
    ...found.water.lines.map((row) => [
      farm,
      found.lot.code,
      'water',
      '',
      row.bed,
      row.line,
      null,
      '',
      '',
      `${row.source}, ${row.kind}`,
    ]),
    ...found.sales.map((row) => [
      farm,
      found.lot.code,
      row.outcome,
      row.date,
      '',
      row.buyer === '' ? row.outlet : `${row.outlet}: ${row.buyer}`,
      row.amount,
      row.unit,
      '',
      row.documentNumber,
    ]),
  ];
  return csvOf(
    `trace-${found.lot.code}.csv`,
    ['farm', 'lot', 'record', 'date', 'bed', 'what', 'amount', 'unit', 'who', 'details'],
    rows,
  );
};

/** From an input lot, batch or bed forward to lots and buyers. */
export const traceForwardCsv: MakeDownload = ({ db }, query) => {
  const kind = query['kind'];
  const start: TraceStart = { kind: kind === 'batch' || kind === 'bed' ? kind : 'lot', id: query['id'] ?? '' };
  const found = traceForward(db, start);
  const farm = farmOfFile(db)?.name ?? '';
  return csvOf(
    'trace-forward.csv',
    ['farm', 'record', 'date', 'lot', 'what', 'amount', 'unit', 'details'],
    [
      ...found.lots.map((row) => [
        farm,
        'lot',
        row.date,
        row.lot,
        row.crop,
        row.amount,
        row.unit,
        `not sold: ${Number(row.left.toPrecision(6))}`,
      ]),
      ...found.sales.map((row) => [
        farm,
        row.outcome,
        row.date,
        row.lot,
        row.buyer === '' ? row.outlet : `${row.outlet}: ${row.buyer}`,
        row.amount,
        row.unit,
        row.documentNumber,
      ]),
    ],
  );
};

const between = (query: Readonly<Record<string, string>>): readonly [string, string] => [
  query['from'] ?? '0000-01-01',
  query['to'] ?? '9999-12-31',
];
const MOST = 1_000_000;

/** The harvest log with the fields that records ask for. */
export const harvestRecordsCsv: MakeDownload = ({ db }, query) => {
  const farm = farmOfFile(db)?.name ?? '';
  const rows = harvestLog(db, ...between(query), MOST);
  return csvOf(
    'harvest-records.csv',
    [
      'farm',
      'date',
      'entered',
      'crop',
      'bed',
      'lot',
      'amount',
      'unit',
      'net kg',
      'culls kg',
      'cull reason',
      'grade',
      'picker',
      'to',
      'note',
    ],
    rows.map((row) => [
      farm,
      row.date,
      row.createdAt,
      row.crop,
      row.bed,
      row.lot,
      row.amount,
      row.unit,
      row.weight_kg,
      row.culls_kg,
      row.cullReason,
      row.grade,
      row.picker,
      row.outlet,
      row.note,
    ]),
  );
};

/** The sales log with buyer, lot and document number. */
export const saleRecordsCsv: MakeDownload = ({ db }, query) => {
  const farm = farmOfFile(db)?.name ?? '';
  const rows = saleLog(db, ...between(query), MOST);
  return csvOf(
    'sale-records.csv',
    ['farm', 'date', 'outlet', 'buyer', 'document', 'crop', 'lot', 'amount', 'unit', 'paid', 'outcome'],
    rows.map((row) => [
      farm,
      row.date,
      row.outlet,
      row.buyer,
      row.documentNumber,
      row.crop,
      row.lot,
      row.amount,
      row.unit,
      row.paid_minor / 100,
      row.outcome,
    ]),
  );
};

/** Cleaning, training, water, illness and the other logs. */
export const logRecordsCsv: MakeDownload = ({ db }) => {
  const farm = farmOfFile(db)?.name ?? '';
  return csvOf(
    'log-records.csv',
    ['farm', 'kind', 'date', 'time', 'entered', 'place', 'who', 'observed', 'details', 'corrects', 'reviewed by', 'reviewed on'],
    logEntries(db).map((row) => [
      farm,
      row.kind,
      row.date,
      row.time,
      row.createdAt,
      row.place,
      row.who,
      row.observed,
      Object.entries(row.details)
        .map(([name, value]) => `${name}: ${value}`)
        .join('; '),
      row.correctsId,
      row.reviewedBy,
      row.reviewedDate,
    ]),
  );
};
