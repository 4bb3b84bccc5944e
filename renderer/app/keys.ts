import { useEffect, useRef } from 'react';
import { cache } from '../client/api.ts';
import { say } from '../words/say.ts';
import { go } from './address.ts';
import { commandOf, shownCommands } from './commands.ts';
import { placeNames } from './place-names.ts';
import { useUndo } from './use-undo.ts';

export type Shortcut = { readonly keys: string; readonly does: string };

/** The keys that hold everywhere; shown in the help. */
export const shortcuts: readonly Shortcut[] = [
  ...shownCommands(),
  { keys: say('Alt+1 … Alt+0'), does: say('Go to a place') },
  { keys: say('Esc'), does: say('Close the sheet or box') },
];

/** Keys of the tables. */
export const tableShortcuts: readonly Shortcut[] = [
  { keys: say('Arrows, Home, End, Page'), does: say('Move; with Ctrl to the edge') },
  { keys: 'Enter', does: say('Edit the cell, or open the row') },
  { keys: say('Alt+Enter'), does: say('Open the row') },
  { keys: say('Space'), does: say('Select the row; Shift+Space up to here') },
  { keys: say('Ctrl+A'), does: say('Select all rows') },
  { keys: say('Ctrl+C, Ctrl+V'), does: say('Copy rows, paste a block from a spreadsheet') },
  { keys: say('Ctrl+D'), does: say('Fill down') },
];

/** In a field to type in, which undoes its own words. A list to choose from or a box to tick has nothing of its own to undo. */
const inText = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.closest('input:not([type=checkbox], [type=radio], [type=range], [type=file]), textarea, [contenteditable]') !== null;

/** What the menus of the desktop window send to its page. */
const COMMAND = 'bedwright:command';

/** Listens to the keys that hold everywhere, and to the menus of the desktop window. In a text field undo is the field's own. */
export function useShellKeys(does: { readonly find: () => void; readonly help: () => void }): void {
  const undo = useUndo();
  const now = useRef({ does, undo });
  now.current = { does, undo };
  useEffect(() => {
    const farm = (tab: string) => () => go('farm', { tab });
    const actions: Readonly<Record<string, () => void>> = {
      ...Object.fromEntries(placeNames.map((name) => [name, () => go(name)])),
      newFarm: farm('new'),
      files: farm('files'),
      backups: farm('backups'),
      program: farm('program'),
      find: () => now.current.does.find(),
      help: () => now.current.does.help(),
      undo: () => void now.current.undo.undo(),
      redo: () => void now.current.undo.redo(),
      renew: () => void cache.invalidateQueries(),
    };
    const onKey = (event: KeyboardEvent): void => {
      const again = (event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === 'y';
      const command = again ? 'redo' : commandOf(event);
      const action = command === undefined ? undefined : actions[command];
      if (action === undefined || ((command === 'undo' || command === 'redo') && inText(event.target))) return;
      action();
      event.preventDefault();
    };
    const onCommand = (event: Event): void => {
      const command: unknown = event instanceof CustomEvent ? event.detail : undefined;
      if (typeof command !== 'string') return;
      // a menu's undo means the text that is being written, as the key does
      if ((command === 'undo' || command === 'redo') && inText(document.activeElement)) document.execCommand(command);
      else actions[command]?.();
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener(COMMAND, onCommand);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener(COMMAND, onCommand);
    };
  }, []);
}
