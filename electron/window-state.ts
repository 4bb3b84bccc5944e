import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

export type WindowState = {
  readonly width: number;
  readonly height: number;
  readonly x?: number;
  readonly y?: number;
  readonly maximized: boolean;
};

const usual: WindowState = { width: 1280, height: 860, maximized: false };
const LEAST = { width: 900, height: 600 };

const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);

/** Reads where the window stood last; anything unreadable gives the usual size. */
export function readWindowState(path: string, log: (line: string) => void): WindowState {
  if (!existsSync(path)) return usual;
  try {
    const said = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
    const size = {
      width: isNumber(said['width']) ? Math.max(LEAST.width, said['width']) : usual.width,
      height: isNumber(said['height']) ? Math.max(LEAST.height, said['height']) : usual.height,
      maximized: said['maximized'] === true,
    };
    return isNumber(said['x']) && isNumber(said['y']) ? { ...size, x: said['x'], y: said['y'] } : size;
  } catch (error) {
    log(`${path} could not be read: ${String(error)}`);
    return usual;
  }
}

export function writeWindowState(path: string, state: WindowState, log: (line: string) => void): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, JSON.stringify(state));
  } catch (error) {
    log(`${path} could not be written: ${String(error)}`);
  }
}
