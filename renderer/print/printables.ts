import { useCallback, useRef } from 'react';
import type { PrintedPart } from '../../api/print/printed-document.ts';
import type { Paper } from './paper.ts';

/** Makes what a part of a page puts on paper. */
export type MakeParts = (paper: Paper) => Promise<readonly PrintedPart[]>;

const makers = new WeakMap<Element, MakeParts>();

export const makerOf = (element: Element): MakeParts | undefined => makers.get(element);

/**
 * Lets the element that gets this ref stand on paper as `make` has it, alone and as a part of its page. `also` is a stable ref
 * that wants the same element.
 */
export function usePrintable(
  make: MakeParts,
  also?: (element: HTMLElement | null) => void,
): (element: HTMLElement | null) => void {
  const latest = useRef(make);
  latest.current = make;
  return useCallback(
    (element) => {
      if (element !== null) makers.set(element, (paper) => latest.current(paper));
      also?.(element);
    },
    [also],
  );
}
