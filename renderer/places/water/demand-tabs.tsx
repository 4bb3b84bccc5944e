import type { Tab } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { AwayTab } from './away-tab.tsx';
import { DemandTab } from './demand-tab.tsx';
import { SaltsTab } from './salts-tab.tsx';
import { StressTab } from './stress-tab.tsx';
import { WeatherTab } from './weather-tab.tsx';

export type DemandTabName = 'demand' | 'stress' | 'away' | 'salts' | 'weather';

/** The half of Water that is about need: demand, stores and stress, days away, salts, weather. */
export const demandTabs: readonly Tab<DemandTabName>[] = [
  { name: 'demand', title: say('Demand') },
  { name: 'stress', title: say('Stores and stress') },
  { name: 'away', title: say('Days away') },
  { name: 'salts', title: say('Salts') },
  { name: 'weather', title: say('Weather') },
];

export function DemandTabBody({ name }: { readonly name: DemandTabName }) {
  switch (name) {
    case 'demand':
      return <DemandTab />;
    case 'stress':
      return <StressTab />;
    case 'away':
      return <AwayTab />;
    case 'salts':
      return <SaltsTab />;
    case 'weather':
      return <WeatherTab />;
  }
}
