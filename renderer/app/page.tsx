import { type ReactNode, useEffect, useRef } from 'react';
import { say } from '../words/say.ts';
import { useFarmName } from './farm-gate.tsx';

/** One page of a place: its title (also the window's), what can be done here, and beside it the sheet of what is selected. */
export function Page(props: {
  readonly title: string;
  readonly lead?: ReactNode;
  readonly actions?: ReactNode;
  readonly tabs?: ReactNode;
  readonly sheet?: ReactNode;
  readonly children: ReactNode;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  const farm = useFarmName();
  useEffect(() => {
    // two windows on two farms are told apart by it
    document.title =
      farm === undefined
        ? say('{props} · Bedwright', { props: props.title })
        : say('{page} · {farm} · Bedwright', { page: props.title, farm });
  }, [props.title, farm]);
  useEffect(() => {
    if (document.activeElement === null || document.activeElement === document.body)
      heading.current?.focus({ preventScroll: true });
  }, []);
  return (
    <div className="page-and-sheet">
      <div className="page">
        <header className="page-head">
          <div>
            <h1 ref={heading} tabIndex={-1}>
              {props.title}
            </h1>
            {props.lead === undefined ? null : <p className="soft">{props.lead}</p>}
          </div>
          {props.actions === undefined ? null : <div className="row no-print">{props.actions}</div>}
        </header>
        {props.tabs}
        {props.children}
      </div>
      {props.sheet}
    </div>
  );
}
