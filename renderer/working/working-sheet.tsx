import { createContext, type ReactNode, useContext, useMemo, useState } from 'react';
import type { Working } from '../../planner/working.ts';
import { Sheet } from '../app/sheet.tsx';
import { say } from '../words/say.ts';
import { WorkingView } from './working-view.tsx';

type Shower = { readonly show: (working: Working) => void };

const ShowerContext = createContext<Shower>({ show: () => undefined });

/** Opens the working of a figure in the sheet at the side. */
export const useWorking = (): Shower => useContext(ShowerContext);

/** Holds the open working beside the page. */
export function WorkingProvider({ children }: { readonly children: ReactNode }) {
  const [working, setWorking] = useState<Working>();
  const shower = useMemo<Shower>(() => ({ show: setWorking }), []);
  return (
    <ShowerContext value={shower}>
      {children}
      {working === undefined ? null : (
        <Sheet title={say('Working')} onClose={() => setWorking(undefined)}>
          <WorkingView working={working} />
        </Sheet>
      )}
    </ShowerContext>
  );
}
