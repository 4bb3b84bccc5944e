import { app, powerMonitor, powerSaveBlocker } from 'electron';
import type { Program } from '../api/program/program.ts';

export type PowerActions = {
  /** Every window reads anew, since "today" may be another day. */
  readonly renew: () => void;
  /** The computer goes down: nothing more is asked. */
  readonly leave: () => void;
};

/**
 * Before sleep, a locked screen and the end of the computer, all that was written goes into the farm files themselves (every change is durable
 * before that already). Long work sleeps with the computer and goes on with it; only while it runs is the computer kept from falling asleep
 * by itself.
 */
export function watchPower(program: Program, { renew, leave }: PowerActions): void {
  const settle = (): void => {
    try {
      program.settle();
    } catch (error) {
      // what was written is in the write-ahead log beside the file, which is read at the next opening
      program.log(`before sleep: ${String(error)}`);
    }
  };
  powerMonitor.on('suspend', settle);
  powerMonitor.on('lock-screen', settle);
  powerMonitor.on('resume', renew);
  powerMonitor.on('unlock-screen', renew);
  powerMonitor.on('shutdown', () => {
    settle();
    leave();
    app.quit();
  });
  let blocker: number | undefined;
  program.jobs.onChange((running) => {
    if (running > 0 && blocker === undefined) blocker = powerSaveBlocker.start('prevent-app-suspension');
    if (running > 0 || blocker === undefined) return;
    powerSaveBlocker.stop(blocker);
    blocker = undefined;
  });
}
