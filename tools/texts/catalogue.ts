import { globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { child, children, type Node, nameOf, treeOf, walk } from './syntax-tree.ts';
import { isGridName, isSay, isShown, leftOut, textOf } from './unsaid.ts';

/** Sources of the program whose texts no page shows: statements to the database, invented data, tables of data, the styles and the command of the report. */
const unseen =
  /^(?:api\/(?:sample|report\/(?:html|report-css|csv|command)|serve)|db\/(?:schema|repositories|file\/undo)|planner\/(?:milp|water\/(?:crop|stage)-rows|units\/(?:entry-units|symbol)|season\/optimise))/;
const statement = /^(?:SELECT|INSERT|UPDATE|DELETE|CREATE|DROP|PRAGMA|ALTER|BEGIN|VACUUM|EXPLAIN)\b/;

type Cautions = {
  readonly emergency: string;
  readonly cautions: readonly { readonly title: string; readonly text: string; readonly defer: string }[];
};

const sourcesBelow = (root: string, room: string): readonly string[] =>
  globSync(`${room}/**/*.{ts,tsx}`, { cwd: root }).map((file) => file.replaceAll('\\', '/'));

/**
 * Every sentence that a page can show, with itself as its message: those in `say(…)` on the pages, the texts that the
 * program makes (`{1}`, `{2}` … where it puts values in), those of the desktop window, the table of commands, and the cautions.
 */
export function catalogueOf(root: string): Readonly<Record<string, string>> {
  const sentences = new Set<string>();
  for (const file of sourcesBelow(root, 'renderer')) {
    if (!leftOut(file)) for (const said of sentencesSaidIn(file, readFileSync(join(root, file), 'utf8'))) sentences.add(said);
  }
  for (const file of sourcesBelow(root, 'electron'))
    for (const said of sentencesSaidIn(file, readFileSync(join(root, file), 'utf8'))) sentences.add(said);
  for (const file of ['planner', 'api', 'db'].flatMap((room) => sourcesBelow(root, room))) {
    if (!unseen.test(file)) for (const made of sentencesMadeIn(file, readFileSync(join(root, file), 'utf8'))) sentences.add(made);
  }
  const { emergency, cautions } = JSON.parse(readFileSync(join(root, 'resources/cautions.json'), 'utf8')) as Cautions;
  const commands = JSON.parse(readFileSync(join(root, 'resources/commands.json'), 'utf8')) as readonly {
    readonly does: string;
  }[];
  for (const { does } of commands) sentences.add(does);
  for (const text of [emergency, ...cautions.flatMap(({ title, text, defer }) => [title, text, defer])]) sentences.add(text);
  return Object.fromEntries([...sentences].toSorted().map((sentence) => [sentence, sentence]));
}

/** The sentences a page's source says. */
export function sentencesSaidIn(file: string, source: string): readonly string[] {
  return callsOfSay(file, source).map(({ sentence }) => sentence);
}

export type SayCall = { readonly sentence: string; readonly values: readonly string[] | undefined };

/** Each `say(…)` of a source with the names of its values; undefined where they are not written out. */
export function callsOfSay(file: string, source: string): readonly SayCall[] {
  const found: SayCall[] = [];
  walk(treeOf(file, source), (node, place) => {
    if (isSay(node)) {
      const [sentence, values] = children(node, 'arguments');
      const text = sentence?.type === 'Literal' ? textOf(sentence) : undefined;
      if (text !== undefined) found.push({ sentence: text, values: namesIn(values) });
    } else if (node.type === 'Literal' && isGridName(node, place.parents)) {
      found.push({ sentence: textOf(node) ?? '', values: [] });
    }
    return undefined;
  });
  return found;
}

function namesIn(values: Node | undefined): readonly string[] | undefined {
  if (values === undefined) return [];
  if (values.type !== 'ObjectExpression') return undefined;
  const properties = children(values, 'properties');
  return properties.some((each) => each.type !== 'Property') ? undefined : properties.map((each) => nameOf(child(each, 'key')));
}

/** The texts that a source of the program makes for the reader, values as `{1}`, `{2}` …. */
export function sentencesMadeIn(file: string, source: string): readonly string[] {
  const found: string[] = [];
  walk(treeOf(file, source), (node, place) => {
    if (!isShown(node, place)) return undefined;
    const text = messageIn(node);
    if (!statement.test(text) && !/[{}<]/.test(text.replaceAll(/\{\d+\}/g, ''))) found.push(text);
    return undefined;
  });
  return found;
}

function messageIn(node: Node): string {
  if (node.type === 'Literal') return String(node['value']);
  return children(node, 'quasis')
    .map((part, at) => `${at === 0 ? '' : `{${at}}`}${(part['value'] as { cooked: string }).cooked}`)
    .join('');
}
