import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { tabsOf } from '../../app/place-tabs.ts';
import { Shown } from '../../app/states.tsx';
import { Tabs } from '../../app/tabs.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { BackupsTab } from './backups-tab.tsx';
import { FilesTab } from './files-tab.tsx';
import { FirstBeds } from './first-beds.tsx';
import { NewFarm } from './new-farm.tsx';
import { PhoneTab } from './phone-tab.tsx';
import { ProgramTab } from './program-tab.tsx';
import { SettingsTab } from './settings-tab.tsx';

const tabs = tabsOf.farm;

/** The farm itself: settings, the file it is kept in, its backups. */
export function FarmPage() {
  const [wanted, setTab] = useQueryValue('tab');
  const tab = tabs.find((each) => each.name === wanted)?.name ?? 'settings';
  const farm = useRead(api.farm.get, undefined);
  if (wanted === 'start')
    return (
      <Page title={say('Your farm')} lead={say('Ten beds are enough to begin with; all of it can be changed later.')}>
        <FirstBeds />
      </Page>
    );
  if (wanted === 'new')
    return (
      <Page title={say('Your farm')} lead={say('A farm is one file on this computer; nothing leaves it.')}>
        <NewFarm onCancel={() => setTab('files')} />
      </Page>
    );
  return (
    <Page
      title={say('Farm')}
      lead={say('Where the farm lies, how figures are shown, and the file everything is kept in.')}
      tabs={<Tabs label={say("Parts of the farm's settings")} tabs={tabs} chosen={tab} onChoose={setTab} />}
    >
      <Shown reading={farm}>
        {(data) =>
          tab === 'settings' ? (
            <SettingsTab key={data.revision} farm={data} />
          ) : tab === 'files' ? (
            <FilesTab farm={data} />
          ) : tab === 'backups' ? (
            <BackupsTab />
          ) : tab === 'program' ? (
            <ProgramTab />
          ) : (
            <PhoneTab />
          )
        }
      </Shown>
    </Page>
  );
}
