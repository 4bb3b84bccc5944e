import { useEffect } from 'react';

/**
 * The controls the focus may go to by itself. Not the fields to type in: there the keys of undo belong to the words being
 * typed, and who took a line away by key wants the next press of them to bring it back.
 */
const mayBeGiven =
  'a[href], button:not(:disabled), input:is([type="checkbox"], [type="radio"]):not(:disabled), select:not(:disabled), summary, [tabindex="0"]';

/** Where an element stood: each element around it, from the inside out, and which child of that one led to it. */
type Trail = readonly { readonly around: Element; readonly at: number }[];

/**
 * Gives the focus back where the browser drops it: a control that was used and is gone (a task that is done, a line that was
 * taken away) hands it to the next one beside it, and one that was barred while something was being saved gets it back. A dialog or sheet
 * that gives the focus back by itself comes first; nothing happens while anything has the focus.
 */
export function keepFocus(): () => void {
  let last: HTMLElement | null = null;
  let trail: Trail = [];
  let wasBarred = false;
  let frame = 0;

  const remember = (event: FocusEvent): void => {
    if (!(event.target instanceof HTMLElement)) return;
    last = event.target;
    trail = trailOf(last);
    wasBarred = false;
  };
  const check = (): void => {
    if (last === null || document.activeElement !== document.body) return;
    if (!last.isConnected) nextBeside(trail)?.focus();
    else if (wasBarred && !last.matches(':disabled')) last.focus();
  };
  const checkSoon = (): void => {
    if (last === null) return;
    wasBarred ||= last.matches(':disabled');
    if (last.isConnected && !wasBarred) return;
    cancelAnimationFrame(frame);
    // the frame after next: what closes gives the focus back in the next one
    frame = requestAnimationFrame(() => {
      frame = requestAnimationFrame(check);
    });
  };
  const forget = (): void => {
    last = null;
  };

  const watch = new MutationObserver(checkSoon);
  watch.observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ['disabled'] });
  document.addEventListener('focusin', remember);
  // who presses beside all controls wants none of them; pressed on one, it takes the focus after this
  document.addEventListener('pointerdown', forget, true);
  return () => {
    watch.disconnect();
    cancelAnimationFrame(frame);
    document.removeEventListener('focusin', remember);
    document.removeEventListener('pointerdown', forget, true);
  };
}

export function useKeptFocus(): void {
  useEffect(keepFocus, []);
}

function trailOf(element: Element): Trail {
  const trail: { around: Element; at: number }[] = [];
  for (let inner = element; inner.parentElement !== null; inner = inner.parentElement)
    trail.push({ around: inner.parentElement, at: [...inner.parentElement.children].indexOf(inner) });
  return trail;
}

/** The first control at or after the place, within the nearest of what stood around it and still stands; else the last one before it. */
function nextBeside(trail: Trail): HTMLElement | null {
  const page = document.getElementById('page');
  for (const { around, at } of trail) {
    if (!around.isConnected) continue;
    if (page !== null && around.contains(page)) return page;
    const controls = [...around.querySelectorAll<HTMLElement>(mayBeGiven)].filter((each) => each.checkVisibility());
    const place = around.children[at];
    const after = controls.find(
      (each) => place !== undefined && (place.contains(each) || place.compareDocumentPosition(each) & FOLLOWS),
    );
    const next = after ?? controls.at(-1);
    if (next !== undefined) return next;
  }
  return page;
}

const FOLLOWS = Node.DOCUMENT_POSITION_FOLLOWING;
