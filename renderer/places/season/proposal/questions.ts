import type { VariantEntry } from '../../../../api/proposal/variants.ts';
import { say } from '../../../words/say.ts';
import { aims, weights } from './goal-words.ts';

export const questionKinds = [
  { value: 'pump', text: say('one more pump: twice the water on every line') },
  { value: 'beds', text: say('ten more beds like the largest') },
  { value: 'hours', text: say('a quarter more hours each week') },
  { value: 'wage', text: say('wages a quarter higher') },
  { value: 'dearer', text: say('a price a quarter higher') },
  { value: 'cheaper', text: say('a price a quarter lower') },
  { value: 'without', text: say('a crop left out') },
] as const;
export type QuestionKind = (typeof questionKinds)[number]['value'];

export type Question = { readonly kind: QuestionKind; readonly cropId: string; readonly wage_minor_per_h: number };

const ofCrop: ReadonlySet<QuestionKind> = new Set(['dearer', 'cheaper', 'without']);

/** Two questions that would get the same answer. */
export const sameQuestion = (a: Pick<Question, 'kind' | 'cropId'>, b: Pick<Question, 'kind' | 'cropId'>): boolean =>
  a.kind === b.kind && (!ofCrop.has(a.kind) || a.cropId === b.cropId);

const QUARTER_MORE = 1.25;
const QUARTER_LESS = 0.75;

/** The question as a short title. */
export function questionText({ kind, cropId }: Question, nameOf: (cropId: string) => string): string {
  switch (kind) {
    case 'pump':
      return say('One more pump');
    case 'beds':
      return say('Ten more beds');
    case 'hours':
      return say('A quarter more hours');
    case 'wage':
      return say('Wages a quarter higher');
    case 'dearer':
      return say('{cropId} a quarter dearer', { cropId: nameOf(cropId) });
    case 'cheaper':
      return say('{cropId} a quarter cheaper', { cropId: nameOf(cropId) });
    case 'without':
      return say('Without {cropId}', { cropId: nameOf(cropId) });
  }
}

export function variantOf(question: Question, nameOf: (cropId: string) => string, bedId: string): VariantEntry {
  const { kind, cropId, wage_minor_per_h } = question;
  const changes: Readonly<Record<QuestionKind, VariantEntry['changes'][number]>> = {
    pump: { kind: 'water', factor: 2 },
    beds: { kind: 'beds', bedId, count: 10 },
    hours: { kind: 'labour', factor: QUARTER_MORE },
    wage: { kind: 'wage', wage_minor_per_h: wage_minor_per_h * QUARTER_MORE },
    dearer: { kind: 'price', cropId, factor: QUARTER_MORE },
    cheaper: { kind: 'price', cropId, factor: QUARTER_LESS },
    without: { kind: 'without', cropId },
  };
  return { name: questionText(question, nameOf), goal: { aim: 'most-margin', weight: 'clearly' }, changes: [changes[kind]] };
}

/** Every goal at its clear and its strictest weight, to see what each would trade. */
export const goalVariants: readonly VariantEntry[] = aims.flatMap(({ value: aim, text }): VariantEntry[] =>
  aim === 'most-margin'
    ? [{ name: text, goal: { aim, weight: 'clearly' as const }, changes: [] }]
    : weights
        .filter(({ value }) => value !== 'a-little')
        .map(({ value: weight, text: how }) => ({ name: `${text}, ${how}`, goal: { aim, weight }, changes: [] })),
);
