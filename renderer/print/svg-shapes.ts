import type { Shape } from '../../api/print/printed-document.ts';
import { figure } from './figure.ts';
import type { HatchesOf } from './hatches-of.ts';
import { plainColour } from './plain-colour.ts';

type Attributes = Record<string, string>;

const copied: Readonly<Record<string, readonly string[]>> = {
  rect: ['x', 'y', 'width', 'height', 'rx'],
  circle: ['cx', 'cy', 'r'],
  line: ['x1', 'y1', 'x2', 'y2'],
  path: ['d'],
};

/** The shapes of a drawing in its own units, with the colours that the window gives them. */
export function svgShapes(parent: Element, hatches: HatchesOf): readonly Shape[] {
  return [...parent.children].flatMap((child) => shapesOfElement(child, hatches));
}

function shapesOfElement(element: Element, hatches: HatchesOf): readonly Shape[] {
  const style = getComputedStyle(element);
  if (style.display === 'none' || style.visibility === 'hidden') return [];
  if (element instanceof SVGSVGElement) return innerDrawing(element, hatches);
  if (element instanceof SVGGElement) return turned(element, svgShapes(element, hatches));
  if (element instanceof SVGTextElement) return turned(element, words(element, style));
  if (element instanceof SVGPolygonElement || element instanceof SVGPolylineElement) {
    const points = [...element.points].map(({ x, y }) => `${figure(x)} ${figure(y)}`);
    if (points.length < 2) return [];
    const d = `M${points.join('L')}${element instanceof SVGPolygonElement ? 'Z' : ''}`;
    return turned(element, [{ tag: 'path', ...painted(element, style, { d }, hatches) }]);
  }
  const names = copied[element.tagName];
  if (names === undefined || !(element instanceof SVGGraphicsElement)) return [];
  const attributes: Attributes = {};
  for (const name of names) {
    const value = element.getAttribute(name);
    if (value !== null) attributes[name] = value;
  }
  return turned(element, [{ tag: element.tagName as Shape['tag'], ...painted(element, style, attributes, hatches) }]);
}

/** A drawing inside another: moved to its place, and cut off at its edge. */
function innerDrawing(svg: SVGSVGElement, hatches: HatchesOf): readonly Shape[] {
  const shapes = svgShapes(svg, hatches);
  if (shapes.length === 0) return [];
  const [x, y] = [svg.x.baseVal.value, svg.y.baseVal.value];
  const window = { x: 0, y: 0, width: svg.width.baseVal.value, height: svg.height.baseVal.value };
  return [
    {
      tag: 'g',
      attributes: { transform: `translate(${figure(x)} ${figure(y)})` },
      shapes: [{ tag: 'g', attributes: {}, window, shapes }],
    },
  ];
}

function turned(element: Element, shapes: readonly Shape[]): readonly Shape[] {
  const transform = element.getAttribute('transform');
  return transform === null || shapes.length === 0 ? shapes : [{ tag: 'g', attributes: { transform }, shapes }];
}

function painted(
  element: SVGGraphicsElement,
  style: CSSStyleDeclaration,
  attributes: Attributes,
  hatches: HatchesOf,
): Pick<Shape, 'attributes' | 'hatch'> {
  const opacity = Number(style.opacity);
  const hatch = hatches.place(style.fill);
  const ink = hatch === undefined && style.fill !== 'none' ? plainColour(style.fill) : undefined;
  if (hatch === undefined) attributes['fill'] = ink === undefined || ink.share === 0 ? 'none' : ink.hex;
  attributes['fill-opacity'] = figure((ink?.share ?? 1) * Number(style.fillOpacity) * opacity);
  const line = style.stroke === 'none' ? undefined : plainColour(style.stroke);
  const width = strokeWidth(element, style);
  if (line === undefined || line.share === 0 || width === 0) attributes['stroke'] = 'none';
  else {
    attributes['stroke'] = line.hex;
    attributes['stroke-opacity'] = figure(line.share * Number(style.strokeOpacity) * opacity);
    attributes['stroke-width'] = figure(width);
    attributes['stroke-linecap'] = style.strokeLinecap;
    attributes['stroke-linejoin'] = style.strokeLinejoin;
    const dashes = style.strokeDasharray.replaceAll('px', '');
    if (/[1-9]/.test(dashes)) attributes['stroke-dasharray'] = dashes;
  }
  return { attributes, ...(hatch === undefined ? {} : { hatch }) };
}

function strokeWidth(element: SVGGraphicsElement, style: CSSStyleDeclaration): number {
  const width = Number.parseFloat(style.strokeWidth) || 0;
  if (style.getPropertyValue('vector-effect') !== 'non-scaling-stroke') return width;
  const m = element.getScreenCTM();
  return m === null ? width : width / Math.max(1e-9, Math.hypot(m.a, m.b));
}

/** Words at the place where the window sets them, piece by piece; a rim around letters becomes a ground behind them. */
function words(text: SVGTextElement, style: CSSStyleDeclaration): readonly Shape[] {
  const pieces: Shape[] = [];
  let from = 0;
  const walk = document.createTreeWalker(text, NodeFilter.SHOW_TEXT);
  for (let node = walk.nextNode(); node !== null; node = walk.nextNode()) {
    const shown = (node.nodeValue ?? '').replace(/\s+/g, ' ');
    const length = Math.min(shown.length, text.getNumberOfChars() - from);
    if (length <= 0 || shown.trim() === '') continue;
    const [start, end] = [text.getStartPositionOfChar(from), text.getEndPositionOfChar(from + length - 1)];
    from += length;
    const own = node.parentElement === null ? style : getComputedStyle(node.parentElement);
    const ink = plainColour(own.fill);
    const anchor = own.textAnchor;
    const x = anchor === 'end' ? end.x : anchor === 'middle' ? (start.x + end.x) / 2 : start.x;
    pieces.push({
      tag: 'text',
      attributes: {
        x: figure(x),
        y: figure(start.y),
        'text-anchor': anchor,
        'font-size': figure(Number.parseFloat(own.fontSize)),
        'font-weight': Number(own.fontWeight) >= 600 ? 'bold' : 'normal',
        fill: ink.hex,
        'fill-opacity': figure(ink.share * Number(own.fillOpacity)),
      },
      text: shown,
    });
  }
  if (style.stroke === 'none' || pieces.length === 0) return pieces;
  const box = text.getBBox();
  const ground = { x: figure(box.x - 1), y: figure(box.y), width: figure(box.width + 2), height: figure(box.height) };
  const attributes = { ...ground, fill: plainColour(style.stroke).hex, 'fill-opacity': '0.8' };
  return [{ tag: 'rect', attributes }, ...pieces];
}
