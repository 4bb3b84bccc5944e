import { type RefObject, useEffect, useRef } from 'react';
import { type Tab, Tabs } from '../../app/tabs.tsx';

/** The tabs of a place whose parts are pages of their own: the focus stays on the tabs when another part takes over. */
export function PartTabs<Name extends string>(props: {
  readonly tabs: readonly Tab<Name>[];
  readonly chosen: Name;
  readonly onChoose: (name: Name) => void;
  readonly label: string;
  /** Kept by the place, since the tabs themselves are drawn anew with each part. */
  readonly chosenHere: RefObject<boolean>;
}) {
  const place = useRef<HTMLDivElement>(null);
  const { chosenHere, ...tabs } = props;
  useEffect(() => {
    if (!chosenHere.current) return;
    chosenHere.current = false;
    place.current?.querySelector<HTMLElement>('[aria-selected="true"]')?.focus({ preventScroll: true });
  }, [chosenHere]);
  return (
    <div ref={place}>
      <Tabs
        {...tabs}
        onChoose={(name) => {
          chosenHere.current = true;
          tabs.onChoose(name);
        }}
      />
    </div>
  );
}
