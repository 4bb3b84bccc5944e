// A stand-in for the desktop runtime under plain Node: enough of its interface to run the bundle and pass requests to its scheme.
// Used by bundle.e2e.ts: `node --import stand-in-runtime.mjs dist/main/main.js`.
import { registerHooks } from 'node:module';

const source = `
const handlers = new Map();
const quiet = () => undefined;
export const app = {
  isPackaged: false, on: (name, handler) => handlers.set(name, handler), quit: () => process.exit(0), enableSandbox: quiet,
  requestSingleInstanceLock: () => true, whenReady: () => Promise.resolve(), isReady: () => true, addRecentDocument: quiet,
};
export class BrowserWindow {
  webContents = { print: quiet };
  once() {} on() {} loadURL(url) { process.send?.({ loaded: url }); return Promise.resolve(); }
}
export const crashReporter = { start: quiet };
export const dialog = { showErrorBox: (title, text) => process.send?.({ box: text }), showOpenDialog: async () => ({ canceled: true, filePaths: [] }) };
export const Menu = { buildFromTemplate: (template) => template, setApplicationMenu: quiet };
export const shell = { openExternal: async () => undefined };
export const session = { defaultSession: { setPermissionRequestHandler: quiet, setPermissionCheckHandler: quiet, setDevicePermissionHandler: quiet, webRequest: { onBeforeRequest: quiet } } };
export const protocol = {
  registerSchemesAsPrivileged: quiet,
  handle: (name, handle) => process.on('message', async ({ id, url, method, body }) => {
    const answer = await handle(new Request(url, { method, body, headers: { 'content-type': 'application/json' } }));
    process.send?.({ id, status: answer.status, policy: answer.headers.get('content-security-policy'), text: await answer.text() });
  }),
};
`;

registerHooks({
  resolve: (name, context, next) =>
    name === 'electron' ? { url: 'stand-in:electron', format: 'module', shortCircuit: true } : next(name, context),
  load: (url, context, next) =>
    url === 'stand-in:electron' ? { format: 'module', source, shortCircuit: true } : next(url, context),
});
