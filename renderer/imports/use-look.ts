import { useRef, useState } from 'react';
import { type Failure, failureOf } from '../client/failure.ts';

export type Look<Found> = {
  readonly text: string;
  readonly found: Found | undefined;
  readonly refused: Failure | undefined;
  /** Looks into another text. The answer to an older one, come late, is left out. */
  readonly into: (text: string) => Promise<void>;
};

/** A text that the program looks into before anything of it is brought in. */
export function useLook<Found>(ask: (text: string) => Promise<Found>): Look<Found> {
  const [text, setText] = useState('');
  const [found, setFound] = useState<Found>();
  const [refused, setRefused] = useState<Failure>();
  const newest = useRef(0);
  const into = async (next: string): Promise<void> => {
    newest.current += 1;
    const turn = newest.current;
    setText(next);
    setFound(undefined);
    setRefused(undefined);
    if (next.trim() === '') return;
    try {
      const answer = await ask(next);
      if (turn === newest.current) setFound(answer);
    } catch (error) {
      if (turn === newest.current) setRefused(failureOf(error));
    }
  };
  return { text, found, refused, into };
}
