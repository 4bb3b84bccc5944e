import type { ReactNode } from 'react';
import { Button } from '../app/button.tsx';
import { say } from '../words/say.ts';

/** Nearer, farther, all: for those who don't use a wheel. */
export function PanButtons({
  nearer,
  farther,
  reset,
  children,
}: {
  readonly nearer: () => void;
  readonly farther: () => void;
  readonly reset: () => void;
  /** Further tools of the drawing. */
  readonly children?: ReactNode;
}) {
  return (
    <div className="drawing-tools no-print">
      <Button name={say('Nearer (+)')} onClick={nearer}>
        +
      </Button>
      <Button name={say('Farther (−)')} onClick={farther}>
        −
      </Button>
      <Button name={say('Show all (0)')} onClick={reset}>
        {say('All')}
      </Button>
      {children}
    </div>
  );
}
