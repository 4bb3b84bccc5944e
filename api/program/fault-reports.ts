import { existsSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { z } from 'zod';
import { makeFolder } from '../../db/file/make-folder.ts';

const MOST = 12;
const MOST_FRAMES = 30;

/** What broke: the program itself, a promise that nobody waited for, a window's page, a process that helps it, or all of it at once. */
export const breaks = ['program', 'promise', 'page', 'helper', 'unanswering', 'ended'] as const;
export type Break = (typeof breaks)[number];

const shape = z.object({
  at: z.string(),
  what: z.enum(breaks),
  version: z.string(),
  system: z.string(),
  /** The kind of fault (`TypeError`, `SQLITE_FULL`, `crashed`); never its words, which may hold what the farm keeps. */
  kind: z.string(),
  frames: z.array(z.string()),
  seen: z.boolean(),
});
export type FaultReport = z.output<typeof shape> & { readonly name: string };

const word = (value: unknown): string => (typeof value === 'string' && /^[\w-]{1,40}$/.test(value) ? value : '');

/** What a fault is called: its class and its code, where they are plain words. */
export function kindOf(fault: unknown): string {
  if (!(fault instanceof Error)) return word(fault) || typeof fault;
  const code = 'code' in fault ? word(fault.code) : '';
  const name = word(fault.name) || 'Error';
  return code === '' ? name : `${name} ${code}`;
}

const frame =
  /^\s*at (?:(?:async |new )?(?<does>[\w$.<>#]{1,80}) (?:\[as \w+\] )?)?\(?(?<place>[^()]*?):(?<line>\d+):(?<column>\d+)\)?$/;

/** Where it happened: function, file and line of each step, without folders (they hold the reader's name) and without the fault's words. */
export function framesOf(fault: unknown): readonly string[] {
  if (!(fault instanceof Error) || fault.stack === undefined) return [];
  // the words of a fault stand before its steps and may look like one themselves
  const steps = fault.stack.startsWith(`${fault.name}: ${fault.message}`)
    ? fault.stack.slice(`${fault.name}: ${fault.message}`.length)
    : fault.message === ''
      ? fault.stack
      : '';
  return steps
    .split('\n')
    .flatMap((line) => {
      const found = frame.exec(line)?.groups;
      if (found === undefined) return [];
      const file = basename((found['place'] ?? '').replaceAll('\\', '/'));
      return /^[\w.-]+\.(?:js|ts|mjs|cjs|tsx)$|^[\w/]+$/.test(file)
        ? [`${found['does'] ?? 'at'} ${file}:${found['line']}:${found['column']}`]
        : [];
    })
    .slice(0, MOST_FRAMES);
}

/**
 * Reports of what broke, in a folder beside the program's own small files. They hold what kind of fault it was and where in the program, no words of
 * it and nothing of a farm; the newest twelve are kept; nothing sends them.
 */
export function faultReports(data: string, version: string, now: () => string, log: (line: string) => void) {
  const folder = join(data, 'fault-reports');
  const written = new Set<string>();

  const names = (): readonly string[] =>
    existsSync(folder)
      ? readdirSync(folder)
          .filter((name) => /^[\dT-]+ \w+( \d+)?\.json$/.test(name))
          .sort()
      : [];

  function read(name: string): readonly FaultReport[] {
    try {
      return [{ ...shape.parse(JSON.parse(readFileSync(join(folder, name), 'utf8'))), name }];
    } catch (error) {
      log(`${name} could not be read: ${error instanceof Error ? error.name : typeof error}`);
      return [];
    }
  }

  function write(name: string, report: z.output<typeof shape>): void {
    makeFolder(folder);
    const path = join(folder, name);
    writeFileSync(`${path}.new`, JSON.stringify(report, null, 1));
    renameSync(`${path}.new`, path);
  }

  return {
    /** Writes a report; the same fault once a run. Never throws: it is called where something is broken already. */
    add(what: Break, fault: unknown): void {
      const report = {
        at: now(),
        what,
        version,
        system: `${process.platform} ${process.arch}, Node ${process.versions.node}`,
        kind: kindOf(fault),
        frames: [...framesOf(fault)],
        seen: false,
      };
      const sign = JSON.stringify([what, report.kind, report.frames]);
      if (written.has(sign)) return;
      written.add(sign);
      try {
        const base = `${report.at.replaceAll(':', '-')} ${what}`;
        const same = names().filter((name) => name.startsWith(base)).length;
        write(`${base}${same === 0 ? '' : ` ${same + 1}`}.json`, report);
        for (const old of names().slice(0, -MOST)) rmSync(join(folder, old));
      } catch (error) {
        log(`no report could be written: ${kindOf(error)}`);
      }
    },
    /** Newest first. */
    list: (): readonly FaultReport[] => names().toReversed().flatMap(read),
    /** Takes note that the reader was told of them. */
    see(): void {
      for (const { name, ...report } of names().flatMap(read)) if (!report.seen) write(name, { ...report, seen: true });
    },
    remove(name: string): boolean {
      if (!names().includes(name)) return false;
      rmSync(join(folder, name));
      return true;
    },
  };
}

const markOf = /^running-(\d+)$/;

/** Whether a process of this number runs; one that may not be signalled does. */
function runs(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}

/**
 * Puts a file that says "running" into the program's folder and answers how to take it away. One left behind by a process that is no more
 * is reported: the power went, the system ended it, or the engine itself fell over, none of which the program could report itself.
 */
export function markRunning(data: string, reports: FaultReports, log: (line: string) => void): () => void {
  const own = join(data, `running-${process.pid}`);
  try {
    makeFolder(data);
    for (const name of readdirSync(data)) {
      const pid = Number(markOf.exec(name)?.[1]);
      // a mark under this very number is of an earlier process too
      if (Number.isNaN(pid) || (pid !== process.pid && runs(pid))) continue;
      rmSync(join(data, name), { force: true });
      reports.add('ended', 'unfinished');
    }
    writeFileSync(own, '');
  } catch (error) {
    log(`no mark of running could be written: ${String(error)}`);
  }
  return () => rmSync(own, { force: true });
}

export type FaultReports = ReturnType<typeof faultReports>;
