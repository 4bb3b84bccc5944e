import { refuse, requireRange, requireWhole } from '../../errors.ts';
import type { SeasonInstance } from './instance.ts';

/** One thing different from the farm as it is. */
export type Change =
  | { readonly kind: 'price'; readonly crop: number; readonly factor: number }
  | { readonly kind: 'wage'; readonly wage_minor_per_h: number }
  | { readonly kind: 'water'; readonly zone: number | null; readonly factor: number }
  | { readonly kind: 'labour'; readonly factor: number }
  | { readonly kind: 'beds'; readonly unit: number; readonly count: number }
  | { readonly kind: 'without'; readonly crop: number }
  | { readonly kind: 'no-history' }
  | { readonly kind: 'any-bed' };

const times = (list: readonly number[], factor: number) => list.map((value) => value * factor);

/** The season with one thing changed. @throws InputError naming the field that will not do */
export function whatIf(instance: SeasonInstance, change: Change): SeasonInstance {
  switch (change.kind) {
    case 'price': {
      requireCrop(instance, change.crop);
      requireRange('factor', change.factor, 0, 100, '');
      return {
        ...instance,
        crops: instance.crops.map((crop, c) =>
          c !== change.crop
            ? crop
            : {
                ...crop,
                demand: crop.demand.map((week) => ({
                  ...week,
                  contractPrice_minor: week.contractPrice_minor * change.factor,
                  tiers: week.tiers.map((tier) => ({ ...tier, price_minor: tier.price_minor * change.factor })),
                })),
              },
        ),
      };
    }
    case 'wage':
      requireRange('wage_minor_per_h', change.wage_minor_per_h, 0, 1e9, '');
      return { ...instance, wage_minor_per_h: change.wage_minor_per_h };
    case 'water':
      requireRange('factor', change.factor, 0, 100, '');
      return {
        ...instance,
        waterCap_L: instance.waterCap_L.map((cap, z) =>
          change.zone === null || z === change.zone ? times(cap, change.factor) : cap,
        ),
      };
    case 'labour':
      requireRange('factor', change.factor, 0, 100, '');
      return { ...instance, labourCap_h: times(instance.labourCap_h, change.factor) };
    case 'beds': {
      requireWhole('count', change.count, 1, 500);
      const like = instance.units[change.unit];
      if (like === undefined) return refuse('unit', 'no-such-bed', 'unit: there is no such bed to copy.');
      const added = Array.from({ length: change.count }, (_, at) => ({
        ...like,
        id: `${like.id} more ${at + 1}`,
        bedId: `${like.bedId} more ${at + 1}`,
        position: like.position + at + 1,
        barredFamilies: [],
        fixed: [],
        seasonsSince: {},
      }));
      return { ...instance, units: [...instance.units, ...added] };
    }
    case 'without':
      requireCrop(instance, change.crop);
      return { ...instance, crops: instance.crops.map((crop, c) => (c === change.crop ? { ...crop, options: [] } : crop)) };
    case 'no-history':
      return { ...instance, units: instance.units.map((unit) => ({ ...unit, barredFamilies: [] })) };
    case 'any-bed': {
      const all = instance.crops.map((_, c) => c);
      return { ...instance, units: instance.units.map((unit) => ({ ...unit, cropsFit: all })) };
    }
  }
}

function requireCrop(instance: SeasonInstance, crop: number): void {
  if (instance.crops[crop] === undefined) refuse('crop', 'no-such-crop', 'crop: there is no such crop in this season.');
}
