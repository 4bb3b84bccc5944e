import { child, children, type Node, nameOf, type Place, treeOf, walk } from './syntax-tree.ts';

/** Words in a page's source that the reader would see, but that do not go through the catalogue. */
export type Unsaid = { readonly node: Node; readonly place: Place; readonly text: string };

/** Props and keys whose text is shown or read out, whatever it looks like. */
const shownNames: ReadonlySet<string> = new Set([
  'title',
  'label',
  'aria-label',
  'hint',
  'note',
  'placeholder',
  'lead',
  'alt',
  'summary',
  'caption',
  'aria-roledescription',
  'aria-valuetext',
  'textValue',
  'doing',
  'message',
]);

/** Props and keys that are for the program. */
const hiddenNames: ReadonlySet<string> = new Set([
  'className',
  'class',
  'id',
  'key',
  'href',
  'type',
  'role',
  'd',
  'style',
  'fill',
  'stroke',
  'viewBox',
  'transform',
  'path',
  'icon',
  'unit',
  'per',
  'accept',
  'fontFamily',
  'inputMode',
  'autoComplete',
  'stackId',
  'dataKey',
  'strokeDasharray',
  'points',
  'gridTemplateColumns',
  'gridTemplateRows',
  'background',
  'backgroundImage',
  'backgroundSize',
  'boxShadow',
  'border',
  'font',
  'cautions',
  'tone',
  'headers',
  'locale',
  'Accept',
  'placement',
  'margin',
]);

/** What is called with words for the program only. */
const hiddenCalls: ReadonlySet<string> = new Set([
  'Error',
  'TypeError',
  'RangeError',
  'querySelector',
  'querySelectorAll',
  'closest',
  'getItem',
  'setItem',
  'Set',
  'RegExp',
  'useQueryValue',
  'go',
  'startsWith',
  'endsWith',
  'includes',
  'replace',
  'replaceAll',
  'split',
  'matchMedia',
  'fetch',
  'addEventListener',
  'removeEventListener',
  'DateTimeFormat',
  'NumberFormat',
  'Collator',
  'getContext',
  'indexOf',
  // the names of what is kept of a farm's rows
  'derived',
  'test',
  'match',
  'matches',
  'getElementById',
  'createElement',
  'setAttribute',
  'has',
  'get',
  'set',
  'attributes',
  'print',
  'number',
  'sign',
  'scale',
  'hatch',
  'PluralRules',
  'getData',
  'setData',
  'omit',
  'addSymbol',
  'URL',
  'URLSearchParams',
  'glob',
]);

const word = /\p{L}{2,}/u;
const sentence = /^[^\p{L}]*\p{Lu}\p{Ll}*(?![\p{L}\d_])[^_=<>]*$|\p{L}[\p{L}’'-]*[,;:.]? \p{L}{2,}|^[^\p{L}/#.]*\p{Lu}\p{Ll}+$/u;
const machine =
  /^(?:[a-z]+:\/\/|\/|#|\.|--|\(|@|var\(|url\(|calc\(|\[|M ?-?\d|translate|rotate|repeat|color-mix|<|[\w-]+\/[\w.+-]+$)/;

/** Names of keys and signs of elements. */
const signs = /^(?:Ca|Mg|Enter|Escape|Delete|Home|End|PageUp|PageDown|Tab|Backspace)$/;
/** A word that stands free beside a value: `… days`, `of …`; not `…px` or `values.…`. */
const free = /(?:^|[\s(“"…:])\p{L}{2,}(?=[\s,.;:)]|$)/u;

/** Whether a text reads as words of a language, not as something for the program. Values stand in it as `…`. */
export function isSentence(text: string): boolean {
  const plain = text.trim();
  if (!word.test(plain) || machine.test(plain) || signs.test(plain) || /px\b|var\(/.test(plain)) return false;
  if (text.includes('…') && plain.length < 300 && / /.test(text) && free.test(text.replaceAll(/…\p{L}+/gu, '…'))) return true;
  return sentence.test(plain) || /^[\d½¼⅓¾]+ \p{L}{2,}/u.test(plain);
}

/** The text of a string or template, its values as `…`. */
export function textOf(node: Node): string | undefined {
  if (node.type === 'Literal') return typeof node['value'] === 'string' ? node['value'] : undefined;
  if (node.type === 'TemplateLiteral')
    return children(node, 'quasis')
      .map((part) => (part['value'] as { cooked: string }).cooked)
      .join('…');
  return node.type === 'JSXText' ? String(node['value']) : undefined;
}

const passing: ReadonlySet<string> = new Set([
  'ConditionalExpression',
  'LogicalExpression',
  'ParenthesizedExpression',
  'TSAsExpression',
  'TSSatisfiesExpression',
  'TSNonNullExpression',
  'ArrayExpression',
  'SpreadElement',
]);
const silent = /^(?:TS(?!As|Satis|NonNull)|Import|Export(?:All|Named)|SwitchCase$|TaggedTemplate)/;

/** Whether a text at this place is shown to the reader, as far as can be told from the source alone. */
export function isShown(node: Node, place: Place): boolean {
  const text = textOf(node);
  if (text === undefined || !word.test(text.replaceAll('…', ' '))) return false;
  if (node.type === 'JSXText') return true;
  let below = node;
  for (const [at, parent] of place.parents.entries()) {
    if (silent.test(parent.type)) return false;
    switch (parent.type) {
      case 'ConditionalExpression':
      case 'LogicalExpression':
        if (child(parent, 'test') === below) return false;
        break;
      case 'JSXExpressionContainer': {
        const above = place.parents[at + 1];
        if (above?.type !== 'JSXAttribute') return true;
        break;
      }
      case 'JSXAttribute':
        return !isGridName(below, place.parents.slice(at)) && byName(nameOf(child(parent, 'name')), text);
      case 'Property':
        return child(parent, 'key') !== below && byName(nameOf(child(parent, 'key')), text);
      case 'CallExpression':
      case 'NewExpression':
        if (child(parent, 'callee') === below) return false;
        return !hiddenCalls.has(nameOf(child(parent, 'callee'))) && isSentence(text);
      case 'BinaryExpression':
        return parent['operator'] === '+' && isSentence(text);
      case 'MemberExpression':
        return below.type === 'ArrayExpression' && isSentence(text);
      case 'TemplateLiteral':
        return isSentence(text);
      default:
        if (!passing.has(parent.type)) return isSentence(text);
    }
    below = parent;
  }
  return isSentence(text);
}

/** A grid says its own name, which is also the key under which its columns are remembered. */
export function isGridName(value: Node, [attribute, element]: readonly Node[]): boolean {
  return (
    value.type === 'Literal' &&
    attribute?.type === 'JSXAttribute' &&
    nameOf(child(attribute, 'name')) === 'name' &&
    element !== undefined &&
    nameOf(child(element, 'name')) === 'Grid'
  );
}

function byName(name: string, text: string): boolean {
  if (hiddenNames.has(name) || name.startsWith('data-')) return false;
  if (name === 'text') return !/[_/]|^ppm$/.test(text);
  return shownNames.has(name) || isSentence(text);
}

/** Whether a call is one of the catalogue's own. */
export const isSay = (node: Node): boolean =>
  node.type === 'CallExpression' && /^(?:say|sayWith|sayKnown)$/.test(nameOf(child(node, 'callee')));

/** Every text of a page's source that is shown without the catalogue. */
export function unsaidIn(file: string, source: string): readonly Unsaid[] {
  const found: Unsaid[] = [];
  walk(treeOf(file, source), (node, place) => {
    const parent = place.parents[0];
    if (parent !== undefined && isSay(parent) && children(parent, 'arguments')[0] === node) return false;
    if (isShown(node, place)) found.push({ node, place, text: textOf(node) ?? '' });
    return undefined;
  });
  return found;
}

/** Sources without sentences for the reader: the parts page of the development build, invented farm data, and the catalogue itself. */
export const leftOut = (file: string): boolean =>
  /^renderer\/(?:parts\/|words\/|labels\/qr-|labels\/galois|table\/(?:workbook|zip|csv)\.ts|places\/farm\/starter-designs\.ts)/.test(
    file,
  );
