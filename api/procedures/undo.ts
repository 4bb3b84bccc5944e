import { act, ctxOf, nothing, read } from '../procedure.ts';

export const undo = {
  state: read({ input: nothing, run: ({ farm }) => farm.undoState() }),
  undo: act({ input: nothing, run: (door) => ({ note: ctxOf(door).farm.undo() }) }),
  redo: act({ input: nothing, run: (door) => ({ note: ctxOf(door).farm.redo() }) }),
};
