import type { Tab } from '../../app/tabs.tsx';
import { LineTab } from './line-tab.tsx';
import { ValvesTab } from './valves-tab.tsx';

export type LineTabName = 'line' | 'valves';

/** The half of Water that is about a line: its drawing, valves, timer, reservoir and power. */
export const lineTabs: readonly Tab<LineTabName>[] = [
  { name: 'line', title: 'Line' },
  { name: 'valves', title: 'Valves' },
];

export function LineTabBody({ name }: { readonly name: LineTabName }) {
  switch (name) {
    case 'line':
      return <LineTab />;
    case 'valves':
      return <ValvesTab />;
  }
}
