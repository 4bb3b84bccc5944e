import table from '../../resources/commands.json';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';

/** One line of the table that the desktop window's menus read too: what is done, and by which keys. */
export type Command = { readonly id: string; readonly does: string; readonly keys?: string; readonly by: string };

const commands: readonly Command[] = table;

/** True in the program's own window; a browser keeps some keys for itself and has no menus of ours. */
export const inOwnWindow = (): boolean => window.location.protocol === 'bedwright:';

/** The keys of a command as they are written for the reader: `Ctrl+Shift+Z`. */
export function keysOf(id: string): string {
  const keys = commands.find((command) => command.id === id)?.keys;
  if (keys === undefined) throw new Error(`The command ${id} has no keys.`);
  return keys.replace('CmdOrCtrl', say('Ctrl')).replace('Shift', say('Shift')).replace('Alt', say('Alt'));
}

/** Commands with keys, as the help lists them: those of the window's own menus only where it is there. */
export const shownCommands = (): readonly { readonly keys: string; readonly does: string }[] =>
  commands
    .filter(
      (each) =>
        each.keys !== undefined && !each.keys.startsWith('Alt+') && (each.by === 'page' || each.id === 'print' || inOwnWindow()),
    )
    .map((each) => ({ keys: keysOf(each.id), does: sayKnown(each.does) }));

type Pressed = Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>;

/** The page's own command whose keys were pressed. Digits count by their place, whatever a keyboard writes with Alt. */
export function commandOf(event: Pressed): string | undefined {
  const whole = event.ctrlKey || event.metaKey;
  return commands.find(({ keys, by }) => {
    if (keys === undefined || by !== 'page') return false;
    const parts = keys.split('+');
    const last = parts.at(-1) ?? '';
    return (
      parts.includes('CmdOrCtrl') === whole &&
      parts.includes('Alt') === event.altKey &&
      parts.includes('Shift') === event.shiftKey &&
      (/^\d$/.test(last) ? event.code === `Digit${last}` : event.key.toLowerCase() === last.toLowerCase())
    );
  })?.id;
}
