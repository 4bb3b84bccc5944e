import { useCallback, useEffect, useRef, useState } from 'react';
import { fetchWeek, sendEntry } from './field-client.ts';
import type { FieldEntry, FieldWeek, Queued } from './field-types.ts';
import { readQueue, sendQueue } from './queue.ts';

const QUEUE = 'bedwright.field.queue';
const WEEK = 'bedwright.field.week';
const ROUND_MS = 15_000;

export type Field = {
  readonly state: 'asking' | 'unpaired' | 'here' | 'away';
  /** As the computer last sent it; kept on the phone for when it is out of reach. */
  readonly week: FieldWeek | undefined;
  readonly queue: readonly Queued[];
  readonly log: (entry: FieldEntry, text: string) => void;
  readonly confirm: (id: string) => void;
  readonly drop: (id: string) => void;
  readonly ask: () => Promise<void>;
};

const keptWeek = (): FieldWeek | undefined => {
  const stored = window.localStorage.getItem(WEEK);
  return stored === null ? undefined : (JSON.parse(stored) as FieldWeek);
};

/** The week and the queue of one phone: entries are kept first and sent when the computer answers. */
export function useField(): Field {
  const [state, setState] = useState<Field['state']>('asking');
  const [week, setWeek] = useState<FieldWeek | undefined>(keptWeek);
  const [queue, setQueue] = useState<readonly Queued[]>(() => readQueue(window.localStorage.getItem(QUEUE)));
  const now = useRef(queue);
  const sending = useRef(false);

  const keep = useCallback((next: readonly Queued[]): void => {
    now.current = next;
    window.localStorage.setItem(QUEUE, JSON.stringify(next));
    setQueue(next);
  }, []);

  const round = useCallback(async (): Promise<void> => {
    if (sending.current) return;
    sending.current = true;
    try {
      const before = now.current;
      const { queue: left, stopped } = await sendQueue(before, sendEntry);
      // entries logged while sending are behind those that were sent
      const added = now.current.filter((item) => !before.some((old) => old.entry.id === item.entry.id));
      keep([...left, ...added]);
      if (stopped !== undefined) {
        setState(stopped);
        return;
      }
      const answer = await fetchWeek();
      setState(answer.state);
      if (answer.state !== 'here') return;
      setWeek(answer.week);
      window.localStorage.setItem(WEEK, JSON.stringify(answer.week));
    } finally {
      sending.current = false;
    }
  }, [keep]);

  useEffect(() => {
    void round();
    const timer = setInterval(() => void round(), ROUND_MS);
    const online = () => void round();
    window.addEventListener('online', online);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', online);
    };
  }, [round]);

  return {
    state,
    week,
    queue,
    log: (entry, text) => {
      keep([...now.current, { entry, text }]);
      void round();
    },
    confirm: (id) => {
      keep(
        now.current.map(({ refused: _, ...item }) =>
          item.entry.id === id && item.entry.kind === 'harvest' ? { ...item, entry: { ...item.entry, confirmed: true } } : item,
        ),
      );
      void round();
    },
    drop: (id) => keep(now.current.filter((item) => item.entry.id !== id)),
    ask: round,
  };
}
