import { timingSafeEqual } from 'node:crypto';
import type { Context, Hono, Next } from 'hono';
import { rateLimit } from './rate-limit.ts';

/** Who may come in at the loopback door. */
export type Guard = {
  /** `http://127.0.0.1:PORT`, our own origin. */
  readonly origin: () => string;
  /** The secret of this start. */
  readonly secret: string;
  readonly now_ms: () => number;
};

/** Refusals a minute that are still explained; who holds the secret is never counted. */
const STRANGERS_A_MINUTE = 60;

const equal = (a: string, b: string): boolean => {
  const left = Buffer.from(a);
  const right = Buffer.from(b);
  return left.length === right.length && timingSafeEqual(left, right);
};

const welcomePage = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Bedwright</title>
<link rel="icon" href="data:,"><meta http-equiv="refresh" content="0; url=/"></head><body><p><a href="/">Go to the program</a></p></body></html>`;

/** The cookie is named with the port, since cookies are shared between the ports of one host. */
const cookieName = (origin: string): string => `bedwright-${new URL(origin).port}`;

function cookieOf(c: Context, name: string): string {
  for (const pair of (c.req.header('cookie') ?? '').split(';')) {
    const [key, ...rest] = pair.trim().split('=');
    if (key === name) return rest.join('=');
  }
  return '';
}

/**
 * Lets in only pages of our own origin that hold this start's secret: another host name (rebinding), another origin, a
 * cross-site request and a request without the cookie are all refused. Whoever keeps trying is told only to wait: the page
 * itself, which holds the secret, is never slowed down by it.
 */
export function refuseStrangers(app: Hono, guard: Guard): void {
  const mayAskWhy = rateLimit(STRANGERS_A_MINUTE, 60_000, guard.now_ms);
  const refused = (c: Context, why: string, status: 401 | 403) =>
    mayAskWhy('stranger') ? c.text(why, status) : c.text('Too many requests; wait a minute.', 429);
  app.use('*', async (c: Context, next: Next) => {
    const origin = guard.origin();
    if (c.req.header('host') !== new URL(origin).host) return refused(c, 'This address is not the program’s.', 403);
    const from = c.req.header('origin');
    if (from !== undefined && from !== origin) return refused(c, 'Another page may not talk to this program.', 403);
    const site = c.req.header('sec-fetch-site');
    if (c.req.path === '/open') return next();
    if (site !== undefined && site !== 'same-origin' && site !== 'none')
      return refused(c, 'Another page may not talk to this program.', 403);
    const changes = c.req.method !== 'GET' && c.req.method !== 'HEAD';
    if (changes && from === undefined && site !== 'same-origin')
      return refused(c, 'A change must come from the program’s own page.', 403);
    if (!equal(cookieOf(c, cookieName(origin)), guard.secret))
      return refused(c, 'Open the program with the address that it printed when it started.', 401);
    return next();
  });
  app.get('/open', (c) => {
    if (!equal(c.req.query('key') ?? '', guard.secret)) return refused(c, 'This key is not of this start.', 401);
    c.header('set-cookie', `${cookieName(guard.origin())}=${guard.secret}; HttpOnly; SameSite=Strict; Path=/`);
    c.header('cache-control', 'no-store');
    return c.html(welcomePage);
  });
}
