import { useState } from 'react';
import { DropFarm } from '../places/farm/drop-farm.tsx';
import { NoFarm } from '../places/farm/no-farm.tsx';
import { PaperStage } from '../print/paper-stage.tsx';
import { say } from '../words/say.ts';
import { WorkingProvider } from '../working/working-sheet.tsx';
import { setQuery, useAddress } from './address.ts';
import { CaughtFault } from './caught-fault.tsx';
import { FarmGate } from './farm-gate.tsx';
import { FindAndGo } from './find-and-go.tsx';
import { HelpSheet } from './help-sheet.tsx';
import { useKeptFocus } from './keep-focus.ts';
import { useShellKeys } from './keys.ts';
import { later } from './later.tsx';
import { openingPage, places } from './places.ts';
import { PrintHead } from './print-head.tsx';
import { Rail } from './rail.tsx';
import { ResultLine } from './result-line.tsx';
import { TopBar } from './top-bar.tsx';
import { useNewDay } from './use-new-day.ts';
import { useOwnWindow } from './use-own-window.ts';

/** Left out of the build that ships: the condition is settled when building. */
const Parts =
  import.meta.env.VITE_PARTS_PAGE === 'on'
    ? later(async () => (await import('../parts/parts-page.tsx')).PartsPage, openingPage)
    : undefined;

/** The window: rail, top bar, the place the address names, and the line of results. */
export function App() {
  const { place, query, tab } = useAddress();
  const [finding, setFinding] = useState(false);
  const [helpFor, setHelpFor] = useState<string>();
  const helping = helpFor === place || query.get('help') === 'yes';
  const toggleHelp = () => {
    setHelpFor(helping ? undefined : place);
    if (query.has('help')) setQuery({ help: undefined });
  };
  useShellKeys({ find: () => setFinding(true), help: toggleHelp });
  useOwnWindow();
  useNewDay();
  useKeptFocus();
  const here = places.find((each) => each.name === place);
  const Shown = Parts !== undefined && tab === 'parts' ? Parts : here?.page;
  return (
    <div className="shell">
      <a className="button skip" href="#page">
        {say('To the page')}
      </a>
      <Rail />
      <TopBar onFind={() => setFinding(true)} onHelp={toggleHelp} />
      <main className="shell-main" id="page" tabIndex={-1}>
        <PrintHead />
        <div className="shell-frame">
          <FarmGate none={<NoFarm />}>
            <WorkingProvider>
              <CaughtFault key={place}>{Shown === undefined ? null : <Shown />}</CaughtFault>
              <PaperStage />
            </WorkingProvider>
          </FarmGate>
          {helping && here !== undefined ? <HelpSheet place={here} onClose={toggleHelp} /> : null}
        </div>
      </main>
      <ResultLine />
      <DropFarm />
      {finding ? <FindAndGo onClose={() => setFinding(false)} /> : null}
    </div>
  );
}
