import type { Tab } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { LineTab } from './line-tab.tsx';
import { PowerTab } from './power-tab.tsx';
import { ReservoirTab } from './reservoir-tab.tsx';
import { TimerTab } from './timer-tab.tsx';
import { ValvesTab } from './valves-tab.tsx';

export type LineTabName = 'line' | 'valves' | 'timer' | 'reservoir' | 'power';

/** The half of Water that is about a line: its drawing, valves, timer, reservoir and power. */
export const lineTabs: readonly Tab<LineTabName>[] = [
  { name: 'line', title: say('Line') },
  { name: 'valves', title: say('Valves') },
  { name: 'timer', title: say('Timer') },
  { name: 'reservoir', title: say('Reservoir') },
  { name: 'power', title: say('Power') },
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
