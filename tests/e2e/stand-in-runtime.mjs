// A stand-in for the desktop runtime under plain Node: enough of its interface to run the bundle and pass requests to its scheme.
// Used by bundle.e2e.ts: `node --import stand-in-runtime.mjs dist/main/main.js`.
import { registerHooks } from 'node:module';

const source = `
const quiet = () => undefined;
let handlePage = async () => new Response('', { status: 404 });
class Emitter {
  #heard = new Map();
  on(name, heard) { this.#heard.set(name, [...(this.#heard.get(name) ?? []), heard]); return this; }
  once(name, heard) { return this.on(name, heard); }
  tell(name, ...args) { for (const heard of this.#heard.get(name) ?? []) heard(...args); }
}
export const app = Object.assign(new Emitter(), {
  isPackaged: false, quit: () => process.exit(0), exit: (code) => process.exit(code), enableSandbox: quiet,
  requestSingleInstanceLock: () => true, whenReady: () => Promise.resolve(), isReady: () => true, addRecentDocument: quiet,
  clearRecentDocuments: quiet, setJumpList: quiet,
});
export class BrowserWindow extends Emitter {
  webContents = Object.assign(new Emitter(), { print: quiet, executeJavaScript: async () => 'This week', setWindowOpenHandler: quiet });
  static getAllWindows() { return []; }
  static getFocusedWindow() { return null; }
  // nothing is drawn here: a page that the scheme answers counts as drawn, unless it is to break off
  async loadURL(url) {
    process.send?.({ loaded: url });
    const { status } = await handlePage(new Request(url));
    if (process.env.STAND_IN_PAGE === 'gone') this.webContents.tell('render-process-gone', {}, { reason: 'crashed' });
    else if (status === 200) this.tell('page-title-updated', {}, 'A page · of the stand-in');
  }
  destroy() { this.tell('closed'); }
}
export const nativeTheme = Object.assign(new Emitter(), { themeSource: 'system', shouldUseDarkColors: false });
export const powerMonitor = new Emitter();
export const powerSaveBlocker = { start: () => 1, stop: quiet };
export const screen = { getAllDisplays: () => [] };
export const dialog = {
  showErrorBox: (title, text) => process.send?.({ box: text }), showMessageBox: async () => ({ response: 0 }), showMessageBoxSync: () => 0,
  showOpenDialog: async () => ({ canceled: true, filePaths: [] }), showSaveDialog: async () => ({ canceled: true, filePath: '' }),
};
export const Menu = { buildFromTemplate: (template) => template, setApplicationMenu: quiet };
export const session = { defaultSession: { setPermissionRequestHandler: quiet, setPermissionCheckHandler: quiet, setDevicePermissionHandler: quiet, webRequest: { onBeforeRequest: quiet } } };
export const protocol = {
  registerSchemesAsPrivileged: quiet,
  handle: (name, handle) => {
    handlePage = handle;
    process.on('message', async ({ id, url, method, body }) => {
      const answer = await handle(new Request(url, { method, body, headers: { 'content-type': 'application/json' } }));
      process.send?.({ id, status: answer.status, policy: answer.headers.get('content-security-policy'), text: await answer.text() });
    });
  },
};
`;

registerHooks({
  resolve: (name, context, next) =>
    name === 'electron' ? { url: 'stand-in:electron', format: 'module', shortCircuit: true } : next(name, context),
  load: (url, context, next) =>
    url === 'stand-in:electron' ? { format: 'module', source, shortCircuit: true } : next(url, context),
});
