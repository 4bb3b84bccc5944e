import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createFieldApp, type FieldEntry } from '../../api/field/field-app.ts';
import { createPairing, type Pairing } from '../../api/field/pairing.ts';

const HOST = '192.168.7.20:4711';
let now_ms = 1_000_000;
let pairing: Pairing;
let taken: FieldEntry[];
let app: ReturnType<typeof createFieldApp>;

beforeEach(() => {
  now_ms = 1_000_000;
  taken = [];
  pairing = createPairing(() => now_ms);
  app = createFieldApp({
    pairing,
    work: {
      week: () => ({ tasks: [] }),
      log: (entry) => {
        taken.push(entry);
        return { taken: entry.id };
      },
    },
    pages: '/nonexistent',
    hosts: () => [HOST],
    log: () => undefined,
    now_ms: () => now_ms,
  });
});
afterEach(() => expect(taken.every((entry) => entry.id.length >= 8)).toBe(true));

const ask = (
  path: string,
  init: { readonly method?: string; readonly body?: unknown; readonly headers?: Readonly<Record<string, string>> } = {},
) =>
  app.request(`http://${HOST}${path}`, {
    method: init.method ?? 'GET',
    headers: {
      host: HOST,
      ...(init.method === 'POST' ? { origin: `http://${HOST}`, 'content-type': 'application/json' } : {}),
      ...init.headers,
    },
    ...(init.body === undefined ? {} : { body: JSON.stringify(init.body) }),
  });

async function pairedCookie(): Promise<string> {
  const { digits } = pairing.newCode();
  const said = await ask('/pair', { method: 'POST', body: { code: digits, name: 'Anna’s phone' } });
  expect(said.status).toBe(200);
  return (said.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
}

const harvest = { kind: 'harvest', id: 'entry-0001', date: '2026-07-04', plantingId: 'p1', amount: 2.5, unit: 'kg' };

describe('the field door', () => {
  test('lets nobody in before a code was asked for, nor without one', async () => {
    expect((await ask('/field/week')).status).toBe(401);
    expect((await ask('/pair', { method: 'POST', body: { code: '00000000' } })).status).toBe(401);
  });
  test('lets a phone in by its code, once', async () => {
    const cookie = await pairedCookie();
    expect((await ask('/field/week', { headers: { cookie } })).status).toBe(200);
    expect(pairing.devices().map((device) => device.name)).toEqual(['Anna’s phone']);
  });
  test('a code used or overheard is worth nothing afterwards', async () => {
    const { digits } = pairing.newCode();
    expect((await ask('/pair', { method: 'POST', body: { code: digits } })).status).toBe(200);
    expect((await ask('/pair', { method: 'POST', body: { code: digits } })).status).toBe(401);
  });
  test('a code is void after five minutes and after five wrong tries', async () => {
    const first = pairing.newCode();
    now_ms += 5 * 60_000 + 1;
    expect((await ask('/pair', { method: 'POST', body: { code: first.digits } })).status).toBe(401);
    const second = pairing.newCode();
    for (let n = 0; n < 5; n += 1) pairing.pair('x', '', '');
    expect(pairing.pair(second.digits, '', '').state).toBe('refused');
  });
  test('guessing is slowed down to a few tries a minute', async () => {
    pairing.newCode();
    const answers: number[] = [];
    for (let n = 0; n < 12; n += 1) answers.push((await ask('/pair', { method: 'POST', body: { code: `${n}` } })).status);
    expect(answers.filter((status) => status === 429).length).toBeGreaterThan(2);
  });
  test('takes an entry of a known phone, and says plainly what is wrong with a bad one', async () => {
    const cookie = await pairedCookie();
    expect((await ask('/field/log', { method: 'POST', body: harvest, headers: { cookie } })).status).toBe(200);
    expect(taken).toHaveLength(1);
    const wrong = await ask('/field/log', { method: 'POST', body: { ...harvest, amount: -1 }, headers: { cookie } });
    expect(wrong.status).toBe(400);
    expect(((await wrong.json()) as { message: string }).message).toContain('more than nothing');
    expect(taken).toHaveLength(1);
  });
  test('a phone that was sent away is a stranger again', async () => {
    const cookie = await pairedCookie();
    pairing.forget(pairing.devices()[0]?.id ?? '');
    expect((await ask('/field/week', { headers: { cookie } })).status).toBe(401);
    expect((await ask('/field/log', { method: 'POST', body: harvest, headers: { cookie } })).status).toBe(401);
  });
  test('a forged or changed secret is refused', async () => {
    const cookie = await pairedCookie();
    expect((await ask('/field/week', { headers: { cookie: `${cookie}x` } })).status).toBe(401);
    expect((await ask('/field/week', { headers: { cookie: 'bedwright-field=' } })).status).toBe(401);
  });
  test('another host name and another page’s origin are refused', async () => {
    const cookie = await pairedCookie();
    expect((await ask('/field/week', { headers: { cookie, host: 'farm.example:4711' } })).status).toBe(403);
    expect(
      (await ask('/field/log', { method: 'POST', body: harvest, headers: { cookie, origin: 'http://evil.example' } })).status,
    ).toBe(403);
    expect(taken).toHaveLength(0);
  });
  test('reaches nothing but the week and the log', async () => {
    const cookie = await pairedCookie();
    for (const path of ['/trpc/farm.get', '/export/x', '/open', '/field/farm', '/assets/../../package.json', '/beds']) {
      expect((await ask(path, { headers: { cookie } })).status, path).toBe(404);
    }
  });
  test('too much at once is refused', async () => {
    const cookie = await pairedCookie();
    const said = await ask('/field/log', {
      method: 'POST',
      body: { ...harvest, note: 'x'.repeat(400_000) },
      headers: { cookie, 'content-length': '400100' },
    });
    expect(said.status).toBe(413);
    const answers: number[] = [];
    for (let n = 0; n < 140; n += 1) answers.push((await ask('/field/week', { headers: { cookie } })).status);
    expect(answers).toContain(429);
    now_ms += 11_000;
    expect((await ask('/field/week', { headers: { cookie } })).status).toBe(200);
  });
});
