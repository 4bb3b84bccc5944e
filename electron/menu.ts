import { basename, dirname } from 'node:path';
import { app, type BaseWindow, BrowserWindow, Menu, type MenuItemConstructorOptions } from 'electron';
import { type Command, tellPage } from './commands.ts';
import { say } from './words.ts';

export type MenuActions = {
  /** Asks for a farm file and shows it in a window of its own. */
  readonly askForFarm: (over: BrowserWindow | null) => void;
  readonly openFarm: (path: string) => void;
  readonly newWindow: () => void;
  readonly clearRecent: () => void;
};

export type MenuContent = { readonly commands: readonly Command[]; readonly recent: readonly string[] };

const pageOf = (window: BaseWindow | undefined): BrowserWindow | null => (window instanceof BrowserWindow ? window : null);

/** The menu bar, in the reader's language, made anew when the language or the list of recent farms changes. */
export function installMenu(actions: MenuActions, { commands, recent }: MenuContent): void {
  const isMac = process.platform === 'darwin';
  const own: Readonly<Record<string, (window: BrowserWindow | null) => void>> = {
    openFarm: actions.askForFarm,
    newWindow: actions.newWindow,
    print: (window) => window?.webContents.print(),
  };
  const item = (id: string): MenuItemConstructorOptions => {
    const command = commands.find((each) => each.id === id);
    if (command === undefined) throw new Error(`There is no command ${id}.`);
    return {
      id,
      label: say(command.does),
      ...(command.keys === undefined ? {} : { accelerator: command.keys, registerAccelerator: command.by === 'window' }),
      click: (_item, base) => {
        const window = pageOf(base);
        if (command.by === 'window') own[id]?.(window);
        else if (window !== null) tellPage(window.webContents, id);
      },
    };
  };
  const split: MenuItemConstructorOptions = { type: 'separator' };
  const recentItems: readonly MenuItemConstructorOptions[] = recent.map((path) => ({
    label: `${basename(path, '.bedwright')}  (${dirname(path)})`,
    click: () => actions.openFarm(path),
  }));
  const template: MenuItemConstructorOptions[] = [
    ...(isMac ? [{ role: 'appMenu' as const }] : []),
    {
      label: say('File'),
      submenu: [
        item('newFarm'),
        item('openFarm'),
        {
          label: say('Open recent'),
          enabled: recent.length > 0,
          submenu: [...recentItems, split, { label: say('Empty this list'), click: actions.clearRecent }],
        },
        item('newWindow'),
        split,
        item('files'),
        item('backups'),
        split,
        item('print'),
        split,
        isMac ? { role: 'close', label: say('Close the window') } : { role: 'quit', label: say('Quit') },
      ],
    },
    {
      label: say('Edit'),
      submenu: [
        item('undo'),
        item('redo'),
        split,
        { role: 'cut', label: say('Cut') },
        { role: 'copy', label: say('Copy') },
        { role: 'paste', label: say('Paste') },
        { role: 'selectAll', label: say('Select all') },
        split,
        item('find'),
      ],
    },
    {
      label: say('Go'),
      submenu: ['week', 'beds', 'season', 'soil', 'water', 'orders', 'harvest', 'costs', 'library', 'farm'].map(item),
    },
    {
      label: say('View'),
      submenu: [
        { role: 'resetZoom', label: say('Usual size') },
        { role: 'zoomIn', label: say('Larger') },
        { role: 'zoomOut', label: say('Smaller') },
        { role: 'togglefullscreen', label: say('Full screen') },
        ...(app.isPackaged ? [] : [{ role: 'toggleDevTools' as const }]),
      ],
    },
    ...(isMac ? [{ role: 'windowMenu' as const }] : []),
    { label: say('Help'), role: 'help', submenu: [item('help'), item('program')] },
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
