import type { FieldEntry, Queued } from './field-types.ts';

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** Reads the kept queue; what cannot be read is dropped only entry by entry. */
export function readQueue(stored: string | null): readonly Queued[] {
  if (stored === null) return [];
  let parsed: unknown;
  try {
    parsed = JSON.parse(stored);
  } catch (error) {
    if (error instanceof SyntaxError) return [];
    throw error;
  }
  if (!Array.isArray(parsed)) return [];
  return parsed.filter(isRecord).flatMap((each) => {
    const { entry, text, refused } = each;
    if (!isRecord(entry) || typeof entry['id'] !== 'string' || typeof text !== 'string') return [];
    return [{ entry: entry as FieldEntry, text, ...(typeof refused === 'string' ? { refused } : {}) }];
  });
}

export type Answer =
  | { readonly state: 'taken' }
  | { readonly state: 'refused'; readonly because: string }
  | { readonly state: 'away' }
  | { readonly state: 'unpaired' };

/**
 * Sends what waits, oldest first. What is taken leaves the queue; what is refused stays with its reason and holds up
 * nothing; when the computer is away or does not know this phone the rest waits.
 */
export async function sendQueue(
  queue: readonly Queued[],
  send: (entry: FieldEntry) => Promise<Answer>,
): Promise<{ readonly queue: readonly Queued[]; readonly sent: number; readonly stopped: 'away' | 'unpaired' | undefined }> {
  const left: Queued[] = [];
  let sent = 0;
  let stopped: 'away' | 'unpaired' | undefined;
  for (const item of queue) {
    if (stopped !== undefined || item.refused !== undefined) {
      left.push(item);
      continue;
    }
    const answer = await send(item.entry);
    if (answer.state === 'taken') sent += 1;
    else if (answer.state === 'refused') left.push({ ...item, refused: answer.because });
    else {
      stopped = answer.state;
      left.push(item);
    }
  }
  return { queue: left, sent, stopped };
}
