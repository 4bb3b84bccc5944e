import type { Outline, Point } from '../../../planner/beds/outline.ts';
import type { BedRow, Lie } from './bed-types.ts';
import { type Camera, localRing, type Size, scaleOf } from './site-view.ts';

export type SiteInk = Readonly<
  Record<
    | 'paper'
    | 'line'
    | 'strong'
    | 'ink'
    | 'soft'
    | 'accent'
    | 'accentSoft'
    | 'stop'
    | 'soil'
    | 'mix'
    | 'wood'
    | 'water'
    | 'gridLine'
    | 'gridStrong',
    string
  >
>;

/** The colours of the drawing, read from the page so that it follows the theme. */
export function readInk(element: Element): SiteInk {
  const probe = document.createElement('span');
  element.append(probe);
  const read = (name: string): string => {
    probe.style.color = `var(--${name})`;
    return getComputedStyle(probe).color;
  };
  const ink = {
    paper: read('paper-raised'),
    line: read('line'),
    strong: read('line-strong'),
    ink: read('ink'),
    soft: read('ink-soft'),
    accent: read('accent'),
    accentSoft: read('accent-soft'),
    stop: read('stop'),
    soil: read('soil'),
    mix: read('mix'),
    wood: read('wood'),
    water: read('water'),
    gridLine: read('grid-line'),
    gridStrong: read('grid-line-strong'),
  };
  probe.remove();
  return ink;
}

const paths = new WeakMap<Outline, Path2D>();

function pathOf(outline: Outline): Path2D {
  const known = paths.get(outline);
  if (known !== undefined) return known;
  const path = new Path2D();
  localRing(outline).forEach(([x, y], at) => {
    if (at === 0) path.moveTo(x, y);
    else path.lineTo(x, y);
  });
  path.closePath();
  paths.set(outline, path);
  return path;
}

type Sheet = {
  readonly ctx: CanvasRenderingContext2D;
  readonly camera: Camera;
  readonly size: Size;
  readonly ink: SiteInk;
  readonly ratio: number;
};

export function clear({ ctx, size, ratio }: Sheet): void {
  ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
  ctx.clearRect(0, 0, size.width, size.height);
}

/** Squared paper to scale: the finest of 0.1, 0.5, 1, 5, 10, 50 m squares that stay apart, every fifth or tenth line stronger. */
export function paintPaper(sheet: Sheet): void {
  const { ctx, camera, size, ink } = sheet;
  const step_m = [0.1, 0.5, 1, 5, 10, 50, 100].find((step) => step * camera.perMetre >= 11) ?? 500;
  const scale = scaleOf(camera, size);
  const from = scale.back({ x: 0, y: size.height });
  const to = scale.back({ x: size.width, y: 0 });
  for (const strong of [false, true]) {
    ctx.beginPath();
    for (let line = Math.ceil(from.x_m / step_m); line * step_m <= to.x_m; line += 1) {
      if ((line % 5 === 0) !== strong) continue;
      const x = Math.round(scale.x(line * step_m)) + 0.5;
      ctx.moveTo(x, 0);
      ctx.lineTo(x, size.height);
    }
    for (let line = Math.ceil(from.y_m / step_m); line * step_m <= to.y_m; line += 1) {
      if ((line % 5 === 0) !== strong) continue;
      const y = Math.round(scale.y(line * step_m)) + 0.5;
      ctx.moveTo(0, y);
      ctx.lineTo(size.width, y);
    }
    ctx.lineWidth = 1;
    ctx.strokeStyle = strong ? ink.gridStrong : ink.gridLine;
    ctx.stroke();
  }
}

export function paintOutline(sheet: Sheet, outline_m: readonly Point[]): void {
  const { ctx, camera, size, ink } = sheet;
  const scale = scaleOf(camera, size);
  ctx.beginPath();
  outline_m.forEach(([x, y], at) => {
    if (at === 0) ctx.moveTo(scale.x(x), scale.y(y));
    else ctx.lineTo(scale.x(x), scale.y(y));
  });
  ctx.closePath();
  ctx.setLineDash([9, 3, 2, 3]);
  ctx.lineWidth = 1.2;
  ctx.strokeStyle = ink.soft;
  ctx.stroke();
  ctx.setLineDash([]);
}

const tint = (ink: SiteInk, bed: BedRow): string => {
  if (bed.watering === 'reservoir' || bed.watering === 'basin') return ink.water;
  if (bed.kind === 'mound') return ink.wood;
  return bed.kind === 'in-ground' ? ink.soil : ink.mix;
};

/** Room for a code inside its bed, in pixels. */
const LABEL_PX = 30;

/** Paints beds as they lie; those outside the drawing are left out. */
export function paintBeds(
  sheet: Sheet,
  beds: readonly BedRow[],
  lieOf: (bed: BedRow) => Lie,
  isChosen: (bed: BedRow) => boolean,
): void {
  const { ctx, camera, size, ink, ratio } = sheet;
  const scale = scaleOf(camera, size);
  const k = camera.perMetre * ratio;
  const labels: { readonly text: string; readonly x: number; readonly y: number; readonly chosen: boolean }[] = [];
  for (const bed of beds) {
    const lie = lieOf(bed);
    const [x, y] = [scale.x(lie.x_m), scale.y(lie.y_m)];
    const reach = (Math.hypot(bed.length_m, bed.width_m) / 2) * camera.perMetre;
    if (x + reach < 0 || x - reach > size.width || y + reach < 0 || y - reach > size.height) continue;
    const angle = (lie.turn_deg * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle) * k, Math.sin(angle) * k];
    ctx.setTransform(cos, -sin, -sin, -cos, x * ratio, y * ratio);
    const path = pathOf(bed.outline);
    const chosen = isChosen(bed);
    ctx.fillStyle = ink.paper;
    ctx.fill(path);
    ctx.globalAlpha = chosen ? 0.45 : 0.22;
    ctx.fillStyle = chosen ? ink.accent : tint(ink, bed);
    ctx.fill(path);
    ctx.globalAlpha = 1;
    ctx.lineWidth = (chosen ? 2 : 1) / camera.perMetre;
    ctx.strokeStyle = bed.isOverLimit || bed.fault !== null ? ink.stop : chosen ? ink.accent : ink.ink;
    ctx.stroke(path);
    if (Math.min(bed.length_m, 2 * bed.width_m) * camera.perMetre >= LABEL_PX) labels.push({ text: bed.code, x, y, chosen });
  }
  ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.font = `${Math.max(9, Math.min(13, camera.perMetre * 0.35))}px system-ui, sans-serif`;
  ctx.fillStyle = ink.ink;
  for (const label of labels) ctx.fillText(label.text, label.x, label.y);
}

/** The order of beds along the tubing as a line through their middles. */
export function paintOrder(sheet: Sheet, beds: readonly BedRow[], lieOf: (bed: BedRow) => Lie): void {
  const { ctx, camera, size, ink } = sheet;
  const scale = scaleOf(camera, size);
  ctx.beginPath();
  beds.forEach((bed, at) => {
    const lie = lieOf(bed);
    if (at === 0) ctx.moveTo(scale.x(lie.x_m), scale.y(lie.y_m));
    else ctx.lineTo(scale.x(lie.x_m), scale.y(lie.y_m));
  });
  ctx.lineWidth = 2;
  ctx.strokeStyle = ink.water;
  ctx.stroke();
  for (const [at, bed] of beds.entries()) {
    const lie = lieOf(bed);
    ctx.beginPath();
    ctx.arc(scale.x(lie.x_m), scale.y(lie.y_m), 8, 0, 2 * Math.PI);
    ctx.fillStyle = ink.water;
    ctx.fill();
    ctx.fillStyle = ink.paper;
    ctx.textAlign = 'center';
    ctx.textBaseline = 'middle';
    ctx.font = '10px system-ui, sans-serif';
    ctx.fillText(String(at + 1), scale.x(lie.x_m), scale.y(lie.y_m));
  }
}

/** Beds drawn smaller than this carry no code; their block's name stands above them instead. */
const BLOCK_PX = 13;

/** Names of blocks above their beds while the beds are too small for their codes; only their code where there is no room. */
export function paintBlocks(sheet: Sheet, beds: readonly BedRow[], names: ReadonlyMap<string, string>): void {
  const { ctx, camera, size, ink } = sheet;
  const scale = scaleOf(camera, size);
  ctx.font = '12px system-ui, sans-serif';
  ctx.textAlign = 'left';
  ctx.textBaseline = 'bottom';
  ctx.fillStyle = ink.soft;
  for (const [blockId, rows] of Map.groupBy(beds, (bed) => bed.blockId)) {
    const first = rows[0];
    if (first === undefined || first.width_m * camera.perMetre > BLOCK_PX) continue;
    const west = rows.reduce((least, bed) => Math.min(least, bed.x_m - bed.length_m / 2), Number.POSITIVE_INFINITY);
    const east = rows.reduce((most, bed) => Math.max(most, bed.x_m + bed.length_m / 2), Number.NEGATIVE_INFINITY);
    const north = rows.reduce((most, bed) => Math.max(most, bed.y_m + bed.width_m / 2), Number.NEGATIVE_INFINITY);
    const name = names.get(blockId) ?? first.block;
    const fits = ctx.measureText(name).width <= scale.length(east - west);
    ctx.fillText(fits ? name : first.block, scale.x(west), scale.y(north) - 3);
  }
}
