import file from '../../resources/cautions.json';

export type Severity = 'stop' | 'guard' | 'note';

export type CautionText = {
  readonly id: string;
  readonly title: string;
  readonly severity: Severity;
  readonly text: string;
  readonly defer: string;
  readonly source: string;
};

const texts = new Map(file.cautions.map((each) => [each.id, each as CautionText]));

/** The line that every stop text ends with. */
export const emergency: string = file.emergency;

export const cautionIds: readonly string[] = [...texts.keys()];

/** The caution of an id. @throws Error for an id that is not in the file: a page asks for one that does not exist */
export function cautionText(id: string): CautionText {
  const found = texts.get(id);
  if (found === undefined) throw new Error(`There is no caution "${id}".`);
  return found;
}
