import { createElement, type ReactNode } from 'react';
import type { IconName } from '../look/icon.tsx';
import { say } from '../words/say.ts';
import { helpOf } from './help.ts';
import { type LaterPart, later } from './later.tsx';
import type { PlaceHelp } from './place-help.ts';
import type { PlaceName } from './place-names.ts';
import { Waiting } from './states.tsx';

export type Place = {
  readonly name: PlaceName;
  readonly title: string;
  readonly icon: IconName;
  readonly page: LaterPart<object>;
  readonly help: PlaceHelp;
};

export const openingPage = (): ReactNode => createElement(Waiting, { what: say('Opening the page') });

export const places: readonly Place[] = [
  {
    name: 'week',
    title: say('This week'),
    icon: 'week',
    page: later(async () => (await import('../places/week/week-page.tsx')).WeekPage, openingPage),
    help: helpOf.week,
  },
  {
    name: 'beds',
    title: say('Beds'),
    icon: 'beds',
    page: later(async () => (await import('../places/beds/beds-page.tsx')).BedsPage, openingPage),
    help: helpOf.beds,
  },
  {
    name: 'season',
    title: say('Season'),
    icon: 'season',
    page: later(async () => (await import('../places/season/season-page.tsx')).SeasonPage, openingPage),
    help: helpOf.season,
  },
  {
    name: 'soil',
    title: say('Soil'),
    icon: 'soil',
    page: later(async () => (await import('../places/soil/soil-page.tsx')).SoilPage, openingPage),
    help: helpOf.soil,
  },
  {
    name: 'water',
    title: say('Water'),
    icon: 'water',
    page: later(async () => (await import('../places/water/water-page.tsx')).WaterPage, openingPage),
    help: helpOf.water,
  },
  {
    name: 'orders',
    title: say('Orders'),
    icon: 'orders',
    page: later(async () => (await import('../places/orders/orders-page.tsx')).OrdersPage, openingPage),
    help: helpOf.orders,
  },
  {
    name: 'harvest',
    title: say('Harvest'),
    icon: 'harvest',
    page: later(async () => (await import('../places/harvest/harvest-page.tsx')).HarvestPage, openingPage),
    help: helpOf.harvest,
  },
  {
    name: 'costs',
    title: say('Costs'),
    icon: 'costs',
    page: later(async () => (await import('../places/costs/costs-page.tsx')).CostsPage, openingPage),
    help: helpOf.costs,
  },
  {
    name: 'library',
    title: say('Library'),
    icon: 'library',
    page: later(async () => (await import('../places/library/library-page.tsx')).LibraryPage, openingPage),
    help: helpOf.library,
  },
  {
    name: 'farm',
    title: say('Farm'),
    icon: 'farm',
    page: later(async () => (await import('../places/farm/farm-page.tsx')).FarmPage, openingPage),
    help: helpOf.farm,
  },
];
