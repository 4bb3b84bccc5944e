import { go, useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { later } from '../../app/later.tsx';
import { Page } from '../../app/page.tsx';
import { tabsOf } from '../../app/place-tabs.ts';
import { Empty, Shown, Waiting } from '../../app/states.tsx';
import { Tabs } from '../../app/tabs.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { say } from '../../words/say.ts';
import { NeedsTab } from '../beds/needs-tab.tsx';
import { BudgetTab } from './budget-tab.tsx';
import { PhTab } from './ph-tab.tsx';
import { TestsTab } from './tests-tab.tsx';
import { useToday } from './use-today.ts';

const opening = () => <Waiting what={say('Opening')} />;

const BlendTab = later(async () => (await import('./blend-tab.tsx')).BlendTab, opening);
const CardsTab = later(async () => (await import('./cards-tab.tsx')).CardsTab, opening);
const CompostTab = later(async () => (await import('./compost-tab.tsx')).CompostTab, opening);
const RecordsTab = later(async () => (await import('./records-tab.tsx')).RecordsTab, opening);

const tabs = tabsOf.soil;

type TabName = (typeof tabs)[number]['name'];

const ofSeason: ReadonlySet<TabName> = new Set<TabName>(['ph', 'budget', 'blend', 'cards']);

/** Soil: from the laboratory sheet to what each bed is given, and the record of it. */
export function SoilPage() {
  const [chosen, setTab] = useQueryValue('tab');
  const [season, setSeason] = useQueryValue('season');
  const tab = tabs.find((each) => each.name === chosen)?.name ?? 'tests';
  const today = useToday();
  const plan = useRead(api.feeding.plan, season === undefined ? {} : { seasonId: season });
  const strip = (
    <Tabs
      tabs={tabs}
      chosen={tab}
      label={say('Parts of Soil')}
      onChoose={(name) => setTab(name === 'tests' ? undefined : name)}
    />
  );
  if (tab === 'tests') return <TestsTab tabs={strip} />;
  if (tab === 'records') return <RecordsTab tabs={strip} />;
  if (tab === 'compost') return <CompostTab tabs={strip} />;
  if (tab === 'fill')
    return (
      <Page
        title={say('Soil')}
        lead={say('What each bed wants to be filled or topped up; own soil and stock first.')}
        tabs={strip}
      >
        {today === null ? null : <NeedsTab today={today} onOpen={(bedId) => go('beds', { bed: bedId })} />}
      </Page>
    );
  if (plan.state !== 'ready')
    return (
      <Page title={say('Soil')} tabs={strip}>
        {plan.state === 'failed' && plan.failure.code === 'not-found' ? (
          <Empty title={say('No season yet')} action={<Button onClick={() => go('season')}>{say('Go to Season')}</Button>}>
            {say('Lime, budget, blend and dose cards belong to a season. Make one first; soil tests can be entered before.')}
          </Empty>
        ) : (
          <Shown reading={plan}>{() => null}</Shown>
        )}
      </Page>
    );
  const { data } = plan;
  const chooser = ofSeason.has(tab) ? (
    <ChoiceField
      label={say('Season')}
      value={data.season.seasonId}
      choices={data.seasons.map((each) => ({ value: each.seasonId, text: each.name }))}
      onChange={setSeason}
    />
  ) : null;
  if (tab === 'ph') return <PhTab tabs={strip} plan={data} season={chooser} />;
  if (tab === 'budget') return <BudgetTab tabs={strip} plan={data} season={chooser} />;
  if (tab === 'blend') return <BlendTab key={data.season.seasonId} tabs={strip} plan={data} season={chooser} />;
  return <CardsTab tabs={strip} plan={data} season={chooser} />;
}
