import type { Ctx } from '../procedure.ts';
import type { Program } from '../program/program.ts';
import { type FieldHost, startFieldHost } from './field-host.ts';
import { fieldWorkOf } from './field-work.ts';

/** The switch of the field page: one for each running program, off until it is turned on. */
const hosts = new WeakMap<Program, FieldHost>();

export type FieldState = {
  readonly on: boolean;
  readonly addresses: readonly string[];
  readonly code: { readonly digits: string; readonly until_ms: number } | null;
  readonly devices: readonly { readonly id: string; readonly name: string; readonly seen_ms: number; readonly address: string }[];
};

const off: FieldState = { on: false, addresses: [], code: null, devices: [] };

export function fieldState(program: Program): FieldState {
  const host = hosts.get(program);
  if (host === undefined) return off;
  return {
    on: true,
    addresses: host.addresses(),
    code: host.pairing.waitingCode(),
    devices: host.pairing.devices().map(({ id, name, seen_ms, address }) => ({ id, name, seen_ms, address })),
  };
}

/** Opens the door on a free port and makes the first code. */
export async function turnFieldOn(program: Program, pages: string, ctx: () => Ctx): Promise<FieldState> {
  if (!hosts.has(program)) {
    const host = await startFieldHost({ work: fieldWorkOf(ctx), pages, log: program.log, port: 0 });
    hosts.set(program, host);
  }
  hosts.get(program)?.pairing.newCode();
  return fieldState(program);
}

/** Closes it; every device is forgotten. */
export async function turnFieldOff(program: Program): Promise<FieldState> {
  const host = hosts.get(program);
  hosts.delete(program);
  await host?.close();
  return off;
}

export function newFieldCode(program: Program): FieldState {
  hosts.get(program)?.pairing.newCode();
  return fieldState(program);
}

export function forgetFieldDevice(program: Program, id: string): FieldState {
  hosts.get(program)?.pairing.forget(id);
  return fieldState(program);
}
