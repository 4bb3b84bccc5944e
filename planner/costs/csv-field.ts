import { refuse } from '../errors.ts';

/** A field as it stands in a CSV line: quoted where it holds a comma, a quote or a line break. Source: RFC 4180 section 2, rules 5 to 7. */
export function csvField(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * The fields of one CSV record. Spaces belong to the field. Source: RFC 4180 section 2, rule 4.
 * @throws InputError when a quoted field is not closed or goes on after its closing quote
 */
export function csvFields(line: string): readonly string[] {
  const fields: string[] = [];
  let at = 0;
  for (;;) {
    const found = line[at] === '"' ? quoted(line, at) : plain(line, at);
    fields.push(found.text);
    if (found.next >= line.length) return fields;
    if (line[found.next] !== ',')
      return refuse('line', 'bad-quotes', `Column ${found.next + 1}: something stands after a closing quote.`);
    at = found.next + 1;
  }
}

type Found = { readonly text: string; readonly next: number };

function plain(line: string, from: number): Found {
  const comma = line.indexOf(',', from);
  const next = comma === -1 ? line.length : comma;
  return { text: line.slice(from, next), next };
}

function quoted(line: string, from: number): Found {
  let text = '';
  let at = from + 1;
  for (;;) {
    const quote = line.indexOf('"', at);
    if (quote === -1) return refuse('line', 'bad-quotes', `Column ${from + 1}: a quoted field is not closed.`);
    text += line.slice(at, quote);
    if (line[quote + 1] !== '"') return { text, next: quote + 1 };
    text += '"';
    at = quote + 2;
  }
}
