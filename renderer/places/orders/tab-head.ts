import type { ReactNode } from 'react';
import type { PickedSeason } from './season-pick.tsx';

/** What every tab of the place is given: the bar of tabs, the choice of season, the season. */
export type TabHead = { readonly tabs: ReactNode; readonly choice: ReactNode; readonly season: PickedSeason };
