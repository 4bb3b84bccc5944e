import { inflateSync } from 'node:zlib';

export const pageCount = (pdf: Uint8Array): number =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;

/**
 * The words of a PDF, a line for each piece of text set, read back through each font's own table of characters (ToUnicode,
 * ISO 32000-1, 9.10.3). Enough for documents of the program's own engine: deflated streams, one table of ranges a font.
 */
export function pdfText(pdf: Uint8Array): string {
  const source = Buffer.from(pdf).toString('latin1');
  const objects = new Map<string, string>();
  for (const [, id = '', body = ''] of source.matchAll(/(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(id, body);
  const streamOf = (id: string): string => {
    const raw = /stream\n([\s\S]*)\nendstream/.exec(objects.get(id) ?? '')?.[1];
    return raw === undefined ? '' : inflateSync(Buffer.from(raw, 'latin1')).toString('latin1');
  };
  const fonts = new Map<string, Map<number, string>>();
  for (const body of objects.values())
    for (const [, name = '', id = ''] of body.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const table = /\/ToUnicode (\d+) 0 R/.exec(objects.get(id) ?? '')?.[1];
      if (table !== undefined) fonts.set(name, charactersOf(streamOf(table)));
    }
  const words: string[] = [];
  for (const body of objects.values()) {
    const contents = /\/Type \/Page\b(?!s)[\s\S]*?\/Contents (\d+) 0 R/.exec(body) ?? /\/Contents (\d+) 0 R/.exec(body);
    if (contents === null) continue;
    let font = new Map<number, string>();
    for (const [, name, line = ''] of streamOf(contents[1] ?? '').matchAll(/\/(F\d+) [\d.]+ Tf|\[(.*?)\] TJ/g)) {
      if (name !== undefined) font = fonts.get(name) ?? new Map();
      else
        words.push(
          [...line.matchAll(/<([0-9a-f]*)>/g)]
            .flatMap(([, codes = '']) => codes.match(/.{4}/g) ?? [])
            .map((code) => font.get(Number.parseInt(code, 16)) ?? '?')
            .join(''),
        );
    }
  }
  return words.join('\n');
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
