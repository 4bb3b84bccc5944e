import { useEffect, useRef } from 'react';
import { say } from '../words/say.ts';
import { go } from './address.ts';
import { places } from './places.ts';
import { useUndo } from './use-undo.ts';

export type Shortcut = { readonly keys: string; readonly does: string };

/** The keys that hold everywhere; shown in the help. */
export const shortcuts: readonly Shortcut[] = [
  { keys: say('Ctrl+K'), does: say('Find and go') },
  { keys: say('Alt+1 … Alt+0'), does: say('Go to a place') },
  { keys: say('Ctrl+Z'), does: say('Undo') },
  { keys: say('Ctrl+Shift+Z'), does: say('Redo') },
  { keys: 'F1', does: say('Help of this place') },
  { keys: say('Ctrl+P'), does: say('Print the page') },
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

const inText = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input:not([type=checkbox]), textarea, select, [contenteditable]') !== null;

/** Listens to the keys that hold everywhere. In a text field undo is the field's own. */
export function useShellKeys(does: { readonly find: () => void; readonly help: () => void }): void {
  const undo = useUndo();
  const now = useRef({ does, undo });
  now.current = { does, undo };
  useEffect(() => {
    const onKey = (event: KeyboardEvent): void => {
      const whole = event.ctrlKey || event.metaKey;
      const key = event.key.toLowerCase();
      const place = event.altKey && !whole ? places.find((each) => event.code === `Digit${each.key}`) : undefined;
      if (place !== undefined) go(place.name);
      else if (whole && key === 'k') now.current.does.find();
      else if (event.key === 'F1') now.current.does.help();
      else if (whole && key === 'z' && !inText(event.target))
        void (event.shiftKey ? now.current.undo.redo() : now.current.undo.undo());
      else if (whole && key === 'y' && !inText(event.target)) void now.current.undo.redo();
      else return;
      event.preventDefault();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
