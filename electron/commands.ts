import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { WebContents } from 'electron';

/**
 * One line of the table of commands that menus and pages share (`resources/commands.json`). The keys of a command `by` the page are the page's
 * own, so that a text field keeps its own undo: the menu shows them and leaves them alone.
 */
export type Command = { readonly id: string; readonly does: string; readonly keys?: string; readonly by: 'page' | 'window' };

export const readCommands = (resources: string): readonly Command[] =>
  JSON.parse(readFileSync(join(resources, 'commands.json'), 'utf8')) as readonly Command[];

/** Tells a page to do one of its commands, as if its key had been pressed. The name is one of our own table, never a text from outside. */
export function tellPage(contents: WebContents, id: string): void {
  void contents.executeJavaScript(
    `window.dispatchEvent(new CustomEvent('bedwright:command', { detail: ${JSON.stringify(id)} }))`,
  );
}
