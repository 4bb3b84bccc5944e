// Two rules of ours for the mutation runner: which texts don't count, and which mutants a sample takes.
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';

/** Text for people: words with space between. Codes, paths, units and the names of choices have none, so those count. */
const isForPeople = (text) => /\p{L}/u.test(text) && /\s/.test(text);

export const textForPeople = {
  shouldIgnore({ node }) {
    const text =
      node.type === 'StringLiteral'
        ? node.value
        : node.type === 'TemplateLiteral'
          ? node.quasis.map((each) => each.value.cooked).join('')
          : '';
    return isForPeople(text) ? 'A sentence or label for people: its wording is not computed.' : undefined;
  },
};

/** A mutant's name, the same whatever else is mutated in the run. */
export function nameOf({ fileName, location: { start, end }, mutatorName, replacement }) {
  const file = relative(process.cwd(), fileName).replaceAll('\\', '/');
  return `${file}:${start.line}:${start.column}-${end.line}:${end.column} ${mutatorName} ${replacement}`;
}

/** Lets only the mutants of the drawn sample run; the file is written by sample.mjs. */
class OnlySampled {
  async init() {
    this.drawn = new Set(JSON.parse(readFileSync(process.env.BEDWRIGHT_MUTANT_SAMPLE, 'utf8')));
  }
  async group(mutants) {
    return [mutants.map(({ id }) => id)];
  }
  async check(mutants) {
    const verdict = (mutant) =>
      this.drawn.has(nameOf(mutant)) ? { status: 'passed' } : { status: 'compileError', reason: 'not in the sample' };
    return Object.fromEntries(mutants.map((mutant) => [mutant.id, verdict(mutant)]));
  }
}

export const strykerPlugins = [
  { kind: 'Ignore', name: 'text-for-people', value: textForPeople },
  { kind: 'Checker', name: 'only-sampled', injectableClass: OnlySampled },
];
