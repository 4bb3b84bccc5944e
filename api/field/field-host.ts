import type { AddressInfo } from 'node:net';
import { networkInterfaces } from 'node:os';
import { serve } from '@hono/node-server';
import type { Log } from '../explain-error.ts';
import { createFieldApp, type FieldWork } from './field-app.ts';
import { createPairing, type Pairing } from './pairing.ts';

export type FieldHost = {
  readonly addresses: () => readonly string[];
  readonly pairing: Pairing;
  readonly close: () => Promise<void>;
};

/** This computer's own addresses on the networks it is in, IPv4, without the loopback. */
export function ownAddresses(): readonly string[] {
  return Object.values(networkInterfaces())
    .flat()
    .flatMap((each) => (each !== undefined && each.family === 'IPv4' && !each.internal ? [each.address] : []));
}

/** Opens the door for phones on the farm's network. Off by default; nothing is remembered once it is closed. */
export function startFieldHost(options: {
  readonly work: FieldWork;
  readonly pages: string;
  readonly log: Log;
  readonly port: number;
  readonly hostname?: string;
}): Promise<FieldHost> {
  const pairing = createPairing(() => Date.now());
  let port = options.port;
  const names = () => [...ownAddresses(), '127.0.0.1'].map((address) => `${address}:${port}`);
  const app = createFieldApp({
    pairing,
    work: options.work,
    pages: options.pages,
    hosts: names,
    log: options.log,
    now_ms: () => Date.now(),
  });
  return new Promise((resolve, reject) => {
    const server = serve(
      {
        hostname: options.hostname ?? '0.0.0.0',
        port,
        fetch: (request, env) => {
          const incoming =
            'incoming' in env
              ? (env.incoming as { readonly socket: { readonly remoteAddress?: string | undefined } })
              : undefined;
          const headers = new Headers(request.headers);
          headers.set('x-bedwright-remote', incoming?.socket.remoteAddress ?? 'unknown');
          return app.fetch(new Request(request, { headers }));
        },
      },
      (info: AddressInfo) => {
        port = info.port;
        resolve({
          addresses: () => ownAddresses().map((address) => `http://${address}:${port}/`),
          pairing,
          close: () =>
            new Promise((done) => {
              server.close(() => done());
              if ('closeAllConnections' in server) server.closeAllConnections();
            }),
        });
      },
    );
    server.on('error', (error: NodeJS.ErrnoException) => {
      reject(
        error.code === 'EADDRINUSE'
          ? new Error(`Port ${options.port} is taken by another program. Choose another.`, { cause: error })
          : error,
      );
    });
  });
}
