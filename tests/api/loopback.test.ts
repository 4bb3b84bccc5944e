import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Loopback, startLoopback } from '../../api/http/loopback.ts';
import { aProgram, type TestProgram } from '../builders/a-farm.ts';

let t: TestProgram;
let host: Loopback;
let pages: string;
let cookie: string;

type Answer = {
  readonly status: number;
  readonly body: string;
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
};

/** A raw request: `fetch` will not send a forged Host. */
function ask(
  path: string,
  headers: Readonly<Record<string, string>> = {},
  method = 'GET',
  body = '',
  origin = host.origin,
): Promise<Answer> {
  const { port, host: ours } = new URL(origin);
  return new Promise((resolve, reject) => {
    const sent = request(
      { host: '127.0.0.1', port, path, method, agent: false, headers: { host: ours, ...headers } },
      (answer) => {
        let text = '';
        answer.on('data', (chunk: Buffer) => {
          text += chunk.toString();
        });
        answer.on('end', () => resolve({ status: answer.statusCode ?? 0, body: text, headers: answer.headers }));
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

beforeAll(async () => {
  t = aProgram({ beds: 4, years: 0 });
  pages = mkdtempSync(join(tmpdir(), 'bedwright-pages-'));
  writeFileSync(join(pages, 'index.html'), '<!doctype html><title>page</title>');
  host = await startLoopback({ program: t.program, pages, port: 0 });
  const opened = await ask(new URL(host.address).pathname + new URL(host.address).search);
  cookie = String(opened.headers['set-cookie']).split(';')[0] ?? '';
});
afterAll(async () => {
  await host.close();
  await t.end();
  rmSync(pages, { recursive: true, force: true });
});

const json = { 'content-type': 'application/json' };
const batch = '/trpc/farm.get?batch=1';

describe('the loopback door', () => {
  test('lets its own page in', async () => {
    expect((await ask('/beds', { cookie })).status).toBe(200);
    const said = await ask(batch, { ...json, cookie, origin: host.origin }, 'POST', '{}');
    expect(said.status).toBe(200);
    expect(said.headers['cache-control']).toBe('no-store');
    expect(JSON.parse(said.body)).toMatchObject([{ result: { data: { name: 'Saltgrass Lane Market Garden (invented)' } } }]);
  });
  test('refuses another host name, which a rebinding page would send', async () => {
    expect((await ask('/', { cookie, host: 'farm.example:80' })).status).toBe(403);
    expect((await ask('/', { cookie, host: 'localhost' })).status).toBe(403);
  });
  test('refuses another page’s origin, and a cross-site request', async () => {
    expect((await ask(batch, { ...json, cookie, origin: 'http://evil.example' }, 'POST', '{}')).status).toBe(403);
    expect((await ask('/', { cookie, 'sec-fetch-site': 'cross-site' })).status).toBe(403);
    expect((await ask(batch, { ...json, cookie }, 'POST', '{}')).status).toBe(403);
  });
  test('refuses a request without this start’s secret, and a wrong key', async () => {
    expect((await ask('/')).status).toBe(401);
    expect((await ask('/', { cookie: `${cookie}x` })).status).toBe(401);
    expect((await ask('/open?key=guess')).status).toBe(401);
    expect((await ask('/open')).status).toBe(401);
  });
  test('the key’s cookie is out of reach of scripts and of other sites', async () => {
    const opened = await ask(new URL(host.address).pathname + new URL(host.address).search);
    expect(opened.headers['set-cookie']?.[0]).toMatch(/HttpOnly; SameSite=Strict/);
    expect(opened.status).toBe(200);
  });
  test('serves nothing from above its folder', async () => {
    for (const path of [
      '/../package.json',
      '/assets/../../package.json',
      '/assets/%2e%2e/%2e%2e/package.json',
      '/assets/..%2f..%2fpackage.json',
      '/package.json',
    ]) {
      expect((await ask(path, { cookie })).status, path).toBe(404);
    }
  });
  test('sends the strict content policy and no inline exception', async () => {
    const policy = String((await ask('/', { cookie })).headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe');
  });
  test('takes no more than 32 MiB at once', async () => {
    const said = await ask(
      batch,
      { ...json, cookie, origin: host.origin, 'content-length': String(40 * 1024 * 1024) },
      'POST',
      '',
    ).catch(() => ({ status: 413 }));
    expect(said.status).toBe(413);
  });
  test('prints for its own page alone, no more than 24 MiB, and nothing that names a file or an address', async () => {
    const own = { ...json, cookie, origin: host.origin };
    const sheet = (shape: object) =>
      JSON.stringify({
        title: 'Labels',
        paper: 'a4',
        seasonId: null,
        parts: [{ kind: 'sheet', width_px: 794, height_px: 1123, shapes: [shape] }],
      });
    const square = { tag: 'rect', attributes: { x: '1', y: '1', width: '9', height: '9', fill: '#000000' } };
    const print = (headers: Readonly<Record<string, string>>, body: string) => ask('/print', headers, 'POST', body);
    const made = await print(own, sheet(square));
    expect(made.status).toBe(200);
    expect(made.body.slice(0, 5)).toBe('%PDF-');
    expect((await print({ ...json, origin: host.origin }, sheet(square))).status).toBe(401);
    expect((await print({ ...json, cookie, origin: 'http://evil.example' }, sheet(square))).status).toBe(403);
    expect((await print({ ...json, cookie }, sheet(square))).status).toBe(403);
    const large = await print({ ...own, 'content-length': String(25 * 1024 * 1024) }, '').catch(() => ({ status: 413 }));
    expect(large.status).toBe(413);
    for (const foreign of [
      { tag: 'image', attributes: { href: 'file:///etc/hostname' } },
      { tag: 'image', attributes: { href: 'http://other.example/a.png' } },
      { tag: 'rect', attributes: { ...square.attributes, href: 'http://other.example/a.png' } },
      { tag: 'rect', attributes: { ...square.attributes, fill: 'url(http://other.example/a.svg#b)' } },
      { tag: 'g', attributes: {}, shapes: [{ tag: 'script', attributes: {}, text: '1' }] },
    ])
      expect((await print(own, sheet(foreign))).status, JSON.stringify(foreign)).toBe(400);
    expect((await print(own, 'not JSON')).status).toBe(400);
    const { body } = await print(
      own,
      sheet({ tag: 'text', attributes: { x: '9', y: '9' }, text: '</text><image href="file:///x"/>' }),
    );
    expect(body.slice(0, 5)).toBe('%PDF-');
  });
  test('whoever keeps guessing is told only to wait; the page that holds the key is not slowed down', async () => {
    let now_ms = 5_000_000;
    const other = await startLoopback({ program: t.program, pages, port: 0, now_ms: () => now_ms });
    const at = (path: string, headers: Readonly<Record<string, string>> = {}) =>
      ask(path, { host: new URL(other.origin).host, ...headers }, 'GET', '', other.origin);
    const { pathname, search } = new URL(other.address);
    const own = String((await at(pathname + search)).headers['set-cookie']).split(';')[0] ?? '';
    const answers: number[] = [];
    for (let guess = 0; guess < 80; guess += 1) answers.push((await at(`/open?key=guess-${guess}`)).status);
    expect(answers.slice(0, 60)).toEqual(Array.from({ length: 60 }, () => 401));
    expect(answers.slice(60)).toEqual(Array.from({ length: 20 }, () => 429));
    expect((await at('/', { host: 'farm.example' })).status).toBe(429);
    for (let look = 0; look < 80; look += 1) expect((await at('/', { cookie: own })).status).toBe(200);
    expect((await at(pathname + search)).status).toBe(200);
    now_ms += 60_001;
    expect((await at('/')).status).toBe(401);
    await other.close();
  });
  test('can be reached on this computer’s own address alone', async () => {
    const outside = Object.values(networkInterfaces())
      .flat()
      .filter((each) => each?.family === 'IPv4' && !each.internal)
      .map((each) => each?.address ?? '');
    const { port } = new URL(host.origin);
    for (const address of [...outside, '127.0.0.2', '::1'])
      await expect(
        new Promise((resolve, reject) =>
          connect({ host: address, port: Number(port) }, () => resolve(address)).on('error', reject),
        ),
        address,
      ).rejects.toThrow(/ECONNREFUSED|EADDRNOTAVAIL|ENETUNREACH|EAFNOSUPPORT/);
  });
  test('neither the secret nor the cookie comes into the log, whatever goes wrong', async () => {
    const lines: string[] = [];
    const failing = {
      ...t.program,
      log: (line: string) => lines.push(line),
      farm: () => {
        throw new Error('a fault of our own');
      },
    };
    const other = await startLoopback({ program: failing, pages, port: 0 });
    const its = new URL(other.origin);
    const key = new URL(other.address).searchParams.get('key') ?? '';
    const own = `bedwright-${its.port}=${key}`;
    const head = { ...json, host: its.host, origin: other.origin, cookie: own };
    const said = await ask(batch, head, 'POST', '{}', other.origin);
    await ask(`/export/shopping-list.csv?farm=1&key=${key}`, { host: its.host, cookie: own }, 'GET', '', other.origin);
    await ask(`/open?key=${key}x`, { host: its.host }, 'GET', '', other.origin);
    await other.close();
    expect(said.body).toContain('bug');
    expect(lines.join('\n')).toContain('a fault of our own');
    expect(key).toMatch(/^[\w-]{43}$/);
    for (const line of lines) expect(line).not.toContain(key);
    expect(said.body).not.toContain(key);
  });
  test('a port in use is said in one sentence', async () => {
    await expect(startLoopback({ program: t.program, pages, port: Number(new URL(host.origin).port) })).rejects.toThrow(
      /taken by another program/,
    );
  });
  test('our own fault shows a reference and no stack', async () => {
    const said = await ask('/trpc/jobs.get?batch=1', { ...json, cookie, origin: host.origin }, 'POST', '{"0":{"jobId":"none"}}');
    expect(said.body).toContain('no longer there');
    expect(said.body).not.toContain('at ');
    expect(said.body).not.toContain('stack');
  });
});
