/** What a page wants a file for: to open one that is there, or to write one that is not. */
export type FileWish = {
  readonly kind: 'open' | 'save';
  readonly title: string;
  /** Where the choice begins: a whole path, or a folder. */
  readonly at: string;
};

export type Theme = 'system' | 'light' | 'dark';

/**
 * What only a desktop window can do for the pages. They ask for it through the same door as for everything else, so that
 * no bridge into the page is needed. The loopback host has none of it; its pages use a chooser of their own.
 */
export type Desktop = {
  /** The system's own dialog; null when the reader closes it. */
  readonly chooseFile: (wish: FileWish) => Promise<string | null>;
  /** Gives the window's frame, menus and dialogs the look that was chosen in the page. */
  readonly followTheme: (theme: Theme) => void;
};
