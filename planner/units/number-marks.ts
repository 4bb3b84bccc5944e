/** How a reader's country writes numbers: the decimal sign, the sign between groups, and where groups begin. */
export type NumberMarks = {
  readonly decimal: '.' | ',';
  /** '' where numbers are not grouped. */
  readonly group: string;
  /** Digits of every group but the last, which has three: two in India, else three. */
  readonly groupOf: 2 | 3;
  /** Whether four digits are grouped already: `1,234`, but `1234` in Spain and Poland. */
  readonly groupsFour: boolean;
};

/** `1,234.5`: how the program writes numbers where no reader is known. */
export const pointMarks: NumberMarks = { decimal: '.', group: ',', groupOf: 3, groupsFour: true };

const known = new Map<string, NumberMarks>();

/**
 * The marks of a locale (BCP 47, `de-DE`), by the Unicode CLDR as the runtime has it; digits are always 0 to 9.
 *
 * A locale with another decimal sign than point or comma, which none that is offered has, is written with a point.
 */
export function marksOf(locale: string): NumberMarks {
  const kept = known.get(locale);
  if (kept !== undefined) return kept;
  const form = new Intl.NumberFormat(locale, { numberingSystem: 'latn' });
  const part = (value: number, type: string): string => form.formatToParts(value).find((each) => each.type === type)?.value ?? '';
  const groups = form.formatToParts(1_234_567).filter((each) => each.type === 'integer');
  const marks: NumberMarks = {
    decimal: part(1.5, 'decimal') === ',' ? ',' : '.',
    group: part(1_234_567, 'group'),
    groupOf: groups.at(-2)?.value.length === 2 ? 2 : 3,
    groupsFour: part(1234, 'group') !== '',
  };
  known.set(locale, marks);
  return marks;
}
