import type { PrintedPart } from '../../api/print/printed-document.ts';
import { shapesIn } from './shapes-in.ts';

type Size_px = { readonly width: number; readonly height: number };

/** A sheet of the page at its true size: labels. */
export const sheetOf = (element: Element, { width, height }: Size_px): PrintedPart => ({
  kind: 'sheet',
  width_px: width,
  height_px: height,
  ...plain(shapesIn(element)),
});

/** A drawing that stands on the stage, at its true size. */
export const drawingOf = (element: Element, { width, height }: Size_px, across: boolean): PrintedPart => ({
  kind: 'drawing',
  width_px: width,
  height_px: height,
  across,
  ...plain(shapesIn(element)),
});

const plain = ({ shapes, hatches }: ReturnType<typeof shapesIn>) => ({ shapes: [...shapes], hatches: [...hatches] });
