import { type BrowserWindow, dialog } from 'electron';
import type { Program } from '../api/program/program.ts';
import { say } from './words.ts';

/** Whether the program may end now: it asks while long work runs, since that would be lost. */
export function askBeforeLeaving(program: Program) {
  let leaving = false;
  return {
    /** The computer goes down: nobody is there to answer. */
    force(): void {
      leaving = true;
    },
    mayLeave(over: BrowserWindow | null): boolean {
      if (leaving || program.jobs.running() === 0) return true;
      const question = {
        type: 'question' as const,
        message: say('A computation is still running.'),
        detail: say('Its result is lost when the program ends now. The farm itself is kept as it is.'),
        buttons: [say('Go on computing'), say('End all the same')],
        defaultId: 0,
        cancelId: 0,
      };
      leaving = (over === null ? dialog.showMessageBoxSync(question) : dialog.showMessageBoxSync(over, question)) === 1;
      return leaving;
    },
  };
}
