import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { nativeTheme } from 'electron';
import type { Theme, WindowLook } from '../api/program/desktop.ts';

/** The page's own ground in both looks (`--paper` of the pages' tokens; a test compares them), so that no window flashes white. */
export const GROUND = { light: '#fbfaf6', dark: '#15181b' } as const;

const themes: readonly Theme[] = ['system', 'light', 'dark'];
const usual: WindowLook = { theme: 'system', language: 'en' };

/** What was chosen in the page last, kept beside the window's place: the next window has it before its page is there. */
export function readLook(path: string, log: (line: string) => void): WindowLook {
  if (!existsSync(path)) return usual;
  try {
    const said = JSON.parse(readFileSync(path, 'utf8')) as Record<string, unknown>;
    return {
      theme: themes.find((theme) => theme === said['theme']) ?? usual.theme,
      language: typeof said['language'] === 'string' ? said['language'] : usual.language,
    };
  } catch (error) {
    log(`${path} could not be read: ${String(error)}`);
    return usual;
  }
}

export function writeLook(path: string, look: WindowLook, log: (line: string) => void): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, JSON.stringify(look));
  } catch (error) {
    log(`${path} could not be written: ${String(error)}`);
  }
}

/** Frames, menus and dialogs follow the theme; `system` follows the system's own, also when it changes in the evening. */
export function followTheme(theme: Theme): void {
  nativeTheme.themeSource = theme;
}

export const groundNow = (): string => (nativeTheme.shouldUseDarkColors ? GROUND.dark : GROUND.light);
