import { join } from 'node:path';
import type { Content, Node, NodeQueries } from 'pdfmake/interfaces.js';

export type PdfPage = {
  readonly title: string;
  readonly made: string;
  readonly content: readonly Content[];
  /** Another size than A4 with its usual margins. */
  readonly page?: {
    readonly width_pt: number;
    readonly height_pt: number;
    readonly margins_pt: readonly [number, number, number, number];
    /** Whether the first page lies on its side; content may turn those after it. */
    readonly across?: boolean;
  };
  /** What stands at the head of every page. */
  readonly head?: { readonly left: string; readonly right: string };
  /** Nothing but the content: sheets of labels. */
  readonly bare?: boolean;
  /** No heading stands alone at the foot of a page. Each heading is held against all that follows, so not for long tables. */
  readonly keepsHeadings?: boolean;
};

const A4_MARGINS_PT = [40, 40, 40, 50] as const;

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

/** Makes a document with the title and page numbers at the foot of each page; `fonts` is the folder of its fonts. */
export async function pdfOf(
  { title, made, content, page, head, bare = false, keepsHeadings = false }: PdfPage,
  fonts: string,
): Promise<Uint8Array<ArrayBuffer>> {
  const [left, , right] = page?.margins_pt ?? A4_MARGINS_PT;
  const small = { color: '#555555', fontSize: 8 };
  const document = (await engine(fonts)).createPdf({
    pageSize: page === undefined ? 'A4' : { width: page.width_pt, height: page.height_pt },
    ...(page?.across === true ? { pageOrientation: 'landscape' as const } : {}),
    ...(keepsHeadings
      ? {
          pageBreakBefore: (node: Node, nodes: NodeQueries) =>
            node.headlineLevel !== undefined && nodes.getFollowingNodesOnPage().length === 0,
        }
      : {}),
    pageMargins: [...(page?.margins_pt ?? A4_MARGINS_PT)],
    info: { title, creationDate: new Date(`${made}Z`) },
    defaultStyle: { fontSize: 9, lineHeight: 1.15 },
    styles: { head: { fontSize: 15, bold: true, margin: [0, 0, 0, 2] }, soft: { color: '#555555', margin: [0, 0, 0, 10] } },
    ...(head === undefined
      ? {}
      : {
          header: {
            margin: [left, 24, right, 0],
            columns: [
              { text: head.left, bold: true, fontSize: 9 },
              { text: head.right, alignment: 'right', ...small },
            ],
          },
        }),
    ...(bare
      ? {}
      : {
          footer: (now: number, all: number) => ({
            columns: [
              { text: `${title}, ${made.slice(0, 10)}`, margin: [left, 15, 0, 0], ...small },
              { text: `${now} / ${all}`, alignment: 'right', margin: [0, 15, right, 0], ...small },
            ],
          }),
        }),
    content: [...content],
  });
  return new Uint8Array(await document.getBuffer());
}
