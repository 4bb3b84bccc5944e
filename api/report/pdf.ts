import { join } from 'node:path';
import type { Content } from 'pdfmake/interfaces.js';

export type PdfPage = { readonly title: string; readonly made: string; readonly content: readonly Content[] };

type Engine = typeof import('pdfmake') & {
  readonly setUrlAccessPolicy: (may: (url: string) => boolean) => void;
  readonly setLocalAccessPolicy: (may: (path: string) => boolean) => void;
};

let loaded: Engine | null = null;

/** The engine with its own fonts, from their folder, and no way to anything else. Loaded when the first document is made. */
async function engine(fonts: string): Promise<Engine> {
  if (loaded !== null) return loaded;
  const found = (await import('pdfmake')).default as Engine;
  found.setFonts({
    Roboto: {
      normal: join(fonts, 'Roboto-Regular.ttf'),
      bold: join(fonts, 'Roboto-Medium.ttf'),
      italics: join(fonts, 'Roboto-Italic.ttf'),
      bolditalics: join(fonts, 'Roboto-MediumItalic.ttf'),
    },
  });
  found.setUrlAccessPolicy(() => false);
  found.setLocalAccessPolicy((path) => path.startsWith(fonts));
  loaded = found;
  return found;
}

/** Makes a document of A4 pages with the title and page numbers at the foot; `fonts` is the folder of its fonts. */
export async function pdfOf(page: PdfPage, fonts: string): Promise<Uint8Array<ArrayBuffer>> {
  const document = (await engine(fonts)).createPdf({
    pageSize: 'A4',
    pageMargins: [40, 40, 40, 50],
    info: { title: page.title, creationDate: new Date(`${page.made}Z`) },
    defaultStyle: { fontSize: 9, lineHeight: 1.15 },
    styles: { head: { fontSize: 15, bold: true, margin: [0, 0, 0, 2] }, soft: { color: '#555555', margin: [0, 0, 0, 10] } },
    footer: (now: number, all: number) => ({
      columns: [
        { text: `${page.title}, ${page.made.slice(0, 10)}`, margin: [40, 15, 0, 0], color: '#555555', fontSize: 8 },
        { text: `${now} of ${all}`, alignment: 'right', margin: [0, 15, 40, 0], color: '#555555', fontSize: 8 },
      ],
    }),
    content: [...page.content],
  });
  return new Uint8Array(await document.getBuffer());
}
