import type { Hatch, Shape } from './printed-document.ts';

const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/**
 * Writes a sheet as SVG. Names come from the document's own lists; values and text are escaped. The only references in it are
 * those written here, to its own hatches and windows.
 */
export function svgOf(sheet: {
  readonly width_px: number;
  readonly height_px: number;
  readonly shapes: readonly Shape[];
  readonly hatches?: readonly Hatch[] | undefined;
}): string {
  const { width_px, height_px, shapes, hatches = [] } = sheet;
  const definitions = hatches.map(hatchText);
  const body = shapes.map((shape) => shapeText(shape, definitions));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width_px}" height="${height_px}" viewBox="0 0 ${width_px} ${height_px}"><defs>${definitions.join('')}</defs>${body.join('')}</svg>`;
}

function hatchText({ width, height, transform, shapes }: Hatch, at: number): string {
  const turned = transform === undefined ? '' : ` patternTransform="${escapeXml(transform)}"`;
  const inside = shapes.map((shape) => shapeText(shape, [])).join('');
  return `<pattern id="h${at}" width="${width}" height="${height}" patternUnits="userSpaceOnUse"${turned}>${inside}</pattern>`;
}

function shapeText({ tag, attributes, text, shapes = [], hatch, window }: Shape, definitions: string[]): string {
  const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escapeXml(value)}"`);
  if (hatch !== undefined) written.push(` fill="url(#h${hatch})"`);
  if (window !== undefined) {
    const id = `w${definitions.length}`;
    const { x, y, width, height } = window;
    definitions.push(`<clipPath id="${id}"><rect x="${x}" y="${y}" width="${width}" height="${height}"/></clipPath>`);
    written.push(` clip-path="url(#${id})"`);
  }
  const inside = shapes.map((shape) => shapeText(shape, definitions)).join('');
  return `<${tag}${written.join('')}>${escapeXml(text ?? '')}${inside}</${tag}>`;
}
