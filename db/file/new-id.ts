import { randomUUID } from 'node:crypto';

/** A key that no other row has, in this farm or another. */
export const newId = <Kind extends string>(): Kind => randomUUID() as Kind;
