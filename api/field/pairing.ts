import { randomBytes, randomInt, timingSafeEqual } from 'node:crypto';

/** A phone that was let in. Its token is kept here only, for as long as the field page is on. */
export type Device = {
  readonly id: string;
  readonly name: string;
  readonly since_ms: number;
  readonly seen_ms: number;
  readonly address: string;
};

export type PairAnswer =
  | { readonly state: 'paired'; readonly token: string; readonly device: Device }
  | { readonly state: 'refused'; readonly because: string };

const CODE_LIFE_MS = 5 * 60_000;
const WRONG_TRIES = 5;
const CODE_DIGITS = 8;
const MOST_DEVICES = 12;

type Code = { readonly digits: string; readonly until_ms: number; triesLeft: number };

const same = (a: string, b: string): boolean => {
  const left = Buffer.from(a);
  const right = Buffer.from(b);
  return left.length === right.length && timingSafeEqual(left, right);
};

/**
 * Lets phones in by a one-time code: eight digits, five minutes, one use, void after five wrong tries. A device then holds a
 * secret of its own. Everything is forgotten when the field page is switched off.
 */
export function createPairing(now_ms: () => number) {
  let code: Code | null = null;
  const devices = new Map<string, Device>();

  function newCode(): { readonly digits: string; readonly until_ms: number } {
    const digits = String(randomInt(0, 10 ** CODE_DIGITS)).padStart(CODE_DIGITS, '0');
    code = { digits, until_ms: now_ms() + CODE_LIFE_MS, triesLeft: WRONG_TRIES };
    return { digits, until_ms: code.until_ms };
  }

  function pair(given: string, name: string, address: string): PairAnswer {
    if (code === null || now_ms() > code.until_ms) {
      code = null;
      return { state: 'refused', because: 'There is no code to enter now. Ask for a new one at the computer.' };
    }
    if (!same(given, code.digits)) {
      code.triesLeft -= 1;
      if (code.triesLeft <= 0) code = null;
      return { state: 'refused', because: 'This code is not right.' };
    }
    code = null;
    if (devices.size >= MOST_DEVICES)
      return { state: 'refused', because: `No more than ${MOST_DEVICES} devices can be connected.` };
    const token = randomBytes(32).toString('base64url');
    const device: Device = {
      id: randomBytes(6).toString('hex'),
      name: name.trim().slice(0, 40) || 'Phone',
      since_ms: now_ms(),
      seen_ms: now_ms(),
      address,
    };
    devices.set(token, device);
    return { state: 'paired', token, device };
  }

  /** The device that holds a token, marked as seen; null for a stranger. */
  function deviceOf(token: string, address: string): Device | null {
    for (const [known, device] of devices) {
      if (!same(known, token)) continue;
      const seen = { ...device, seen_ms: now_ms(), address };
      devices.set(known, seen);
      return seen;
    }
    return null;
  }

  return {
    newCode,
    pair,
    deviceOf,
    waitingCode: () => (code !== null && now_ms() <= code.until_ms ? { digits: code.digits, until_ms: code.until_ms } : null),
    devices: (): readonly Device[] => [...devices.values()],
    forget(id: string): void {
      for (const [token, device] of devices) if (device.id === id) devices.delete(token);
    },
  };
}

export type Pairing = ReturnType<typeof createPairing>;
