import { createContext, type ReactNode, useContext, useMemo } from 'react';
import type { Reader } from '../../planner/units/reader.ts';
import { api } from '../client/api.ts';
import { ReaderProvider } from '../client/reader.tsx';
import { type OutputOf, useRead } from '../client/use-read.ts';
import { remembered, TABLE_PREFIX } from '../table/remembered.ts';
import { writeNumbersAs } from '../words/language.ts';
import { Failed, Waiting } from './states.tsx';

export type FarmView = OutputOf<typeof api.farm.get>;

/** The open farm, or undefined while it is read or when none is open. */
export function useFarm(): FarmView | undefined {
  const farm = useRead(api.farm.get, undefined);
  return farm.state === 'ready' ? farm.data : undefined;
}

export type { Reader };

const FarmName = createContext<string | undefined>(undefined);

/** The name of the farm that this window shows; undefined where none is open. */
export const useFarmName = (): string | undefined => useContext(FarmName);

/** Lets the pages in once the farm's settings are there: units, currency and language of every figure come from them. */
export function FarmGate({ children, none }: { readonly children: ReactNode; readonly none: ReactNode }) {
  const farm = useRead(api.farm.get, undefined);
  const tables = useRead(api.farm.rememberedUnder, { prefix: TABLE_PREFIX });
  if (tables.state === 'ready') remembered.takeFrom(tables.data);
  const settings = useMemo(
    () =>
      farm.state === 'ready'
        ? { system: farm.data.unitSystem, currency: farm.data.currency, locale: farm.data.language }
        : undefined,
    [farm],
  );
  useMemo(() => writeNumbersAs(settings?.locale ?? 'en-US'), [settings]);
  if (farm.state === 'loading') return <Waiting />;
  if (farm.state === 'failed') {
    if (farm.failure.code === 'no-farm') return none;
    return (
      <div className="page">
        <Failed message={farm.message} failure={farm.failure} retry={farm.retry} />
      </div>
    );
  }
  if (tables.state === 'loading') return <Waiting />;
  if (tables.state === 'failed') return <Failed message={tables.message} failure={tables.failure} retry={tables.retry} />;
  if (settings === undefined) return null;
  return (
    <FarmName value={farm.data.name}>
      <ReaderProvider settings={settings}>{children}</ReaderProvider>
    </FarmName>
  );
}
