// biome-ignore-all lint/suspicious/noTemplateCurlyInString: samples of source text
import { globSync, readFileSync } from 'node:fs';
import { IntlMessageFormat } from 'intl-messageformat';
import { describe, expect, test } from 'vitest';
import { callsOfSay, catalogueOf, sentencesMadeIn } from '../../../tools/texts/catalogue.ts';
import { leftOut, unsaidIn } from '../../../tools/texts/unsaid.ts';

const root = new URL('../../..', import.meta.url).pathname;
const pages = globSync('renderer/**/*.{ts,tsx}', { cwd: root }).filter((file) => !leftOut(file));
const sourceOf = (file: string): string => readFileSync(`${root}/${file}`, 'utf8');
const textsOf = (file: string) => JSON.parse(sourceOf(file)) as Readonly<Record<string, string>>;
const english = textsOf('resources/texts/en.json');

type Ast = ReturnType<IntlMessageFormat['getAst']>;

/** The names of a message's values and tags. */
function namesIn(ast: Ast): readonly string[] {
  return ast.flatMap((element) => {
    const below =
      'options' in element
        ? Object.values(element.options).flatMap((option) => namesIn(option.value))
        : 'children' in element
          ? namesIn(element.children)
          : [];
    // literals and the `#` of a plural have no name
    return element.type === 0 || element.type === 7 ? below : [element.value, ...below];
  });
}
const namesOf = (message: string): readonly string[] =>
  [...new Set(namesIn(new IntlMessageFormat(message, 'en', undefined, { ignoreTag: !/<\/\w+>/.test(message) }).getAst()))].sort();

describe('the catalogue of sentences', () => {
  test('is what the sources say now', () => {
    expect(english, 'run npm run texts').toEqual(catalogueOf(root));
  });

  test('holds messages that can all be read', () => {
    const unreadable = Object.keys(english).filter((sentence) => {
      try {
        namesOf(sentence);
        return false;
      } catch {
        return true;
      }
    });
    expect(unreadable).toEqual([]);
  });

  test('every sentence is given the values that it names, no more and no less', () => {
    const odd = pages.flatMap((file) =>
      callsOfSay(file, sourceOf(file))
        .filter(({ values }) => values !== undefined)
        .filter(({ sentence, values }) => JSON.stringify(namesOf(sentence)) !== JSON.stringify([...new Set(values)].sort()))
        .map(({ sentence }) => `${file}: ${sentence}`),
    );
    expect(odd).toEqual([]);
  });

  test('a translation has only sentences of the catalogue, each with values that the English names', () => {
    for (const file of globSync('resources/texts/*.json', { cwd: root })) {
      for (const [sentence, message] of Object.entries(textsOf(file))) {
        expect(english, `${file}: ${sentence}`).toHaveProperty([sentence]);
        const known = namesOf(sentence);
        expect(
          namesOf(message).filter((name) => !known.includes(name)),
          `${file}: ${message}`,
        ).toEqual([]);
      }
    }
  });
});

describe('sentences on the pages', () => {
  test('go through the catalogue, every one', () => {
    expect(pages.length).toBeGreaterThan(300);
    const found = pages.flatMap((file) => unsaidIn(file, sourceOf(file)).map(({ text }) => `${file}: ${text.trim()}`));
    expect(found, 'wrap them in say(…); see renderer/README.md').toEqual([]);
  });

  test.each([
    ['text between tags', 'export const A = () => <p>Two beds</p>;', ['Two beds']],
    ['a prop that is read out', 'export const A = () => <i aria-label="Bed" />;', ['Bed']],
    ['a choice of two', "export const A = (p: B) => <p>{p.on ? 'on' : 'off'}</p>;", ['on', 'off']],
    ['a sentence with a value', 'announce(`Moved ${n} beds.`);', ['Moved … beds.']],
    ['a list of choices', "export const a = [{ value: 'x', text: 'Full sun' }];", ['Full sun']],
    ['a column’s head', "export const a = [text('code', 'Bed')];", ['Bed']],
  ])('are found as %s', (_, source, texts) => {
    expect(unsaidIn('renderer/a.tsx', source).map(({ text }) => text)).toEqual(texts);
  });

  test.each([
    ['said', "export const A = () => <p>{say('Two beds')}</p>;"],
    ['for the program', 'export const A = () => <p className="two beds" id={`bed-${n}`} style={{ width: `${n}px` }} />;'],
    ['keys', "if (event.key === 'Enter') go('beds', { tab: 'site' });"],
    ['types', "export type A = 'Two beds' | 'One bed';"],
  ])('are not seen where the text is %s', (_, source) => {
    expect(unsaidIn('renderer/a.tsx', source)).toEqual([]);
  });
});

test('texts of the program are collected with places for their values', () => {
  expect(sentencesMadeIn('api/a.ts', 'const a = { note: `Move ${ids.length} beds`, code: "no-farm" };')).toEqual([
    'Move {1} beds',
  ]);
});
