import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const severities = ['stop', 'guard', 'note'] as const;
const text = z.object({
  id: z.string(),
  title: z.string(),
  severity: z.enum(severities),
  text: z.string(),
  defer: z.string(),
  source: z.string(),
});
const file = z.object({ emergency: z.string(), cautions: z.array(text) });

export type PrintedCaution = {
  readonly title: string;
  /** What to mind, and who decides. */
  readonly text: readonly string[];
  readonly source: string;
};

/** The texts of cautions for a page of print, each once, the gravest first. */
export function cautionTexts(resources: string, ids: readonly string[]): readonly PrintedCaution[] {
  const { emergency, cautions } = file.parse(JSON.parse(readFileSync(join(resources, 'cautions.json'), 'utf8')));
  return cautions
    .filter((each) => ids.includes(each.id))
    .toSorted((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity))
    .map((each) => ({
      title: each.title,
      text: [each.text, each.defer, ...(each.severity === 'stop' ? [emergency] : [])],
      source: each.source,
    }));
}
