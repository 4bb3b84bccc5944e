import { useEffect, useState } from 'react';
import { readInk, type SiteInk } from './site-paint.ts';

/** The drawing's colours, read again when the theme changes. */
export function useSiteInk(element: HTMLElement | null): SiteInk | undefined {
  const [ink, setInk] = useState<SiteInk>();
  useEffect(() => {
    if (element === null) return undefined;
    const read = (): void => setInk(readInk(element));
    read();
    const watch = new MutationObserver(read);
    watch.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    const dark = window.matchMedia('(prefers-color-scheme: dark)');
    dark.addEventListener('change', read);
    return () => {
      watch.disconnect();
      dark.removeEventListener('change', read);
    };
  }, [element]);
  return ink;
}
