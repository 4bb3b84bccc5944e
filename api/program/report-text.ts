import type { FaultReport } from './fault-reports.ts';

/** A report as plain text, for whoever looks after the program: the whole of what it holds. */
export function reportText({ at, what, version, system, kind, frames }: FaultReport): string {
  return [
    `Bedwright ${version} on ${system}`,
    `${at.replace('T', ' ')}: ${what}, ${kind}`,
    ...frames.map((each) => `  ${each}`),
  ].join('\n');
}
