import { type ComponentType, lazy } from 'react';
import type { IconName } from '../look/icon.tsx';
import { say } from '../words/say.ts';
import { helpOf } from './help.ts';
import type { PlaceHelp } from './place-help.ts';
import type { PlaceName } from './place-names.ts';

export type Place = {
  readonly name: PlaceName;
  readonly title: string;
  readonly icon: IconName;
  readonly page: ComponentType;
  readonly help: PlaceHelp;
};

const page = (load: () => Promise<ComponentType>): ComponentType => lazy(async () => ({ default: await load() }));

export const places: readonly Place[] = [
  {
    name: 'week',
    title: say('This week'),
    icon: 'week',
    page: page(async () => (await import('../places/week/week-page.tsx')).WeekPage),
    help: helpOf.week,
  },
  {
    name: 'beds',
    title: say('Beds'),
    icon: 'beds',
    page: page(async () => (await import('../places/beds/beds-page.tsx')).BedsPage),
    help: helpOf.beds,
  },
  {
    name: 'season',
    title: say('Season'),
    icon: 'season',
    page: page(async () => (await import('../places/season/season-page.tsx')).SeasonPage),
    help: helpOf.season,
  },
  {
    name: 'soil',
    title: say('Soil'),
    icon: 'soil',
    page: page(async () => (await import('../places/soil/soil-page.tsx')).SoilPage),
    help: helpOf.soil,
  },
  {
    name: 'water',
    title: say('Water'),
    icon: 'water',
    page: page(async () => (await import('../places/water/water-page.tsx')).WaterPage),
    help: helpOf.water,
  },
  {
    name: 'orders',
    title: say('Orders'),
    icon: 'orders',
    page: page(async () => (await import('../places/orders/orders-page.tsx')).OrdersPage),
    help: helpOf.orders,
  },
  {
    name: 'harvest',
    title: say('Harvest'),
    icon: 'harvest',
    page: page(async () => (await import('../places/harvest/harvest-page.tsx')).HarvestPage),
    help: helpOf.harvest,
  },
  {
    name: 'costs',
    title: say('Costs'),
    icon: 'costs',
    page: page(async () => (await import('../places/costs/costs-page.tsx')).CostsPage),
    help: helpOf.costs,
  },
  {
    name: 'library',
    title: say('Library'),
    icon: 'library',
    page: page(async () => (await import('../places/library/library-page.tsx')).LibraryPage),
    help: helpOf.library,
  },
  {
    name: 'farm',
    title: say('Farm'),
    icon: 'farm',
    page: page(async () => (await import('../places/farm/farm-page.tsx')).FarmPage),
    help: helpOf.farm,
  },
];
