import type { Tab } from '../../app/tabs.tsx';
import { LineTab } from './line-tab.tsx';
import { PowerTab } from './power-tab.tsx';
import { ReservoirTab } from './reservoir-tab.tsx';
import { TimerTab } from './timer-tab.tsx';
import { ValvesTab } from './valves-tab.tsx';

export type LineTabName = 'line' | 'valves' | 'timer' | 'reservoir' | 'power';

/** The half of Water that is about a line: its drawing, valves, timer, reservoir and power. */
export const lineTabs: readonly Tab<LineTabName>[] = [
  { name: 'line', title: 'Line' },
  { name: 'valves', title: 'Valves' },
  { name: 'timer', title: 'Timer' },
  { name: 'reservoir', title: 'Reservoir' },
  { name: 'power', title: 'Power' },
];

export function LineTabBody({ name }: { readonly name: LineTabName }) {
  switch (name) {
    case 'line':
      return <LineTab />;
    case 'valves':
      return <ValvesTab />;
    case 'timer':
      return <TimerTab />;
    case 'reservoir':
      return <ReservoirTab />;
    case 'power':
      return <PowerTab />;
  }
}
