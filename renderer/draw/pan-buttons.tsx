import { Button } from '../app/button.tsx';

/** Nearer, farther, all: for those who don't use a wheel. */
export function PanButtons({
  nearer,
  farther,
  reset,
}: {
  readonly nearer: () => void;
  readonly farther: () => void;
  readonly reset: () => void;
}) {
  return (
    <div className="drawing-tools no-print">
      <Button name="Nearer (+)" onClick={nearer}>
        +
      </Button>
      <Button name="Farther (−)" onClick={farther}>
        −
      </Button>
      <Button name="Show all (0)" onClick={reset}>
        All
      </Button>
    </div>
  );
}
