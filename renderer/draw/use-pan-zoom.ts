import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useRef, useState } from 'react';
import type { Extent_m, Scale } from './scale.ts';

const STEP = 0.15;
const NEAREST_M = 0.3;

/** An extent moved by metres. */
export const moved = (extent: Extent_m, x_m: number, y_m: number): Extent_m => ({
  minX_m: extent.minX_m + x_m,
  maxX_m: extent.maxX_m + x_m,
  minY_m: extent.minY_m + y_m,
  maxY_m: extent.maxY_m + y_m,
});

/** An extent made larger or smaller about a point that stays where it is. */
export function zoomed(extent: Extent_m, factor: number, about: { readonly x_m: number; readonly y_m: number }): Extent_m {
  const wide = (extent.maxX_m - extent.minX_m) * factor;
  if (factor < 1 && wide < NEAREST_M) return extent;
  const along = (from: number, to: number): number => to + (from - to) * factor;
  return {
    minX_m: along(extent.minX_m, about.x_m),
    maxX_m: along(extent.maxX_m, about.x_m),
    minY_m: along(extent.minY_m, about.y_m),
    maxY_m: along(extent.maxY_m, about.y_m),
  };
}

/**
 * Moving about in a drawing: drag with the mouse or a finger, the wheel or + and − for nearer and farther, arrow keys,
 * 0 for all of it. Give `bind` to the SVG and the extent to `scaleTo`.
 */
export function usePanZoom(whole: Extent_m, scaleOf: (extent: Extent_m) => Scale) {
  const [view, setView] = useState<Extent_m>();
  const extent = view ?? whole;
  const svg = useRef<SVGSVGElement>(null);
  const drag = useRef<{ readonly x: number; readonly y: number; readonly extent: Extent_m }>(undefined);
  const now = useRef({ extent, scaleOf });
  now.current = { extent, scaleOf };

  const pointOf = useCallback((event: { readonly clientX: number; readonly clientY: number }) => {
    const box = svg.current?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  }, []);

  useEffect(() => {
    const element = svg.current;
    if (element === null) return undefined;
    const onWheel = (event: WheelEvent): void => {
      if (!event.ctrlKey && !element.contains(document.activeElement)) return;
      event.preventDefault();
      const about = now.current.scaleOf(now.current.extent).back(pointOf(event));
      setView(zoomed(now.current.extent, event.deltaY > 0 ? 1 + STEP : 1 / (1 + STEP), about));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [pointOf]);

  const centre = () => ({ x_m: (extent.minX_m + extent.maxX_m) / 2, y_m: (extent.minY_m + extent.maxY_m) / 2 });
  const nearer = () => setView(zoomed(extent, 1 / (1 + STEP), centre()));
  const farther = () => setView(zoomed(extent, 1 + STEP, centre()));
  const reset = () => setView(undefined);

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.target !== event.currentTarget) return;
    const step_m = (extent.maxX_m - extent.minX_m) * STEP;
    const ways = new Map<string, () => void>([
      ['+', nearer],
      ['=', nearer],
      ['-', farther],
      ['0', reset],
      ['ArrowLeft', () => setView(moved(extent, -step_m, 0))],
      ['ArrowRight', () => setView(moved(extent, step_m, 0))],
      ['ArrowUp', () => setView(moved(extent, 0, step_m))],
      ['ArrowDown', () => setView(moved(extent, 0, -step_m))],
    ]);
    const way = ways.get(event.key);
    if (way === undefined) return;
    event.preventDefault();
    way();
  };

  const bind = {
    ref: svg,
    tabIndex: 0,
    onKeyDown,
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0 || event.target !== event.currentTarget) return;
      drag.current = { ...pointOf(event), extent };
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent) => {
      const from = drag.current;
      if (from === undefined) return;
      const scale = scaleOf(from.extent);
      const to = pointOf(event);
      setView(moved(from.extent, (from.x - to.x) / scale.perMetre, (to.y - from.y) / scale.perMetre));
    },
    onPointerUp: () => {
      drag.current = undefined;
    },
  };
  return { extent, bind, nearer, farther, reset };
}
