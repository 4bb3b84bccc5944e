import { announce } from '../client/announce.ts';
import { api } from '../client/api.ts';
import { useChange } from '../client/use-change.ts';
import { useRead } from '../client/use-read.ts';

/** The newest change that can be taken back and the next that can be done again, by name, and doing so. */
export function useUndo() {
  const state = useRead(api.undo.state, undefined);
  const undoing = useChange(api.undo.undo);
  const redoing = useChange(api.undo.redo);
  return {
    undoName: state.state === 'ready' ? state.data.undo : null,
    redoName: state.state === 'ready' ? state.data.redo : null,
    busy: undoing.busy || redoing.busy,
    undo: async (): Promise<void> => {
      const done = await undoing.run(undefined);
      if (done !== undefined) announce(done.note === null ? 'There is nothing to undo.' : `Undone: ${done.note}.`);
    },
    redo: async (): Promise<void> => {
      const done = await redoing.run(undefined);
      if (done !== undefined) announce(done.note === null ? 'There is nothing to redo.' : `Redone: ${done.note}.`);
    },
  };
}
