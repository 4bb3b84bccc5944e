import { type Column, choice, count, derived, flag, quantity, text } from '../../table/column.ts';
import type { OutletRow, RunRow } from './line-rows.ts';

export const runColumns: readonly Column<RunRow>[] = [
  text('to', 'To', { width: 120, edit: true, hint: 'The place this run leads to' }),
  text('from', 'From', { width: 120 }),
  quantity('length_m', 'Length', { edit: true, total: 'sum' }),
  quantity('insideDiameter_mm', 'Inside', { edit: true, hint: 'Inside diameter: “half-inch” is sold from 0.50 to 0.62 in' }),
  quantity('teeBore_mm', 'Tee bore', {
    edit: true,
    mayBeEmpty: true,
    hint: 'Bore of the barbed tee that narrows this run; empty for none',
  }),
  derived('quantity', 'fittingK', 'Fittings K', (row) => row.fittingK, {
    edit: true,
    width: 90,
    hint: 'Bends and divisions; a tee’s bore adds its own',
  }),
  quantity('elevation_m', 'Height', { edit: true, hint: 'Of the place it leads to' }),
  count('zone', 'Zone', { edit: true, width: 60 }),
  quantity('flow_L_per_h', 'Flow', { digits: 2 }),
  quantity('velocity_m_per_s', 'Speed', { digits: 2 }),
  text('regime', 'Kind of flow', { width: 110 }),
  quantity('loss_m', 'Head lost', { digits: 2 }),
  quantity('head_m', 'Head at its end', { digits: 3, shown: false }),
];

export const outletKinds = [
  { value: 'open-end', text: 'Open end' },
  { value: 'drip', text: 'Drip emitters' },
  { value: 'hand', text: 'Filled by hand' },
] as const;

export const outletColumns: readonly Column<OutletRow>[] = [
  text('code', 'Bed', { width: 90 }),
  choice('kind', 'Outlet', outletKinds, { edit: true, width: 110 }),
  quantity('outlet_m', 'Height', { edit: true, hint: 'Of the open end, or of the water over a drowned one' }),
  quantity('bore_mm', 'Bore', { edit: true }),
  derived('quantity', 'openK', 'K open', (row) => row.openK, {
    edit: true,
    width: 80,
    hint: 'The valve fully open; small in-line valves 5 to 20',
  }),
  derived('quantity', 'want', 'Share', (row) => row.want, { edit: true, width: 70, hint: 'Wanted flow beside the other beds' }),
  quantity('water_L', 'One fill', { edit: true, mayBeEmpty: true, total: 'sum', hint: 'Empty takes what the bed’s basin holds' }),
  quantity('now_L_per_h', 'Now, full', { digits: 2, total: 'sum' }),
  quantity('low_L_per_h', 'Now, low', { digits: 2, total: 'sum', hint: 'Reservoir at its lowest level' }),
  quantity('design_L_per_h', 'Valves set', { digits: 2, total: 'sum' }),
  quantity('pressure_m', 'Head left', { digits: 2, hint: 'Over the open end: what valve and end take' }),
  text('note', 'Note', { width: 130 }),
  flag('drowned', 'Under water', { edit: true, shown: false }),
  count('emitters', 'Emitters', { edit: true, mayBeEmpty: true, shown: false }),
  quantity('emitter_L_per_h', 'Each gives', { edit: true, mayBeEmpty: true, shown: false }),
  quantity('emitterHead_m', 'at a head of', { edit: true, mayBeEmpty: true, shown: false }),
  derived('quantity', 'emitterExponent', 'Exponent', (row) => row.emitterExponent, {
    edit: true,
    mayBeEmpty: true,
    shown: false,
  }),
  derived('quantity', 'emitterCv', 'Spread Cv', (row) => row.emitterCv, { edit: true, mayBeEmpty: true, shown: false }),
  derived('quantity', 'setK', 'K as set', (row) => row.setK, { digits: 2, shown: false }),
];
