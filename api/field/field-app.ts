import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { secureHeaders } from 'hono/secure-headers';
import { z } from 'zod';
import { explainError, type Log } from '../explain-error.ts';
import { rateLimit } from '../http/rate-limit.ts';
import type { Pairing } from './pairing.ts';

/** What the field page may read and log: nothing else of the farm can be reached through it. */
export type FieldWork = {
  readonly week: () => unknown;
  /** Takes one entry. The same entry sent twice is taken once. */
  readonly log: (entry: FieldEntry, device: string) => unknown;
};

const id = z.string().regex(/^[\w-]{8,64}$/, 'An entry needs a key.');
const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/, 'A date is written 2026-03-09.');

export const fieldEntry = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('harvest'),
    id,
    date,
    plantingId: z.string().min(1).max(100),
    bedId: z.string().max(100).nullable().default(null),
    amount: z.number().positive('An amount is more than nothing.').max(1_000_000),
    unit: z.string().min(1).max(30),
    note: z.string().max(300).default(''),
    /** The picker looked at what was odd about it and means it. */
    confirmed: z.boolean().default(false),
  }),
  z.object({ kind: z.literal('task'), id, date, taskId: z.string().min(1).max(200), state: z.enum(['done', 'skipped']) }),
]);
export type FieldEntry = z.output<typeof fieldEntry>;

export type FieldOptions = {
  readonly pairing: Pairing;
  readonly work: FieldWork;
  readonly pages: string;
  /** `HOST:PORT` under which this door may be asked, one for each address of this computer. */
  readonly hosts: () => readonly string[];
  readonly log: Log;
  readonly now_ms: () => number;
};

type Env = { Variables: { device: string } };

const COOKIE = 'bedwright-field';
const BODY_LIMIT_B = 256 * 1024;
const addressOf = (c: Context<Env>): string => c.req.header('x-bedwright-remote') ?? 'unknown';
const types: Readonly<Record<string, string>> = {
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
};

function tokenOf(c: Context<Env>): string {
  for (const pair of (c.req.header('cookie') ?? '').split(';')) {
    const [key, ...rest] = pair.trim().split('=');
    if (key === COOKIE) return rest.join('=');
  }
  return '';
}

/** The door for phones on the farm's own network: pairing, this week's work, and a log. */
export function createFieldApp({ pairing, work, pages, hosts, log, now_ms }: FieldOptions): Hono<Env> {
  const app = new Hono<Env>();
  const mayAsk = rateLimit(120, 10_000, now_ms);
  const mayPair = rateLimit(8, 60_000, now_ms);
  app.onError((error, c) => {
    const said = explainError(error, log);
    return c.json({ code: said.code, message: said.message }, said.code === 'bug' ? 500 : 400);
  });
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:'],
        connectSrc: ["'self'"],
        formAction: ["'none'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
      },
      referrerPolicy: 'no-referrer',
      strictTransportSecurity: false,
      // both mean nothing without https, and a browser would only complain of them
      crossOriginOpenerPolicy: false,
      originAgentCluster: false,
    }),
  );
  app.use('*', async (c, next) => {
    const host = c.req.header('host') ?? '';
    if (!hosts().includes(host)) return c.text('This address is not the program’s.', 403);
    const from = c.req.header('origin');
    if (from !== undefined && from !== `http://${host}`) return c.text('Another page may not talk to this program.', 403);
    if (c.req.method === 'POST' && from === undefined) return c.text('A change must come from the field page.', 403);
    if (!mayAsk(addressOf(c))) return c.text('Too many requests; wait a little.', 429);
    return next();
  });
  app.use('*', bodyLimit({ maxSize: BODY_LIMIT_B, onError: (c) => c.text('This is too much at once.', 413) }));

  app.post('/pair', async (c) => {
    if (!mayPair(addressOf(c))) return c.json({ message: 'Too many tries; wait a minute.' }, 429);
    const given = z
      .object({ code: z.string().max(20), name: z.string().max(60).default('') })
      .parse(await c.req.json().catch(() => ({})));
    const answer = pairing.pair(given.code.replaceAll(/\D/g, ''), given.name, addressOf(c));
    if (answer.state === 'refused') return c.json({ message: answer.because }, 401);
    c.header('set-cookie', `${COOKIE}=${answer.token}; HttpOnly; SameSite=Strict; Path=/`);
    c.header('cache-control', 'no-store');
    return c.json({ name: answer.device.name });
  });
  app.use('/field/*', async (c, next) => {
    const device = pairing.deviceOf(tokenOf(c), addressOf(c));
    if (device === null) return c.json({ message: 'This device is not connected. Enter a code from the computer.' }, 401);
    c.set('device', device.name);
    c.header('cache-control', 'no-store');
    return next();
  });
  app.get('/field/week', (c) => c.json(work.week() as object));
  app.post('/field/log', async (c) => {
    const entry = fieldEntry.parse(await c.req.json().catch(() => ({})));
    return c.json(work.log(entry, c.get('device')) as object);
  });

  const root = normalize(pages);
  app.get('/assets/*', async (c) => {
    const path = normalize(join(root, decodeURIComponent(c.req.path)));
    const type = types[extname(path)];
    const body = path.startsWith(root + sep) && type !== undefined ? await readFile(path).catch(() => null) : null;
    if (body === null || type === undefined) return c.text('There is no such file.', 404);
    return c.body(new Uint8Array(body), 200, { 'content-type': type, 'cache-control': 'public, max-age=31536000, immutable' });
  });
  app.get('/', async (c) =>
    c.body(new Uint8Array(await readFile(join(root, 'field.html'))), 200, {
      'content-type': 'text/html; charset=utf-8',
      'cache-control': 'no-store',
    }),
  );
  return app;
}
