/** What a page wants a file or folder for: to open one that is there, to write one that is not, or to put something into. */
export type FileWish = {
  readonly kind: 'open' | 'save' | 'folder';
  readonly title: string;
  /** Where the choice begins: a whole path, or a folder. */
  readonly at: string;
};

export type Theme = 'system' | 'light' | 'dark';

/** How the pages look and which language they speak, so that menus, dialogs and the window's ground can follow. */
export type WindowLook = { readonly theme: Theme; readonly language: string };

/**
 * What only a desktop window can do for the pages. They ask for it through the same door as for everything else, so that
 * no bridge into the page is needed. The loopback host has none of it; its pages use a chooser of their own.
 */
export type Desktop = {
  /** The system's own dialog; null when the reader closes it. */
  readonly chooseFile: (wish: FileWish) => Promise<string | null>;
  /** Gives the window's frame, menus and dialogs the look and language that were chosen in the page. */
  readonly followLook: (look: WindowLook) => void;
  /** The list of farms opened of late was changed: a path came to its head, or it was emptied. */
  readonly recentChanged: (added: string | null) => void;
};
