import { type Column, choice, count, derived, flag, quantity, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';
import type { OutletRow, RunRow } from './line-rows.ts';

export const runColumns: readonly Column<RunRow>[] = [
  text('to', say('To'), { width: 120, edit: true, hint: say('The place this run leads to') }),
  text('from', say('From'), { width: 120 }),
  quantity('length_m', say('Length'), { edit: true, total: 'sum' }),
  quantity('insideDiameter_mm', say('Inside'), {
    edit: true,
    hint: say('Inside diameter: “half-inch” is sold from 0.50 to 0.62 in (12.7 to 15.7 mm)'),
  }),
  quantity('teeBore_mm', say('Tee bore'), {
    edit: true,
    mayBeEmpty: true,
    hint: say('Bore of the barbed tee that narrows this run; empty for none'),
  }),
  derived('quantity', 'fittingK', say('Fittings K'), (row) => row.fittingK, {
    edit: true,
    width: 90,
    hint: say('Bends and divisions; a tee’s bore adds its own'),
  }),
  quantity('elevation_m', say('Height'), { edit: true, hint: say('Of the place it leads to') }),
  count('zone', say('Zone'), { edit: true, width: 60 }),
  quantity('flow_L_per_h', say('Flow'), { digits: 2 }),
  quantity('velocity_m_per_s', say('Speed'), { digits: 2 }),
  text('regime', say('Kind of flow'), { width: 110 }),
  quantity('loss_m', say('Head lost'), { digits: 2 }),
  quantity('head_m', say('Head at its end'), { digits: 3, shown: false }),
];

export const outletKinds = [
  { value: 'open-end', text: say('Open end') },
  { value: 'drip', text: say('Drip emitters') },
  { value: 'hand', text: say('Filled by hand') },
] as const;

export const outletColumns: readonly Column<OutletRow>[] = [
  text('code', say('Bed'), { width: 90 }),
  choice('kind', say('Outlet'), outletKinds, { edit: true, width: 110 }),
  quantity('outlet_m', say('Height'), { edit: true, hint: say('Of the open end, or of the water over a drowned one') }),
  quantity('bore_mm', say('Bore'), { edit: true }),
  derived('quantity', 'openK', say('K open'), (row) => row.openK, {
    edit: true,
    width: 80,
    hint: say('The valve fully open; small in-line valves 5 to 20'),
  }),
  derived('quantity', 'want', say('Share'), (row) => row.want, {
    edit: true,
    width: 70,
    hint: say('Wanted flow beside the other beds'),
  }),
  quantity('water_L', say('One fill'), {
    edit: true,
    mayBeEmpty: true,
    total: 'sum',
    hint: say('Empty takes what the bed’s basin holds'),
  }),
  quantity('now_L_per_h', say('Now, full'), { digits: 2, total: 'sum' }),
  quantity('low_L_per_h', say('Now, low'), { digits: 2, total: 'sum', hint: say('Reservoir at its lowest level') }),
  quantity('design_L_per_h', say('Valves set'), { digits: 2, total: 'sum' }),
  quantity('pressure_m', say('Head left'), { digits: 2, hint: say('Over the open end: what valve and end take') }),
  text('note', say('Note'), { width: 130 }),
  flag('drowned', say('Under water'), { edit: true, shown: false }),
  count('emitters', say('Emitters'), { edit: true, mayBeEmpty: true, shown: false }),
  quantity('emitter_L_per_h', say('Each gives'), { edit: true, mayBeEmpty: true, shown: false }),
  quantity('emitterHead_m', say('at a head of'), { edit: true, mayBeEmpty: true, shown: false }),
  derived('quantity', 'emitterExponent', say('Exponent'), (row) => row.emitterExponent, {
    edit: true,
    mayBeEmpty: true,
    shown: false,
  }),
  derived('quantity', 'emitterCv', say('Spread Cv'), (row) => row.emitterCv, { edit: true, mayBeEmpty: true, shown: false }),
  derived('quantity', 'setK', say('K as set'), (row) => row.setK, { digits: 2, shown: false }),
];
