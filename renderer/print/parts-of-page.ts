import type { PrintedPart } from '../../api/print/printed-document.ts';
import { say } from '../words/say.ts';
import type { Paper } from './paper.ts';
import { makerOf } from './printables.ts';

const LEFT_OUT =
  '.no-print, .tabs, .heard-only, .board-lifted, button:not(.figure), nav, dialog, script, style, .sheet-foot, .print-head, .form-foot, .field-hint';
const STRUCTURED = [
  ...['h1', 'h2', 'h3', 'h4', 'p', 'table', 'dl', 'ul', 'ol', 'section', 'article', 'details', 'figure', 'fieldset', 'form'],
  ...['.field', '.grid', '.drawing'],
].join(', ');
const BLANK = /\s+/g;

/** What a page or a side sheet shows, in its order: headings, words, fields, tables whole, drawings made anew for paper, cautions. */
export async function partsOfPage(root: Element, paper: Paper): Promise<readonly PrintedPart[]> {
  const parts: PrintedPart[] = [];
  for (const node of root.childNodes) {
    if (node instanceof Element) parts.push(...(await partsOf(node, paper)));
    else if (node instanceof Text) parts.push(...textPart(node.data));
  }
  return parts;
}

async function partsOf(element: Element, paper: Paper): Promise<readonly PrintedPart[]> {
  if (element.matches(LEFT_OUT)) return [];
  const style = getComputedStyle(element);
  if (style.display === 'none' || style.visibility === 'hidden') return [];
  const make = makerOf(element);
  if (make !== undefined) return (await make(paper)).map(underHeading);
  const level = /^H([1-4])$/.exec(element.tagName)?.[1];
  if (level !== undefined) return wordsOf(element) === '' ? [] : [heading(Math.min(3, Number(level)), wordsOf(element))];
  if (element instanceof HTMLTableElement) return [tableOf(element)];
  if (element.matches('.caution')) return [cautionOf(element)];
  if (element instanceof HTMLDListElement) return namedValues(pairsOf(element));
  if (element instanceof HTMLFormElement || element.querySelector(':scope > .field') !== null || element.matches('.field'))
    return fieldsOf(element, paper);
  if (element.matches('ul, ol') && element.querySelector(STRUCTURED) === null)
    return [...element.children].flatMap((item) => (item.matches(LEFT_OUT) ? [] : textPart(wordsOf(item), '– ')));
  if (element.querySelector(STRUCTURED) !== null) return partsOfPage(element, paper);
  return textPart(wordsOf(element));
}

const heading = (level: number, text: string): PrintedPart => ({ kind: 'heading', level, text });

/** On a page of many parts the title of a drawing is no title of the page. */
const underHeading = (part: PrintedPart): PrintedPart =>
  part.kind === 'heading' ? { ...part, level: Math.max(2, part.level) } : part;

function textPart(words: string, before = ''): readonly PrintedPart[] {
  const text = words.replace(BLANK, ' ').trim();
  return text === '' ? [] : [{ kind: 'text', text: `${before}${text}` }];
}

/** The words that a reader sees, without those of buttons and of what is only heard. */
function wordsOf(element: Element): string {
  const copy = element.cloneNode(true) as Element;
  for (const each of copy.querySelectorAll(`${LEFT_OUT}, select, input, textarea, title`)) each.remove();
  for (const each of copy.querySelectorAll('li, p, div, dt, dd, tr, td, th, span, br')) each.append(' ');
  return (copy.textContent ?? '').replace(BLANK, ' ').trim();
}

function tableOf(table: HTMLTableElement): PrintedPart {
  const cells = (row: HTMLTableRowElement): string[] => [...row.cells].map(wordsOf);
  const [first, ...others] = [...table.rows];
  const head = table.tHead?.rows[0] ?? first;
  const body = table.tHead === null ? others : [...table.rows].filter((row) => row.parentElement !== table.tHead);
  const isNumber = (at: number): boolean => body.length > 0 && body.every((row) => /^[-–−\d(]|^$/.test(cells(row)[at] ?? ''));
  return {
    kind: 'table',
    head: (head === undefined ? [''] : cells(head)).map((title, at) => ({
      title,
      side: at > 0 && isNumber(at) ? 'right' : 'left',
    })),
    rows: body.map(cells),
    totals: null,
  };
}

type Pair = readonly [name: string, value: string];

/** Names and values beside each other, without a head. */
function namedValues(pairs: readonly Pair[]): readonly PrintedPart[] {
  if (pairs.length === 0) return [];
  const side = 'left' as const;
  const head = [
    { title: '', side },
    { title: '', side },
  ];
  return [{ kind: 'table', head, rows: pairs.map((pair) => [...pair]), totals: null, shares: [0.4, 0.6] }];
}

function pairsOf(list: HTMLDListElement): readonly Pair[] {
  const pairs: [string, string][] = [];
  for (const each of list.querySelectorAll('dt, dd')) {
    if (each.tagName === 'DT') pairs.push([wordsOf(each), '']);
    else {
      const last = pairs.at(-1);
      if (last !== undefined) last[1] = [last[1], wordsOf(each)].filter((text) => text !== '').join(', ');
    }
  }
  return pairs;
}

/** A form as it is filled in: each field's name and what stands in it; its own headings between them. */
async function fieldsOf(form: Element, paper: Paper): Promise<readonly PrintedPart[]> {
  const parts: PrintedPart[] = [];
  let pairs: Pair[] = [];
  const close = (): void => {
    parts.push(...namedValues(pairs));
    pairs = [];
  };
  const walk = async (element: Element): Promise<void> => {
    if (element.matches(LEFT_OUT)) return;
    if (element.matches('.field')) {
      const control = element.querySelector<HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement>(
        'input, select, textarea',
      );
      const label = element.querySelector('label');
      if (control !== null && label !== null) {
        const unit = element.querySelector('.field-sign')?.textContent ?? '';
        pairs.push([wordsOf(label), [writtenIn(control), unit].filter((text) => text !== '').join(' ')]);
      }
    } else if (element.matches('legend')) {
      close();
      parts.push(heading(3, wordsOf(element)));
    } else if (element.querySelector('.field') !== null || element.matches('fieldset')) {
      for (const child of element.children) await walk(child);
    } else {
      close();
      parts.push(...(await partsOf(element, paper)));
    }
  };
  for (const child of form.matches('.field') ? [form] : [...form.children]) await walk(child);
  close();
  return parts;
}

function writtenIn(control: HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement): string {
  if (control instanceof HTMLSelectElement) return [...control.selectedOptions].map((option) => option.text).join(', ');
  if (control instanceof HTMLInputElement && control.type === 'checkbox') return control.checked ? say('yes') : say('no');
  return control.value === '' ? '–' : control.value;
}

function cautionOf(caution: Element): PrintedPart {
  const severity = caution.getAttribute('data-severity');
  return {
    kind: 'caution',
    severity: severity === 'stop' || severity === 'guard' ? severity : 'note',
    title: [...caution.querySelectorAll('summary > span')].map((each) => each.textContent ?? '').join(': '),
    texts: [...caution.querySelectorAll('.caution-body p')].map((each) => (each.textContent ?? '').replace(BLANK, ' ').trim()),
  };
}
