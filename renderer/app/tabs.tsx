import { type KeyboardEvent, useEffect, useRef } from 'react';

export type Tab<Name extends string> = { readonly name: Name; readonly title: string };

/** The tabs from which the reader just chose. Many places draw their tabs anew with each part, and the focus must stay on them. */
let chosenFrom: string | undefined;

/** Tabs of one place. What is chosen lives in the address: `const [tab, setTab] = useQueryValue('tab')`. */
export function Tabs<Name extends string>({
  tabs,
  chosen,
  onChoose,
  label,
}: {
  readonly tabs: readonly Tab<Name>[];
  readonly chosen: Name;
  readonly onChoose: (name: Name) => void;
  readonly label: string;
}) {
  const list = useRef<HTMLDivElement>(null);
  const move = (event: KeyboardEvent): void => {
    const at = tabs.findIndex((tab) => tab.name === chosen);
    const to = { ArrowRight: at + 1, ArrowLeft: at - 1, Home: 0, End: tabs.length - 1 }[event.key];
    if (to === undefined) return;
    const next = tabs[(to + tabs.length) % tabs.length];
    if (next === undefined) return;
    event.preventDefault();
    choose(next.name);
  };
  const choose = (name: Name): void => {
    chosenFrom = label;
    onChoose(name);
  };
  useEffect(() => {
    if (chosenFrom !== label) return;
    chosenFrom = undefined;
    list.current?.querySelector<HTMLElement>('[aria-selected="true"]')?.focus({ preventScroll: true });
  });
  return (
    <div className="tabs no-print" role="tablist" aria-label={label} ref={list} onKeyDown={move}>
      {tabs.map((tab) => (
        <button
          key={tab.name}
          type="button"
          role="tab"
          data-tab={tab.name}
          aria-selected={tab.name === chosen}
          tabIndex={tab.name === chosen ? 0 : -1}
          onClick={() => choose(tab.name)}
        >
          {tab.title}
        </button>
      ))}
    </div>
  );
}
