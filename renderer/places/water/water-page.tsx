import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { type TabOf, tabsOf } from '../../app/place-tabs.ts';
import { Tabs } from '../../app/tabs.tsx';
import { say } from '../../words/say.ts';
import { AwayTab } from './away-tab.tsx';
import { BedWaterSheet } from './bed-water-sheet.tsx';
import { DemandTab } from './demand-tab.tsx';
import { LineTab } from './line-tab.tsx';
import { PowerTab } from './power-tab.tsx';
import { ReservoirTab } from './reservoir-tab.tsx';
import { SaltsTab } from './salts-tab.tsx';
import { StressTab } from './stress-tab.tsx';
import { TimerTab } from './timer-tab.tsx';
import { ValvesTab } from './valves-tab.tsx';
import { WeatherTab } from './weather-tab.tsx';

type WaterTab = TabOf<'water'>;

/** What is about need: the sheet of a bed's water opens beside these. */
const ofNeed: ReadonlySet<WaterTab> = new Set<WaterTab>(['demand', 'stress', 'away', 'salts', 'weather']);

const bodyOf = {
  demand: DemandTab,
  stress: StressTab,
  away: AwayTab,
  salts: SaltsTab,
  weather: WeatherTab,
  line: LineTab,
  valves: ValvesTab,
  timer: TimerTab,
  reservoir: ReservoirTab,
  power: PowerTab,
} as const satisfies Readonly<Record<WaterTab, () => unknown>>;

export function WaterPage() {
  const [asked, setTab] = useQueryValue('tab');
  const [bedId, setBedId] = useQueryValue('bed');
  const tab = tabsOf.water.find((each) => each.name === asked)?.name ?? 'demand';
  const Body = bodyOf[tab];
  const sheet =
    !ofNeed.has(tab) || bedId === undefined ? null : <BedWaterSheet bedId={bedId} onClose={() => setBedId(undefined)} />;
  return (
    <Page
      title={say('Water')}
      tabs={<Tabs label={say('Water')} tabs={tabsOf.water} chosen={tab} onChoose={setTab} />}
      sheet={sheet}
    >
      <Body />
    </Page>
  );
}
