import { type RefCallback, useCallback, useRef, useState } from 'react';

export type Size = { readonly width: number; readonly height: number };

/** The size of an element in pixels, kept up to date: `const [ref, size] = useSize()`. */
export function useSize(): readonly [RefCallback<HTMLElement>, Size] {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const observer = useRef<ResizeObserver>(undefined);
  const ref = useCallback((element: HTMLElement | null) => {
    observer.current?.disconnect();
    if (element === null) return;
    observer.current = new ResizeObserver(([entry]) => {
      if (entry === undefined) return;
      const { width, height } = entry.contentRect;
      setSize((before) => (before.width === width && before.height === height ? before : { width, height }));
    });
    observer.current.observe(element);
  }, []);
  return [ref, size];
}
