import { useEffect, useRef } from 'react';
import type { UnitSystem } from '../../../planner/units/system.ts';
import type { BedRow, Lie } from './bed-types.ts';
import { clear, paint, type SiteInk } from './site-paint.ts';
import { bedShapes, blockShapes, orderShapes, outlineShapes, paperShapes } from './site-shapes.ts';
import type { Camera, Size } from './site-view.ts';

type Layer = { readonly camera: Camera; readonly size: Size; readonly ink: SiteInk };

function sheetOf(canvas: HTMLCanvasElement, { size, ink }: Omit<Layer, 'camera'>) {
  const ratio = window.devicePixelRatio;
  const [width, height] = [Math.round(size.width * ratio), Math.round(size.height * ratio)];
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  const ctx = canvas.getContext('2d');
  return ctx === null ? undefined : { ctx, size, ink, ratio };
}

/** Paper, site outline and all beds that stay where they are. Painted again only when one of its values changes. */
export function StillLayer(
  props: Layer & {
    readonly beds: readonly BedRow[];
    readonly outline_m: readonly (readonly [number, number])[] | null;
    readonly lieOf: (bed: BedRow) => Lie;
    readonly chosen: ReadonlySet<string>;
    readonly order: readonly BedRow[];
    readonly blocks: ReadonlyMap<string, string>;
    readonly system: UnitSystem;
  },
) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { camera, size, ink, beds, outline_m, lieOf, chosen, order, blocks, system } = props;
  useEffect(() => {
    const sheet = canvas.current === null ? undefined : sheetOf(canvas.current, { size, ink });
    if (sheet === undefined) return;
    const view = { camera, size };
    clear(sheet);
    paint(sheet, paperShapes(view, system));
    if (outline_m !== null) paint(sheet, outlineShapes(view, outline_m));
    paint(
      sheet,
      bedShapes(view, beds, lieOf, (bed) => chosen.has(bed.bedId)),
    );
    paint(sheet, blockShapes(view, beds, blocks));
    if (order.length > 0) paint(sheet, orderShapes(view, order, lieOf));
  }, [camera, size, ink, beds, outline_m, lieOf, chosen, order, blocks, system]);
  return <canvas ref={canvas} className="site-layer" />;
}

/** The beds that are being dragged or turned, above the still ones, painted at each step. */
export function MovingLayer(props: Layer & { readonly beds: readonly BedRow[]; readonly lieOf: (bed: BedRow) => Lie }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const { camera, size, ink, beds, lieOf } = props;
  useEffect(() => {
    const sheet = canvas.current === null ? undefined : sheetOf(canvas.current, { size, ink });
    if (sheet === undefined) return;
    clear(sheet);
    paint(
      sheet,
      bedShapes({ camera, size }, beds, lieOf, () => true),
    );
  }, [camera, size, ink, beds, lieOf]);
  return <canvas ref={canvas} className="site-layer" />;
}
