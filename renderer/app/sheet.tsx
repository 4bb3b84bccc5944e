import { type ReactNode, useEffect, useId, useRef } from 'react';
import { Icon } from '../look/icon.tsx';
import { say } from '../words/say.ts';

/** The side sheet of the selected row. Escape closes it and gives the focus back to where it was. */
export function Sheet(props: {
  readonly title: ReactNode;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly foot?: ReactNode;
}) {
  const titleId = useId();
  const sheet = useRef<HTMLElement>(null);
  const cameFrom = useRef<Element | null>(null);
  useEffect(() => {
    cameFrom.current = document.activeElement;
    const table = cameFrom.current?.closest('[role="grid"]')?.getAttribute('aria-label');
    return () => {
      const back = cameFrom.current;
      if (back instanceof HTMLElement && back.isConnected) back.focus({ preventScroll: true });
      // a table makes the cells of its rows anew; the one that Tab reaches is where the reader was
      else if (table !== undefined && table !== null)
        document
          .querySelector<HTMLElement>(`[role="grid"][aria-label="${CSS.escape(table)}"] td[tabindex="0"]`)
          ?.focus({ preventScroll: true });
      // what it was opened from may be gone, as a strip of a board drawn anew; then the page is where a reader goes on
      if (document.activeElement === document.body) document.getElementById('page')?.focus({ preventScroll: true });
    };
  }, []);
  return (
    <aside
      ref={sheet}
      className="sheet"
      aria-labelledby={titleId}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return;
        event.preventDefault();
        props.onClose();
      }}
    >
      <header className="sheet-head">
        <h2 id={titleId}>{props.title}</h2>
        <button type="button" className="button" data-weight="quiet" onClick={props.onClose} aria-label={say('Close the sheet')}>
          <Icon name="close" />
        </button>
      </header>
      <div className="sheet-body">{props.children}</div>
      {props.foot === undefined ? null : <footer className="sheet-foot">{props.foot}</footer>}
    </aside>
  );
}
