import type { Shape } from './printed-document.ts';

const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Writes a sheet as SVG. Names come from the document's own lists; values and text are escaped. */
export function svgOf(sheet: {
  readonly width_px: number;
  readonly height_px: number;
  readonly shapes: readonly Shape[];
}): string {
  const { width_px, height_px, shapes } = sheet;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width_px}" height="${height_px}" viewBox="0 0 ${width_px} ${height_px}">${shapes.map(shapeText).join('')}</svg>`;
}

function shapeText({ tag, attributes, text, shapes = [] }: Shape): string {
  const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escapeXml(value)}"`);
  return `<${tag}${written.join('')}>${escapeXml(text ?? '')}${shapes.map(shapeText).join('')}</${tag}>`;
}
