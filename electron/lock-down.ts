import type { App, Session, WebContents } from 'electron';

export const SCHEME = 'bedwright';
export const ORIGIN = `${SCHEME}://app`;

/** True for an address of the program's own; `bedwright://app.evil/` is not. */
export const isOurs = (url: string): boolean => url === ORIGIN || url.startsWith(`${ORIGIN}/`);

const isDownload = (url: string): boolean => url.startsWith(`${ORIGIN}/export/`);

export type Ways = {
  /** A page wants another page of the program in a second window. */
  readonly openOurs: (url: string) => void;
  /** Whether this window may go to that page of the program. */
  readonly mayGo: (contents: WebContents, url: string) => boolean;
};

/**
 * No page leaves the program, opens a window of its own making, or embeds another's. A second window on a page of ours is made by
 * the program, as locked as the first; what is to be downloaded is downloaded; nothing is handed to the system to open.
 */
export function lockNavigation(app: App, { openOurs, mayGo }: Ways): void {
  app.on('web-contents-created', (_event, contents: WebContents) => {
    contents.setWindowOpenHandler(({ url }) => {
      if (isDownload(url)) contents.downloadURL(url);
      else if (isOurs(url)) openOurs(url);
      return { action: 'deny' };
    });
    const stay = (event: { preventDefault: () => void; readonly url: string; readonly isMainFrame?: boolean }) => {
      const { url } = event;
      const known = isOurs(url)
        ? event.isMainFrame === false || isDownload(url) || mayGo(contents, url)
        : url.startsWith(`blob:${ORIGIN}`);
      if (!known) event.preventDefault();
    };
    contents.on('will-frame-navigate', stay);
    contents.on('will-redirect', stay);
    contents.on('will-attach-webview', (event) => event.preventDefault());
  });
}

const allowedSchemes = [`${SCHEME}:`, 'blob:', 'data:', 'devtools:'];

/** No permission but writing plain text to the clipboard; no request but to the program itself. */
export function lockSession(session: Session): void {
  session.setPermissionRequestHandler((_contents, permission, answer) => answer(permission === 'clipboard-sanitized-write'));
  session.setPermissionCheckHandler((_contents, permission) => permission === 'clipboard-sanitized-write');
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest((details, answer) => {
    answer({ cancel: !allowedSchemes.some((scheme) => details.url.startsWith(scheme)) });
  });
}
