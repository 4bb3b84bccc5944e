import { fetchRequestHandler } from '@trpc/server/adapters/fetch';
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { secureHeaders } from 'hono/secure-headers';
import { InputError } from '../../planner/errors.ts';
import { explainError } from '../explain-error.ts';
import { openDropped } from '../files/dropped-farm.ts';
import { printedPdf } from '../print/printed-pdf.ts';
import { ctxOf, type DoorContext } from '../procedure.ts';
import type { Program } from '../program/program.ts';
import { router } from '../router.ts';
import { type Download, downloads } from './downloads.ts';
import { type Guard, refuseStrangers } from './guard.ts';
import { servePages } from './pages.ts';

export type AppOptions = {
  readonly program: Program;
  /** The folder of the built pages. */
  readonly pages: string;
  /** At the loopback door: who may come in. The private scheme of the desktop window needs none. */
  readonly guard?: Guard;
  /** Told of every request for a procedure, with the farm that it is about. */
  readonly onAsked?: (farmKey: string | null) => void;
};

const BODY_LIMIT_B = 32 * 1024 * 1024;
/** A farm of 1,000 beds and five seasons is 50 MB. */
const FARM_LIMIT_B = 512 * 1024 * 1024;
const PRINT_LIMIT_B = 24 * 1024 * 1024;
const FARM_HEADER = 'x-bedwright-farm';

/** The program as one function from `Request` to `Response`: procedures, downloads and pages, the same at both doors. */
export function createApp({ program, pages, guard, onAsked }: AppOptions) {
  const app = new Hono();
  const doorOf = (farmKey: string | null): DoorContext => ({ program, farmKey, log: program.log });
  app.onError((error, c) => {
    const said = explainError(error, program.log);
    return c.text(said.message, said.code === 'bug' ? 500 : said.code === 'not-found' ? 404 : 400);
  });
  app.use(
    secureHeaders({
      contentSecurityPolicy: {
        defaultSrc: ["'none'"],
        scriptSrc: ["'self'"],
        styleSrc: ["'self'"],
        imgSrc: ["'self'", 'data:', 'blob:'],
        fontSrc: ["'self'"],
        connectSrc: ["'self'"],
        workerSrc: ["'self'"],
        frameSrc: ["'self'", 'blob:'],
        formAction: ["'none'"],
        baseUri: ["'none'"],
        frameAncestors: ["'none'"],
        objectSrc: ["'none'"],
        requireTrustedTypesFor: ["'script'"],
      },
      crossOriginEmbedderPolicy: 'require-corp',
      referrerPolicy: 'no-referrer',
      strictTransportSecurity: false,
      permissionsPolicy: { camera: [], microphone: [], geolocation: [], payment: [], usb: [], fullscreen: [] },
    }),
  );
  if (guard !== undefined) refuseStrangers(app, guard);
  app.use('/trpc/*', bodyLimit({ maxSize: BODY_LIMIT_B, onError: (c) => c.text('This is more than 32 MiB at once.', 413) }));
  app.all('/trpc/*', async (c) => {
    const farmKey = c.req.header(FARM_HEADER) ?? null;
    const answer = await fetchRequestHandler({
      endpoint: '/trpc',
      req: c.req.raw,
      router,
      allowMethodOverride: true,
      createContext: () => doorOf(farmKey),
    });
    onAsked?.(farmKey);
    const plain = new Response(answer.body, answer);
    plain.headers.set('cache-control', 'no-store');
    return plain;
  });
  app.use(
    '/farm-file',
    bodyLimit({ maxSize: FARM_LIMIT_B, onError: (c) => c.text('This file is too large to be taken in here.', 413) }),
  );
  app.post('/farm-file', async (c) => c.json(openDropped(program, c.req.query('name') ?? '', await c.req.arrayBuffer())));
  app.use(
    '/print',
    bodyLimit({ maxSize: PRINT_LIMIT_B, onError: (c) => c.text('This is more than can be printed at once.', 413) }),
  );
  app.post('/print', async (c) =>
    fileAnswer(await printedPdf(ctxOf(doorOf(c.req.header(FARM_HEADER) ?? null)), await jsonOf(c.req.raw))),
  );
  app.get('/export/:name', async (c) => {
    const make = downloads[c.req.param('name')];
    if (make === undefined) return c.text('There is no such download.', 404);
    const query = c.req.query();
    const file = await make(ctxOf(doorOf(query['farm'] ?? null)), query);
    return fileAnswer(file);
  });
  servePages(app, pages);
  return app;
}

function fileAnswer(file: Download): Response {
  return new Response(file.body, {
    headers: {
      'content-type': file.type,
      'content-disposition': `${file.inline === true ? 'inline' : 'attachment'}; filename*=UTF-8''${encodeURIComponent(file.name)}`,
      'cache-control': 'no-store',
    },
  });
}

async function jsonOf(request: Request): Promise<unknown> {
  const text = await request.text();
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) throw new InputError([{ path: '', code: 'form', message: 'This is not JSON.' }]);
    throw error;
  }
}
