import { useEffect, useRef } from 'react';
import { go } from './address.ts';
import { places } from './places.ts';
import { useUndo } from './use-undo.ts';

export type Shortcut = { readonly keys: string; readonly does: string };

/** The keys that hold everywhere; shown in the help. */
export const shortcuts: readonly Shortcut[] = [
  { keys: 'Ctrl+K', does: 'Find and go' },
  { keys: 'Alt+1 … Alt+0', does: 'Go to a place' },
  { keys: 'Ctrl+Z', does: 'Undo' },
  { keys: 'Ctrl+Shift+Z', does: 'Redo' },
  { keys: 'F1', does: 'Help of this place' },
  { keys: 'Ctrl+P', does: 'Print the page' },
  { keys: 'Esc', does: 'Close the sheet or box' },
];

/** Keys of the tables. */
export const tableShortcuts: readonly Shortcut[] = [
  { keys: 'Arrows, Home, End, Page', does: 'Move; with Ctrl to the edge' },
  { keys: 'Enter', does: 'Edit the cell, or open the row' },
  { keys: 'Alt+Enter', does: 'Open the row' },
  { keys: 'Space', does: 'Select the row; Shift+Space up to here' },
  { keys: 'Ctrl+A', does: 'Select all rows' },
  { keys: 'Ctrl+C, Ctrl+V', does: 'Copy rows, paste a block from a spreadsheet' },
  { keys: 'Ctrl+D', does: 'Fill down' },
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
