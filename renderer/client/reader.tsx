import { createContext, type ReactNode, useContext, useMemo } from 'react';
import { type Reader, type ReaderSettings, readerOf } from '../../planner/units/reader.ts';

const ReaderContext = createContext<Reader>(readerOf({ system: 'metric', currency: 'USD', locale: 'en-US' }));

export function ReaderProvider({ settings, children }: { readonly settings: ReaderSettings; readonly children: ReactNode }) {
  const { system, currency, locale } = settings;
  const reader = useMemo(() => readerOf({ system, currency, locale }), [system, currency, locale]);
  return <ReaderContext value={reader}>{children}</ReaderContext>;
}

export const useReader = (): Reader => useContext(ReaderContext);
