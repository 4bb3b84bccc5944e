/** Text that is already HTML; anything else is escaped when it is put in. */
export type Html = { readonly html: string };

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

export const escapeHtml = (text: string): string => text.replace(/[&<>"']/g, (sign) => escapes[sign] ?? sign);

type Piece = string | number | Html | readonly Html[];

const pieceOf = (piece: Piece): string => {
  if (typeof piece === 'string') return escapeHtml(piece);
  if (typeof piece === 'number') return String(piece);
  if ('html' in piece) return piece.html;
  return piece.map((each) => each.html).join('');
};

/** Builds HTML from a template; every text put in is escaped. */
export function html(parts: TemplateStringsArray, ...pieces: readonly Piece[]): Html {
  return { html: parts.reduce((all, part, at) => all + part + (at < pieces.length ? pieceOf(pieces[at] ?? '') : ''), '') };
}
