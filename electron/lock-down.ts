import { type App, type Session, shell, type WebContents } from 'electron';

export const SCHEME = 'bedwright';
export const ORIGIN = `${SCHEME}://app`;

/** True for an address of the program's own; `bedwright://app.evil/` is not. */
export const isOurs = (url: string): boolean => url === ORIGIN || url.startsWith(`${ORIGIN}/`);

/** Pages of sources that the reader may open in the system's browser. */
const mayOpenOutside = (url: string): boolean => url.startsWith('https://');

/** No page leaves the program, opens a window of its own, or embeds another's. */
export function lockNavigation(app: App): void {
  app.on('web-contents-created', (_event, contents: WebContents) => {
    contents.setWindowOpenHandler(({ url }) => {
      if (mayOpenOutside(url)) void shell.openExternal(url);
      return { action: 'deny' };
    });
    const stay = (event: { preventDefault: () => void; readonly url: string }) => {
      if (!isOurs(event.url) && !event.url.startsWith(`blob:${ORIGIN}`)) event.preventDefault();
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
