import type { Shape } from '../../api/print/printed-document.ts';
import { figure } from './figure.ts';
import { HatchesOf } from './hatches-of.ts';
import { plainColour } from './plain-colour.ts';
import { svgShapes } from './svg-shapes.ts';

type Origin = { readonly left: number; readonly top: number };
type Drawn = { readonly shapes: readonly Shape[]; readonly hatches: HatchesOf['list'] };

/**
 * What an element of the page shows, as shapes with their colours and places worked out: boxes, words and drawings. Its own
 * rim is left out, which only sets it off from the window.
 */
export function shapesIn(element: Element): Drawn {
  const box = element.getBoundingClientRect();
  const origin = { left: box.left + element.clientLeft, top: box.top + element.clientTop };
  const hatches: HatchesOf = new HatchesOf(element, (pattern) => svgShapes(pattern, hatches));
  const shapes = [...element.children].flatMap((child) => shapesUnder(child, origin, hatches));
  return { shapes, hatches: hatches.list };
}

function shapesUnder(element: Element, origin: Origin, hatches: HatchesOf): readonly Shape[] {
  const style = getComputedStyle(element);
  if (style.display === 'none' || style.visibility === 'hidden' || element.matches('.heard-only, .no-print')) return [];
  if (element instanceof SVGSVGElement) return drawing(element, style, origin, hatches);
  const shapes: Shape[] = [...boxShapes(element, style, origin)];
  for (const node of element.childNodes) {
    if (node instanceof Element) shapes.push(...shapesUnder(node, origin, hatches));
    else if (node instanceof Text) shapes.push(...wordShapes(node, style, element, origin));
  }
  return shapes;
}

/** A drawing where it stands in the page: its own units by the matrix that the window uses, cut off where the window cuts it. */
function drawing(svg: SVGSVGElement, style: CSSStyleDeclaration, origin: Origin, hatches: HatchesOf): readonly Shape[] {
  const m = svg.getScreenCTM();
  const shapes = m === null ? [] : svgShapes(svg, hatches);
  if (m === null || shapes.length === 0) return [];
  const transform = `matrix(${[m.a, m.b, m.c, m.d, m.e - origin.left, m.f - origin.top].map(figure).join(' ')})`;
  const drawn: Shape = { tag: 'g', attributes: { transform }, shapes };
  if (style.overflowX === 'visible') return [drawn];
  const box = svg.getBoundingClientRect();
  const window = { x: box.left - origin.left, y: box.top - origin.top, width: box.width, height: box.height };
  return [{ tag: 'g', attributes: {}, window, shapes: [drawn] }];
}

/** The ground and edges of a box of the page. */
function boxShapes(element: Element, style: CSSStyleDeclaration, origin: Origin): readonly Shape[] {
  const box = element.getBoundingClientRect();
  if (box.width === 0 || box.height === 0) return [];
  const [x, y] = [box.left - origin.left, box.top - origin.top];
  const shapes: Shape[] = [];
  const ground = plainColour(style.backgroundColor);
  if (ground.share > 0)
    shapes.push({
      tag: 'rect',
      attributes: {
        x: figure(x),
        y: figure(y),
        width: figure(box.width),
        height: figure(box.height),
        fill: ground.hex,
        'fill-opacity': figure(ground.share),
      },
    });
  const edges = [
    ['border-top', x, y, x + box.width, y],
    ['border-bottom', x, y + box.height, x + box.width, y + box.height],
    ['border-left', x, y, x, y + box.height],
    ['border-right', x + box.width, y, x + box.width, y + box.height],
    ['outline', x, y, x + box.width, y],
    ['outline', x, y + box.height, x + box.width, y + box.height],
    ['outline', x, y, x, y + box.height],
    ['outline', x + box.width, y, x + box.width, y + box.height],
  ] as const;
  for (const [edge, x1, y1, x2, y2] of edges) {
    const width = Number.parseFloat(style.getPropertyValue(`${edge}-width`));
    const kind = style.getPropertyValue(`${edge}-style`);
    if (!(width > 0) || kind === 'none' || kind === 'auto') continue;
    const ink = plainColour(style.getPropertyValue(`${edge}-color`));
    if (ink.share === 0) continue;
    shapes.push({
      tag: 'line',
      attributes: {
        x1: figure(x1),
        y1: figure(y1),
        x2: figure(x2),
        y2: figure(y2),
        stroke: ink.hex,
        'stroke-opacity': figure(ink.share),
        'stroke-width': figure(width),
        ...(kind === 'dashed' ? { 'stroke-dasharray': '3 3' } : {}),
      },
    });
  }
  return shapes;
}

/** The words of a text, line by line where it wraps, cut where their box ends. */
function wordShapes(node: Text, style: CSSStyleDeclaration, element: Element, origin: Origin): readonly Shape[] {
  if (node.data.trim() === '') return [];
  const size = Number.parseFloat(style.fontSize);
  const ink = plainColour(style.color);
  const right = style.overflowX === 'hidden' ? element.getBoundingClientRect().right : Number.POSITIVE_INFINITY;
  return linesOf(node).flatMap(({ text, box }): readonly Shape[] => {
    const room = Math.min(1, (right - box.left) / Math.max(1, box.width));
    const shown = room >= 0.999 ? text : `${text.slice(0, Math.max(0, Math.floor(text.length * room) - 1))}…`;
    if (shown.trim() === '') return [];
    return [
      {
        tag: 'text',
        attributes: {
          x: figure(box.left - origin.left),
          y: figure(box.top - origin.top + box.height / 2 + size * 0.35),
          'font-size': figure(size * 0.96),
          'font-weight': Number(style.fontWeight) >= 600 ? 'bold' : 'normal',
          fill: ink.hex,
        },
        text: shown.trim(),
      },
    ];
  });
}

function linesOf(node: Text): readonly { readonly text: string; readonly box: DOMRect }[] {
  const range = document.createRange();
  range.selectNodeContents(node);
  const boxes = range.getClientRects();
  const [first] = boxes;
  if (first === undefined) return [];
  if (boxes.length === 1) return [{ text: node.data.replace(/\s+/g, ' '), box: first }];
  const lines: { text: string; box: DOMRect }[] = [];
  for (let at = 0; at < node.length; at += 1) {
    range.setStart(node, at);
    range.setEnd(node, at + 1);
    const box = range.getBoundingClientRect();
    const line = lines.at(-1);
    if (line !== undefined && Math.abs(line.box.top - box.top) < box.height / 2)
      lines[lines.length - 1] = {
        text: line.text + node.data[at],
        box: new DOMRect(line.box.left, line.box.top, box.right - line.box.left, line.box.height),
      };
    else lines.push({ text: node.data[at] ?? '', box });
  }
  return lines;
}
