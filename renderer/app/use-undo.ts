import { announce } from '../client/announce.ts';
import { api } from '../client/api.ts';
import { useChange } from '../client/use-change.ts';
import { useRead } from '../client/use-read.ts';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';

/** The newest change that can be taken back and the next that can be done again, by name, and doing so. */
export function useUndo() {
  const state = useRead(api.undo.state, undefined);
  const undoing = useChange(api.undo.undo);
  const redoing = useChange(api.undo.redo);
  return {
    undoName: state.state === 'ready' ? known(state.data.undo) : null,
    redoName: state.state === 'ready' ? known(state.data.redo) : null,
    busy: undoing.busy || redoing.busy,
    undo: async (): Promise<void> => {
      const done = await undoing.run(undefined);
      if (done !== undefined)
        announce(done.note === null ? say('There is nothing to undo.') : say('Undone: {note}.', { note: sayKnown(done.note) }));
    },
    redo: async (): Promise<void> => {
      const done = await redoing.run(undefined);
      if (done !== undefined)
        announce(done.note === null ? say('There is nothing to redo.') : say('Redone: {note}.', { note: sayKnown(done.note) }));
    },
  };
}

const known = (note: string | null): string | null => (note === null ? null : sayKnown(note));
