import { z } from 'zod';
import { Refusal } from '../errors.ts';
import { act, ask, nothing } from '../procedure.ts';
import { licencesIn } from '../program/licences.ts';
import type { Program } from '../program/program.ts';
import { reportText } from '../program/report-text.ts';
import { type SelfTestLine, selfTest } from '../program/self-test.ts';

/** What is about the running program and its window, not about a farm. */
export const program = {
  about: ask({
    input: nothing,
    run: ({ program: { places, desktop } }) => ({
      version: places.version,
      ownWindow: desktop !== null,
      engine: enginesOf(process.versions),
      folder: places.data,
    }),
  }),
  licences: ask({ input: nothing, run: ({ program: { places } }) => licencesIn(places.resources) }),
  /** What broke, newest first, each with the text that a reader may copy. */
  reports: ask({
    input: nothing,
    run: ({ program: { reports } }) => reports.list().map((report) => ({ ...report, text: reportText(report) })),
  }),
  /** Tries what every start rests on, in a folder of its own: no farm that is open is touched. */
  selfTest: act({ input: nothing, run: ({ program }) => selfTestOnce(program) }),
  /** The reader was told that something broke. */
  seeReports: act({
    input: nothing,
    run({ program: { reports } }) {
      reports.see();
      return { seen: true };
    },
  }),
  dropReport: act({
    input: z.object({ name: z.string().max(120) }),
    run({ program: { reports } }, { name }) {
      if (!reports.remove(name)) throw new Refusal({ code: 'not-found', what: 'report' });
      return { name };
    },
  }),
  /** Gives the desktop window's frame and menus the look and language of the page; elsewhere there is no frame of ours. */
  followLook: act({
    input: z.object({
      theme: z.enum(['system', 'light', 'dark']),
      language: z
        .string()
        .max(20)
        .regex(/^[A-Za-z]{2,3}(-[A-Za-z\d]+)*$/, 'This is no language’s code.'),
    }),
    run({ program: running }, look) {
      running.desktop?.followLook(look);
      return { followed: running.desktop !== null };
    },
  }),
};

const running = new WeakMap<Program, Promise<readonly SelfTestLine[]>>();

/** Whoever asks while a test runs is given its answer. */
function selfTestOnce(program: Program): Promise<readonly SelfTestLine[]> {
  const started = running.get(program) ?? selfTest(program.places).finally(() => running.delete(program));
  running.set(program, started);
  return started;
}

const enginesOf = ({ electron, chrome, node }: NodeJS.ProcessVersions): string =>
  electron === undefined ? `Node ${node}` : `Electron ${electron}, Chromium ${chrome}, Node ${node}`;
