import { bedsHelp } from '../places/beds/help.ts';
import { costsHelp } from '../places/costs/help.ts';
import { farmHelp } from '../places/farm/help.ts';
import { harvestHelp } from '../places/harvest/help.ts';
import { libraryHelp } from '../places/library/help.ts';
import { ordersHelp } from '../places/orders/help.ts';
import { seasonHelp } from '../places/season/help.ts';
import { soilHelp } from '../places/soil/help.ts';
import { waterHelp } from '../places/water/help.ts';
import { weekHelp } from '../places/week/help.ts';

/** The help of each place, beside its page so that both change together. */
export const helpOf = {
  week: weekHelp,
  beds: bedsHelp,
  season: seasonHelp,
  soil: soilHelp,
  water: waterHelp,
  orders: ordersHelp,
  harvest: harvestHelp,
  costs: costsHelp,
  library: libraryHelp,
  farm: farmHelp,
};
