import type { ReactNode } from 'react';
import type { PrintedPart } from '../../api/print/printed-document.ts';
import type { Room } from './paper.ts';
import { drawingOf } from './sheet-of.ts';

/** What is being drawn for paper at the moment: out of sight, in the colours of paper. */
export type Staged = { readonly key: number; readonly node: ReactNode; readonly size: Room };

let staged: readonly Staged[] = [];
let lastKey = 0;
const listeners = new Set<() => void>();

function put(next: readonly Staged[]): void {
  staged = next;
  for (const listener of listeners) listener();
}

export const stage = {
  subscribe(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
  shown: (): readonly Staged[] => staged,
};

export const stageId = (key: number): string => `paper-stage-${key}`;

/** Draws a part of a page anew at the size of a sheet, and answers what was drawn as plain shapes. */
export async function drawnOnPaper(node: ReactNode, size: Room, across: boolean): Promise<PrintedPart> {
  lastKey += 1;
  const one = { key: lastKey, node, size };
  put([...staged, one]);
  try {
    return drawingOf(await drawn(stageId(one.key)), size, across);
  } finally {
    put(staged.filter((each) => each !== one));
  }
}

const nextFrame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve));

/** Frames without a change after which a drawing counts as complete: a measured size is followed by a drawing, then its labels. */
const STILL_FRAMES = 4;
const MOST_FRAMES = 900;

async function drawn(id: string): Promise<Element> {
  let before = '';
  let still = 0;
  for (let frame = 0; frame < MOST_FRAMES; frame += 1) {
    await nextFrame();
    const element = document.getElementById(id);
    const now = element === null || element.querySelector('.waiting') !== null ? '' : element.innerHTML;
    still = now !== '' && now === before ? still + 1 : 0;
    before = now;
    if (element !== null && still >= STILL_FRAMES) return element;
  }
  throw new Error('A drawing did not come to rest.');
}
