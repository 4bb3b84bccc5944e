import type { Reader } from '../../planner/units/reader.ts';
import type { Figure, Origin } from '../../planner/working.ts';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';

const originNames: Readonly<Record<Origin['kind'], string>> = {
  entry: say('Your entry'),
  library: say('Library'),
  source: say('Source'),
  practice: say('Practice'),
  computed: say('Computed'),
};

/** Where a value came from: "Library: peat moss" or just "Your entry". */
export function originText(origin: Origin): string {
  const name = originNames[origin.kind];
  return origin.text === '' || origin.text.toLowerCase() === name.toLowerCase() ? name : `${name}: ${sayKnown(origin.text)}`;
}

/** A figure in the reader's unit. A unit the printer does not know stands as it is written. */
export function figureText(figure: Figure, reader: Reader): string {
  return figure.unit === 'minor' ? reader.money(figure.value) : reader.print(figure.value, figure.unit);
}
