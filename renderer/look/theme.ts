import { useSyncExternalStore } from 'react';

export type Theme = 'system' | 'light' | 'dark';
export type Contrast = 'normal' | 'high';
export type Look = { readonly theme: Theme; readonly contrast: Contrast };

const KEY = 'bedwright.look';
const listeners = new Set<() => void>();
const themes: readonly Theme[] = ['system', 'light', 'dark'];

/** Reads a stored look; anything else is the system's. */
export function readLook(stored: string | null, systemContrast: Contrast): Look {
  const [theme, contrast] = (stored ?? '').split(' ');
  return {
    theme: themes.find((known) => known === theme) ?? 'system',
    contrast: contrast === 'high' || contrast === 'normal' ? contrast : systemContrast,
  };
}

const systemContrast = (): Contrast => (window.matchMedia('(prefers-contrast: more)').matches ? 'high' : 'normal');

let look: Look = { theme: 'system', contrast: 'normal' };

function show(): void {
  document.documentElement.dataset['theme'] = look.theme;
  document.documentElement.dataset['contrast'] = look.contrast;
}

/** Puts the stored look on the page; call once before the first picture. */
export function startLook(): void {
  look = readLook(window.localStorage.getItem(KEY), systemContrast());
  show();
}

export function setLook(next: Look): void {
  look = next;
  window.localStorage.setItem(KEY, `${next.theme} ${next.contrast}`);
  show();
  for (const listener of listeners) listener();
}

export function useLook(): Look {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => look,
  );
}
