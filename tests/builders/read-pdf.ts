import { inflateSync } from 'node:zlib';

export const pageCount = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;

/** A piece of text as it is set on a page: from its left end, in points from the upper left corner. */
export type SetText = {
  readonly text: string;
  readonly x_pt: number;
  readonly y_pt: number;
  readonly size_pt: number;
  /** Where it ends along its own line; a turned text ends at another height. */
  readonly end: { readonly x_pt: number; readonly y_pt: number };
};

export type ReadPage = { readonly width_pt: number; readonly height_pt: number; readonly texts: readonly SetText[] };

/** The words of a PDF, a line for each piece of text set. */
export const pdfText = (pdf: Uint8Array): string =>
  pdfPages(pdf)
    .flatMap(({ texts }) => texts.map(({ text }) => text))
    .join('\n');

type Matrix = readonly [number, number, number, number, number, number];
type Font = { readonly characters: ReadonlyMap<number, string>; readonly widths: readonly number[] };

/**
 * The pages of a PDF with their words and places, read back through each font's own table of characters (ToUnicode, ISO 32000-1,
 * 9.10.3) and widths (9.7.4.3), and the matrices of graphics and text (8.3.4, 9.4.2). Enough for documents of the program's own
 * engine: deflated streams, one table of ranges a font, forms within pages.
 */
export function pdfPages(pdf: Uint8Array): readonly ReadPage[] {
  const file = new ObjectsOf(Buffer.from(pdf).toString('latin1'));
  const fonts = file.fonts();
  const order = [...(/\/Kids \[(.*?)\]/s.exec(file.source)?.[1] ?? '').matchAll(/(\d+) 0 R/g)];
  return order.map(([, id = '']) => {
    const page = file.body(id);
    const [width_pt = 0, height_pt = 0] = (/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page) ?? []).slice(1).map(Number);
    const texts: SetText[] = [];
    const onPage = (x: number, y: number) => ({ x_pt: x, y_pt: height_pt - y });
    const run = (stream: string, resources: string, base: Matrix): void =>
      readContent(stream, base, fonts, {
        form: (name, at) => {
          const formId = new RegExp(`/${name} (\\d+) 0 R`).exec(file.resolved(resources))?.[1];
          if (formId === undefined) return;
          const form = file.body(formId);
          const own = /\/Matrix \[([^\]]*)\]/.exec(form)?.[1]?.trim().split(/\s+/).map(Number) as unknown as Matrix | undefined;
          run(file.stream(formId), form, own === undefined ? at : times(own, at));
        },
        text: (text, start, end, size_pt) => texts.push({ text, ...onPage(...start), end: onPage(...end), size_pt }),
      });
    run(file.stream(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? ''), page, [1, 0, 0, 1, 0, 0]);
    return { width_pt, height_pt, texts };
  });
}

class ObjectsOf {
  readonly #objects = new Map<string, string>();
  readonly source: string;

  constructor(source: string) {
    this.source = source;
    for (const [, id = '', body = ''] of source.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) this.#objects.set(id, body);
  }

  body(id: string): string {
    return this.#objects.get(id) ?? '';
  }

  stream(id: string): string {
    const raw = /stream\n([\s\S]*)\nendstream/.exec(this.body(id))?.[1];
    return raw === undefined ? '' : inflateSync(Buffer.from(raw, 'latin1')).toString('latin1');
  }

  /** A dictionary with the resources that it refers to written out. */
  resolved(dictionary: string): string {
    const head = dictionary.split('stream\n')[0] ?? '';
    const resources = /\/Resources (\d+) 0 R/.exec(head)?.[1];
    return resources === undefined ? head : this.body(resources);
  }

  fonts(): ReadonlyMap<string, Font> {
    const fonts = new Map<string, Font>();
    for (const body of this.#objects.values())
      for (const [, name = '', id = ''] of body.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
        const table = /\/ToUnicode (\d+) 0 R/.exec(this.body(id))?.[1];
        const descendant = /\/DescendantFonts \[(\d+) 0 R\]/.exec(this.body(id))?.[1] ?? '';
        const widths = /\/W \[\s*0 \[([^\]]*)\]/.exec(this.body(descendant))?.[1]?.trim().split(/\s+/).map(Number) ?? [];
        if (table !== undefined) fonts.set(name, { characters: charactersOf(this.stream(table)), widths });
      }
    return fonts;
  }
}

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];

const moved = (m: Matrix, x: number): readonly [number, number] => [x * m[0] + m[4], x * m[1] + m[5]];

function readContent(
  content: string,
  base: Matrix,
  fonts: ReadonlyMap<string, Font>,
  found: {
    readonly form: (name: string, at: Matrix) => void;
    readonly text: (text: string, start: readonly [number, number], end: readonly [number, number], size_pt: number) => void;
  },
): void {
  let at = base;
  let set: Matrix = [1, 0, 0, 1, 0, 0];
  let font: Font = { characters: new Map(), widths: [] };
  let size = 0;
  const kept: Matrix[] = [];
  let words: string[] = [];
  const numbers = (): Matrix => words.slice(-6).map(Number) as unknown as Matrix;
  for (const [token] of content.matchAll(/\[[^\]]*\]|\/[^\s/[\]<>()]+|[^\s/[\]<>()]+/g)) {
    switch (token) {
      case 'q':
        kept.push(at);
        break;
      case 'Q':
        at = kept.pop() ?? base;
        break;
      case 'cm':
        at = times(numbers(), at);
        break;
      case 'Tm':
        set = numbers();
        break;
      case 'Tf':
        font = fonts.get(words.at(-2)?.slice(1) ?? '') ?? font;
        size = Number(words.at(-1));
        break;
      case 'Do':
        found.form(words.at(-1)?.slice(1) ?? '', at);
        break;
      case 'TJ': {
        const place = times(set, at);
        const { text, width } = readPieces(words.at(-1) ?? '', font, size);
        found.text(text, moved(place, 0), moved(place, width), size * Math.hypot(place[0], place[1]));
        break;
      }
      default:
        words.push(token);
        continue;
    }
    words = [];
  }
}

/** The characters of a TJ array, and how far they reach: their widths less what the array moves them back, by the thousand. */
function readPieces(array: string, font: Font, size: number): { readonly text: string; readonly width: number } {
  let text = '';
  let width = 0;
  for (const [, codes, back] of array.matchAll(/<([0-9a-f]*)>|(-?[\d.]+)/g)) {
    if (back !== undefined) width -= (Number(back) / 1000) * size;
    for (const code of codes?.match(/.{4}/g) ?? []) {
      const glyph = Number.parseInt(code, 16);
      text += font.characters.get(glyph) ?? '?';
      width += ((font.widths[glyph] ?? 0) / 1000) * size;
    }
  }
  return { text, width };
}

function charactersOf(table: string): Map<number, string> {
  const found = new Map<number, string>();
  for (const [, first = '', list = ''] of table.matchAll(/<([0-9a-f]{4})> <[0-9a-f]{4}> \[(.*?)\]/g))
    [...list.matchAll(/<([0-9a-f ]*)>/g)].forEach(([, codes = ''], at) => {
      const units = codes.match(/[0-9a-f]{4}/g) ?? [];
      found.set(Number.parseInt(first, 16) + at, String.fromCharCode(...units.map((unit) => Number.parseInt(unit, 16))));
    });
  return found;
}
