import {
  massOf_kg,
  porosity,
  sliceDensity_kg_per_m3,
  totalPorosity,
  weighedDensity_kg_per_m3,
  wetDensity_kg_per_m3,
} from '../../../planner/beds/density.ts';
import { floorLoad_kg_per_m2, isWithinFloorLimit } from '../../../planner/beds/floor-load.ts';
import { convert } from '../../../planner/units/convert.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';
import { L, m, share } from './soil-case-units.ts';

export const soilWeights: Registry = {
  'soil.dens-01': forEach(({ density_lb_per_yd3 }: { density_lb_per_yd3: number }) => ({
    density_kg_m3: convert(density_lb_per_yd3, 'lb_per_yd3', 'kg_per_m3'),
  })),
  'soil.dens-02': forEach(({ density_lb_per_ft3 }: { density_lb_per_ft3: number }) => ({
    density_kg_m3: convert(density_lb_per_ft3, 'lb_per_ft3', 'kg_per_m3'),
  })),
  'soil.dens-03': forEach(
    ({ air_space_pct, container_capacity_pct }: { air_space_pct: number; container_capacity_pct: number }) => ({
      total_porosity_pct: convert(totalPorosity(share(air_space_pct), share(container_capacity_pct)), 'm', 'cm'),
    }),
  ),
  'soil.dens-04': forEach((peat: { dry_density_kg_m3: number; container_capacity_pct: number; depth_in: number }) =>
    atCapacity(peat.dry_density_kg_m3, peat.container_capacity_pct, m(peat.depth_in, 'in')),
  ),
  'soil.dens-05': forEach((soil: { dry_density_kg_m3: number; particle_density_kg_m3: number }) => {
    const pores = porosity(soil.dry_density_kg_m3, soil.particle_density_kg_m3);
    const saturated = wetDensity_kg_per_m3(soil.dry_density_kg_m3, pores);
    return {
      porosity: pores,
      saturated_density_kg_m3: saturated,
      saturated_lb_per_ft3: convert(saturated, 'kg_per_m3', 'lb_per_ft3'),
    };
  }),
  'soil.dens-06': forEach(
    (deck: {
      layers: readonly { depth_m: number; wet_density_kg_m3: number }[];
      tare_kg_m2: number;
      plants_kg_m2: number;
      allowable_kg_m2: number;
    }) => {
      const load = floorLoad_kg_per_m2({
        layers: deck.layers.map((each) => ({ depth_m: each.depth_m, density_kg_per_m3: each.wet_density_kg_m3 })),
        tare_kg_per_m2: deck.tare_kg_m2,
        plants_kg_per_m2: deck.plants_kg_m2,
      });
      return {
        load_kg_m2: load,
        load_psf: convert(load, 'kg_per_m2', 'lb_per_ft2'),
        within_allowance: isWithinFloorLimit(load, deck.allowable_kg_m2),
      };
    },
    ['layers'],
  ),
  'soil.dens-07': forEach(({ soil_mass_lb_per_acre, depth_in }: { soil_mass_lb_per_acre: number; depth_in: number }) => {
    const density = sliceDensity_kg_per_m3(convert(soil_mass_lb_per_acre, 'lb_per_acre', 'kg_per_m2'), m(depth_in, 'in'));
    return { bulk_density_g_cm3: convert(density, 'kg', 't') };
  }),
  'soil.dens-08': forEach(({ weight_oz_per_pint }: { weight_oz_per_pint: number }) => {
    const density_kg_m3 = weighedDensity_kg_per_m3(convert(weight_oz_per_pint, 'oz', 'kg'), L(1, 'us_pt'));
    return { density_kg_m3, g_per_15_ml: convert(massOf_kg(L(15, 'mL'), density_kg_m3), 'kg', 'g') };
  }),
  'soil.also-dens-02': forEach((bark: { dry_density_kg_m3: number; container_capacity_pct: number; depth_m: number }) =>
    atCapacity(bark.dry_density_kg_m3, bark.container_capacity_pct, bark.depth_m),
  ),
};

function atCapacity(dry_kg_per_m3: number, capacity_pct: number, depth_m: number): CaseValues {
  const wet = wetDensity_kg_per_m3(dry_kg_per_m3, share(capacity_pct));
  const load = floorLoad_kg_per_m2({ layers: [{ depth_m, density_kg_per_m3: wet }] });
  return { wet_density_kg_m3: wet, load_kg_m2: load, load_psf: convert(load, 'kg_per_m2', 'lb_per_ft2') };
}
