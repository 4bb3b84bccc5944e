import type { Point } from '../../../planner/beds/outline.ts';
import { type SiteInkName, type SiteShape, siteInks } from './site-shapes.ts';
import type { Size } from './site-view.ts';

export type SiteInk = Readonly<Record<SiteInkName, string>>;

/** The colours of the drawing, read from the page so that it follows the theme. */
export function readInk(element: Element): SiteInk {
  const probe = document.createElement('span');
  element.append(probe);
  const read = (name: SiteInkName): string => {
    probe.style.color = `var(--${siteInks[name]})`;
    return getComputedStyle(probe).color;
  };
  const names = Object.keys(siteInks) as SiteInkName[];
  const ink = Object.fromEntries(names.map((name) => [name, read(name)])) as SiteInk;
  probe.remove();
  return ink;
}

type Sheet = {
  readonly ctx: CanvasRenderingContext2D;
  readonly size: Size;
  readonly ink: SiteInk;
  readonly ratio: number;
};

export function clear({ ctx, size, ratio }: Sheet): void {
  ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
  ctx.clearRect(0, 0, size.width, size.height);
}

/** Paints shapes of the site drawing in their order. */
export function paint(sheet: Sheet, shapes: readonly SiteShape[]): void {
  const { ctx, ratio } = sheet;
  ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
  for (const shape of shapes) {
    if (shape.kind === 'bed') {
      paintBed(sheet, shape);
      ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
    } else paintPlain(sheet, shape);
  }
}

function paintPlain({ ctx, ink }: Sheet, shape: Exclude<SiteShape, { readonly kind: 'bed' }>): void {
  switch (shape.kind) {
    case 'squares':
      ctx.beginPath();
      for (const x of shape.xs) {
        ctx.moveTo(x, 0);
        ctx.lineTo(x, shape.size.height);
      }
      for (const y of shape.ys) {
        ctx.moveTo(0, y);
        ctx.lineTo(shape.size.width, y);
      }
      ctx.lineWidth = 1;
      ctx.strokeStyle = ink[shape.ink];
      ctx.stroke();
      return;
    case 'line':
      ctx.beginPath();
      for (const [x, y] of shape.points) ctx.lineTo(x, y);
      if (shape.closed) ctx.closePath();
      ctx.setLineDash([...(shape.line.dash ?? [])]);
      ctx.lineWidth = shape.line.width_px;
      ctx.strokeStyle = ink[shape.line.ink];
      ctx.stroke();
      ctx.setLineDash([]);
      return;
    case 'dot':
      ctx.beginPath();
      ctx.arc(shape.x, shape.y, shape.radius, 0, 2 * Math.PI);
      ctx.fillStyle = ink[shape.ink];
      ctx.fill();
      return;
    case 'text': {
      ctx.font = `${shape.size_px}px system-ui, sans-serif`;
      ctx.textAlign = shape.at === 'middle' ? 'center' : 'left';
      ctx.textBaseline = shape.at === 'middle' ? 'middle' : 'bottom';
      ctx.fillStyle = ink[shape.ink];
      const { short } = shape;
      const text = short === undefined || ctx.measureText(shape.text).width <= short.room_px ? shape.text : short.text;
      ctx.fillText(text, shape.x, shape.y);
    }
  }
}

function paintBed({ ctx, ink, ratio }: Sheet, bed: Extract<SiteShape, { readonly kind: 'bed' }>): void {
  const angle = (bed.turn_deg * Math.PI) / 180;
  const k = bed.perMetre * ratio;
  const [cos, sin] = [Math.cos(angle) * k, Math.sin(angle) * k];
  ctx.setTransform(cos, -sin, -sin, -cos, bed.x * ratio, bed.y * ratio);
  const path = pathOf(bed.ring);
  for (const wash of bed.washes) {
    ctx.globalAlpha = wash.share;
    ctx.fillStyle = ink[wash.ink];
    ctx.fill(path);
  }
  ctx.globalAlpha = 1;
  ctx.lineWidth = bed.line.width_px / bed.perMetre;
  ctx.strokeStyle = ink[bed.line.ink];
  ctx.stroke(path);
}

const paths = new WeakMap<readonly Point[], Path2D>();

function pathOf(ring: readonly Point[]): Path2D {
  const known = paths.get(ring);
  if (known !== undefined) return known;
  const path = new Path2D();
  for (const [x, y] of ring) path.lineTo(x, y);
  path.closePath();
  paths.set(ring, path);
  return path;
}
