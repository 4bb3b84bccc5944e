import { say } from '../words/say.ts';
import type { FieldEntry, FieldWeek } from './field-types.ts';
import type { Answer } from './queue.ts';

export type WeekAnswer =
  | { readonly state: 'here'; readonly week: FieldWeek }
  | { readonly state: 'away' }
  | { readonly state: 'unpaired' };

const UNKNOWN_DEVICE = 401;
const TOO_MANY = 429;

async function ask(path: string, body?: unknown): Promise<Response | undefined> {
  try {
    return await fetch(
      path,
      body === undefined ? {} : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) },
    );
  } catch (error) {
    // out of reach of the computer: the entry waits
    if (error instanceof TypeError) return undefined;
    throw error;
  }
}

const messageOf = async (response: Response): Promise<string> => {
  const said: unknown = await response.json();
  return typeof said === 'object' && said !== null && 'message' in said
    ? String(said.message)
    : say('The computer answered {status}.', { status: response.status });
};

export async function fetchWeek(): Promise<WeekAnswer> {
  const response = await ask('/field/week');
  if (response === undefined || (!response.ok && response.status !== UNKNOWN_DEVICE)) return { state: 'away' };
  return response.ok ? { state: 'here', week: (await response.json()) as FieldWeek } : { state: 'unpaired' };
}

export async function sendEntry(entry: FieldEntry): Promise<Answer> {
  const response = await ask('/field/log', entry);
  if (response === undefined || response.status === TOO_MANY || response.status >= 500) return { state: 'away' };
  if (response.ok) return { state: 'taken' };
  return response.status === UNKNOWN_DEVICE ? { state: 'unpaired' } : { state: 'refused', because: await messageOf(response) };
}

/** Connects this phone by the code shown at the computer. Answers why not, or nothing. */
export async function pair(code: string, name: string): Promise<string | undefined> {
  const response = await ask('/pair', { code, name });
  if (response === undefined) return say('The computer does not answer. Is this phone on the farm’s own network?');
  return response.ok ? undefined : messageOf(response);
}
