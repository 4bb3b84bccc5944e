import { randomBytes } from 'node:crypto';
import type { AddressInfo } from 'node:net';
import { serve } from '@hono/node-server';
import type { Program } from '../program/program.ts';
import { workAhead } from '../program/work-ahead.ts';
import { createApp } from './app.ts';

export type Loopback = { readonly origin: string; readonly address: string; readonly close: () => Promise<void> };

/** Serves the program on 127.0.0.1 only, under a secret of this start. Port 0 takes any free one. */
export function startLoopback(options: {
  readonly program: Program;
  readonly pages: string;
  readonly port: number;
  readonly now_ms?: () => number;
}): Promise<Loopback> {
  const secret = randomBytes(32).toString('base64url');
  let origin = 'http://127.0.0.1:0';
  const ahead = workAhead(options.program);
  const app = createApp({
    program: options.program,
    onAsked: ahead.asked,
    pages: options.pages,
    guard: { origin: () => origin, secret, now_ms: options.now_ms ?? Date.now },
  });
  return new Promise((resolve, reject) => {
    const server = serve({ fetch: app.fetch, hostname: '127.0.0.1', port: options.port }, (info: AddressInfo) => {
      origin = `http://127.0.0.1:${info.port}`;
      resolve({
        origin,
        address: `${origin}/open?key=${secret}`,
        close: () =>
          new Promise((done) => {
            ahead.end();
            server.close(() => done());
            if ('closeAllConnections' in server) server.closeAllConnections();
          }),
      });
    });
    server.on('error', (error: NodeJS.ErrnoException) => {
      reject(
        error.code === 'EADDRINUSE'
          ? new Error(`Port ${options.port} is taken by another program. Choose another with --port, or leave it out.`, {
              cause: error,
            })
          : error,
      );
    });
  });
}
