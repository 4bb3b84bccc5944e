import type { Failure } from '../client/failure.ts';

/** A refusal with a fault at a field and one that belongs to no shown field. */
export const refused: Failure = {
  code: 'input',
  message: 'Two entries need a look.',
  faults: [
    { path: 'depth_m', code: 'too-large', message: 'Depth: 9 m is above the most that makes sense, 3 m.' },
    { path: 'elsewhere', code: 'wrong', message: 'A fault of no shown field stands at the head.' },
  ],
};
