import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import type { Hono } from 'hono';

const types: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

/** Serves the built pages: assets under their hashed names for ever, the one page for every other address. */
export function servePages(app: Hono, folder: string): void {
  const root = normalize(folder);
  app.get('/assets/*', async (c) => {
    const path = normalize(join(root, decodeURIComponent(c.req.path)));
    if (!path.startsWith(root + sep)) return c.text('There is no such file.', 404);
    const type = types[extname(path)];
    if (type === undefined) return c.text('There is no such file.', 404);
    const body = await readFile(path).catch(() => null);
    if (body === null) return c.text('There is no such file.', 404);
    return c.body(new Uint8Array(body), 200, { 'content-type': type, 'cache-control': 'public, max-age=31536000, immutable' });
  });
  app.get('*', async (c) => {
    if (c.req.path.includes('..') || c.req.path.startsWith('/trpc') || extname(c.req.path) !== '')
      return c.text('There is no such page.', 404);
    const page = await readFile(join(root, 'index.html'));
    return c.body(new Uint8Array(page), 200, { 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store' });
  });
}
