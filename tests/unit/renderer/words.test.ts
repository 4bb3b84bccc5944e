import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { formsOf } from '../../../planner/words/finished-text.ts';
import { pseudoOf } from '../../../planner/words/pseudo.ts';

/** The catalogue anew, as when the page is read: a language is chosen once, before the pages. */
async function speaking(sentences: Readonly<Record<string, string>>, code = 'de') {
  vi.resetModules();
  const { speak } = await import('../../../renderer/words/language.ts');
  speak({ code, sentences });
  const { say, sayWith } = await import('../../../renderer/words/say.ts');
  const { sayKnown } = await import('../../../renderer/words/known.ts');
  return { say, sayWith, sayKnown };
}

afterEach(() => vi.resetModules());

const moved = '{beds, plural, one {# bed} other {# beds}} moved.';

describe('saying a sentence', () => {
  test('without translation it is said in English, counted as English counts', async () => {
    const { say } = await speaking({}, 'en');
    expect(say('Beds')).toBe('Beds');
    expect(say(moved, { beds: 1 })).toBe('1 bed moved.');
    expect(say(moved, { beds: 12 })).toBe('12 beds moved.');
    expect(say('{a}, {b}.', { a: 0, b: null })).toBe('0, .');
  });

  test('a translation counts as its own language does', async () => {
    const { say } = await speaking(
      { [moved]: 'Przesunięto {beds, plural, one {# grządkę} few {# grządki} many {# grządek} other {# grządki}}.' },
      'pl',
    );
    // plural categories of Polish by CLDR: 1 one; 2-4 few; 5-21 many
    expect([1, 2, 5, 22].map((beds) => say(moved, { beds }))).toEqual([
      'Przesunięto 1 grządkę.',
      'Przesunięto 2 grządki.',
      'Przesunięto 5 grządek.',
      'Przesunięto 22 grządki.',
    ]);
  });

  test('values may stand in another order, and what looks like a tag is only text', async () => {
    const { say } = await speaking({ '{a} of <b>{b}</b>': '<b>{b}</b>: {a}' });
    expect(say('{a} of <b>{b}</b>', { a: 1, b: 2 })).toBe('<b>2</b>: 1');
  });
});

describe('texts that the program made', () => {
  test('are found as they stand or by their form', async () => {
    const { sayKnown } = await speaking({
      'Move {1} beds': '{1} Beete verschieben',
      'Sow {1} in {2}': '{2}: {1} säen',
      'Your entry': 'Ihre Angabe',
      'early bed': 'frühes Beet',
    });
    expect(sayKnown('Your entry')).toBe('Ihre Angabe');
    expect(sayKnown('Move 12 beds')).toBe('12 Beete verschieben');
    expect(sayKnown('Sow Carrot in early bed')).toBe('frühes Beet: Carrot säen');
    expect(sayKnown('Something else 12')).toBe('Something else 12');
  });

  test('of two forms that fit the closer one is taken', () => {
    expect(formsOf(['{1} beds', 'Move {1} beds', 'Beds', '{1}: {2}']).map(({ sentence }) => sentence)).toEqual([
      'Move {1} beds',
      '{1} beds',
    ]);
  });
});

describe('the test language', () => {
  test('keeps values, plurals and tags, and is longer', () => {
    expect(pseudoOf(moved)).toBe('{beds, plural, one {# bèd~~} other {# bèdš~~}} mòvèd.~~');
    expect(pseudoOf('Open <b>it</b>')).toBe('Òpèñ~~ <b>ìt~</b>');
  });

  test('every sentence of the catalogue stays a message in it', async () => {
    const english = JSON.parse(readFileSync(new URL('../../../resources/texts/en.json', import.meta.url), 'utf8')) as object;
    const { IntlMessageFormat } = await import('intl-messageformat');
    for (const sentence of Object.keys(english)) {
      expect(() => new IntlMessageFormat(pseudoOf(sentence), 'en', undefined, { ignoreTag: true }), sentence).not.toThrow();
    }
  });
});
