import { z } from 'zod';
import { act } from '../procedure.ts';

/** What is about the running program and its window, not about a farm. */
export const program = {
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
