import { airGap_m, airGapBritish_m } from '../../../planner/irrigation/air-gap.ts';
import { basinRing_L, minutesFor } from '../../../planner/irrigation/basin-fill.ts';
import {
  afterSelfDischarge_Wh,
  batterySize_Ah,
  daysFor,
  energyAboveReserve_Wh,
  hoursFor,
  LITHIUM_CHARGING_C,
  panelSize_W,
  ratedUsable_Wh,
  usableEnergy_Wh,
} from '../../../planner/irrigation/battery.ts';
import {
  barbK,
  enlargementK,
  equivalentLengthK,
  fittingLoss_m,
  intrudingBarb,
} from '../../../planner/irrigation/fitting-loss.ts';
import {
  blasiusFactor,
  colebrookFactor,
  frictionFactor,
  smallTubeFactor,
  swameeJainFactor,
} from '../../../planner/irrigation/friction-factor.ts';
import { hazenWilliamsLoss_m } from '../../../planner/irrigation/hazen-williams.ts';
import { headOfPressure_m, pressureOfHead_Pa } from '../../../planner/irrigation/head-and-pressure.ts';
import { multipleOutletFactor, multipleOutletFactorShort } from '../../../planner/irrigation/multiple-outlets.ts';
import {
  headAtFlow_m,
  leastSquaresParabola,
  parabolaMeetsSystem,
  systemCoefficient_s2_per_m5,
} from '../../../planner/irrigation/operating-point.ts';
import { flowAtVelocity_m3_per_s, reynoldsNumber, velocity_m_per_s } from '../../../planner/irrigation/pipe-flow.ts';
import { pipeFriction } from '../../../planner/irrigation/pipe-friction.ts';
import { dailyPower, loadEnergy_Wh } from '../../../planner/irrigation/power-use.ts';
import { mostFlow_m3_per_s, pumpCurve, pumpHead, shutoffHead_m } from '../../../planner/irrigation/pump-curve.ts';
import { current_A, pumpEfficiency, tradePumpPower, waterPower_W } from '../../../planner/irrigation/pump-power.ts';
import { atSpeed } from '../../../planner/irrigation/pump-speed.ts';
import {
  firstFlush,
  rainCatch_L,
  rainCatchByTradeFactor_L,
  rainKept,
  roofFlow_L_per_min,
} from '../../../planner/irrigation/rain-catch.ts';
import { daysAway } from '../../../planner/irrigation/reservoir.ts';
import { singleTubeFlow_m3_per_s, siphonLoss_L, siphonTest, ventLeak_m3_per_s } from '../../../planner/irrigation/siphon.ts';
import { eggToAdult_days, STANDING_WATER } from '../../../planner/irrigation/standing-water.ts';
import {
  christiansenUniformity,
  distributionUniformity,
  distributionUniformityOfMeans,
  emissionUniformity,
  flowRatioOfPressure,
  grossDepth_m,
} from '../../../planner/irrigation/uniformity.ts';
import { valveK, valvePressureLoss } from '../../../planner/irrigation/valve-loss.ts';
import { kinematicViscosity_m2_per_s, waterDensity_kg_per_m3 } from '../../../planner/irrigation/water-properties.ts';
import { celsiusOf, convert, fahrenheitOf } from '../../../planner/units/convert.ts';
import { percentOf, shareOf } from '../case-units.ts';
import { forEachOfList } from '../for-each-of-list.ts';
import type { Registry } from '../registry.ts';
import { irrigationNetwork } from './irrigation-network.ts';

type US = { readonly flow_us_gal_per_min: number; readonly head_ft: number };

const usFlow = (flow: number): number => convert(flow, 'us_gal_per_min', 'm3_per_s');
const smallFlow = (flow: number): number => convert(flow, 'L_per_h', 'm3_per_s');

/** A published viscosity in square feet: two lengths to convert. */
const squareMetres = (value_ft2: number): number => convert(value_ft2, 'ft2', 'm2');
const squareFeet = (value_m2: number): number => convert(value_m2, 'm2', 'ft2');

const friction = forEachOfList((i) => {
  const done = pipeFriction({
    flow_m3_per_s: smallFlow(i['flow_L_per_h'] as number),
    insideDiameter_m: convert(i['inside_diameter_mm'] as number, 'mm', 'm'),
    length_m: i['length_m'] as number,
    roughness_m: convert(i['roughness_mm'] as number, 'mm', 'm'),
    viscosity_m2_per_s: i['kinematic_viscosity_m2_per_s'] as number,
  });
  return { head_loss_m: done.loss_m, velocity_m_per_s: done.velocity_m_per_s, reynolds: done.reynolds };
});

const hazen = (flow_m3_per_s: number, insideDiameter_m: number, length_m: number, coefficient: number): number =>
  hazenWilliamsLoss_m({ flow_m3_per_s, insideDiameter_m, length_m, coefficient });

const tradePower = forEachOfList((i) => {
  const power = tradePumpPower(
    usFlow(i['flow_us_gal_per_min'] as number),
    convert(i['head_ft'] as number, 'ft', 'm'),
    i['efficiency'] as number,
  );
  return { input_power_hp: power.input_hp, water_power_hp: power.water_hp };
});

type SmallPoint = { readonly flow_L_per_h: number; readonly head_m: number };

export const irrigation: Registry = {
  ...irrigationNetwork,
  'irrigation-capacity.friction-dw-01': forEachOfList((i) => ({
    head_loss_ft: convert(
      pipeFriction({
        flow_m3_per_s: usFlow(i['flow_us_gal_per_min'] as number),
        insideDiameter_m: convert(i['inside_diameter_in'] as number, 'in', 'm'),
        length_m: convert(i['length_ft'] as number, 'ft', 'm'),
        roughness_m: convert(i['roughness_ft'] as number, 'ft', 'm'),
        viscosity_m2_per_s: squareMetres(i['kinematic_viscosity_ft2_per_s'] as number),
      }).loss_m,
      'm',
      'ft',
    ),
  })),
  'irrigation-capacity.friction-hw-01': forEachOfList((i) => ({
    head_loss_ft: convert(
      hazen(
        usFlow(i['flow_us_gal_per_min'] as number),
        convert(i['inside_diameter_in'] as number, 'in', 'm'),
        convert(i['length_ft'] as number, 'ft', 'm'),
        i['hazen_williams_C'] as number,
      ),
      'm',
      'ft',
    ),
  })),
  'irrigation-capacity.friction-hw-07': forEachOfList((i) => {
    const loss_m = hazen(
      convert(i['flow_us_gal_per_h'] as number, 'us_gal_per_h', 'm3_per_s'),
      convert(i['inside_diameter_in'] as number, 'in', 'm'),
      convert(i['length_ft'] as number, 'ft', 'm'),
      i['hazen_williams_C'] as number,
    );
    return { head_loss_ft: convert(loss_m, 'm', 'ft'), pressure_loss_psi: convert(pressureOfHead_Pa(loss_m), 'Pa', 'psi') };
  }),
  'irrigation-capacity.friction-hw-08': forEachOfList((i) => ({
    head_loss_m: hazen(
      smallFlow(i['flow_L_per_h'] as number),
      convert(i['inside_diameter_mm'] as number, 'mm', 'm'),
      i['length_m'] as number,
      i['hazen_williams_C'] as number,
    ),
  })),
  // one name, two laws: only the case's own words tell Colebrook's implicit factor from the one of the solver
  'irrigation-capacity.friction-factor-01': forEachOfList((i, what) => ({
    friction_factor: (/colebrook/i.test(what) ? colebrookFactor : frictionFactor)(
      i['reynolds'] as number,
      i['relative_roughness'] as number,
    ),
  })),
  'irrigation-capacity.friction-factor-07': forEachOfList((i) => ({
    pe_friction_factor: smallTubeFactor(i['reynolds'] as number),
    blasius_friction_factor: blasiusFactor(i['reynolds'] as number),
    swamee_jain_smooth: swameeJainFactor(i['reynolds'] as number, 0),
  })),
  'irrigation-capacity.also-friction-factor-01': forEachOfList((i) => ({
    colebrook: colebrookFactor(i['reynolds'] as number, i['relative_roughness'] as number),
    swamee_jain: swameeJainFactor(i['reynolds'] as number, i['relative_roughness'] as number),
  })),
  'irrigation-capacity.friction-si-01': friction,
  'irrigation-capacity.friction-si-02': friction,
  'irrigation-capacity.velocity-01': forEachOfList((i) => ({
    velocity_ft_per_s: convert(
      velocity_m_per_s(usFlow(i['flow_us_gal_per_min'] as number), convert(i['inside_diameter_in'] as number, 'in', 'm')),
      'm_per_s',
      'ft_per_s',
    ),
  })),
  'irrigation-capacity.velocity-02': forEachOfList((i) => {
    const flow = flowAtVelocity_m3_per_s(
      convert(i['velocity_ft_per_s'] as number, 'ft_per_s', 'm_per_s'),
      convert(i['inside_diameter_in'] as number, 'in', 'm'),
    );
    return {
      flow_us_gal_per_h: convert(flow, 'm3_per_s', 'us_gal_per_h'),
      flow_L_per_h: convert(flow, 'm3_per_s', 'L_per_h'),
    };
  }),
  'irrigation-capacity.water-01': forEachOfList((i) => ({
    kinematic_viscosity_ft2_per_s: squareFeet(kinematicViscosity_m2_per_s(celsiusOf(i['temperature_F'] as number))),
  })),
  'irrigation-capacity.water-02': forEachOfList((i) => ({
    density_kg_per_m3: waterDensity_kg_per_m3(i['temperature_C'] as number),
  })),
  'irrigation-capacity.water-03': forEachOfList((i) => ({
    kinematic_viscosity_m2_per_s: kinematicViscosity_m2_per_s(i['temperature_C'] as number),
  })),
  'irrigation-capacity.minor-01': forEachOfList((i) => ({
    head_loss_m: fittingLoss_m(i['loss_K'] as number, i['velocity_m_per_s'] as number),
  })),
  'irrigation-capacity.minor-02': forEachOfList((i) => {
    const insideDiameter_m = convert(i['inside_diameter_in'] as number, 'in', 'm');
    const viscosity = squareMetres(i['kinematic_viscosity_ft2_per_s'] as number);
    const tube = {
      insideDiameter_m,
      reynolds: reynoldsNumber(usFlow(i['flow_us_gal_per_min'] as number), insideDiameter_m, viscosity),
      roughness_m: convert(i['roughness_ft'] as number, 'ft', 'm'),
    };
    const k = (length_ft: number) => equivalentLengthK({ ...tube, equivalentLength_m: convert(length_ft, 'ft', 'm') });
    return { run_K: k(i['run_equivalent_length_ft'] as number), branch_K: k(i['branch_equivalent_length_ft'] as number) };
  }),
  'irrigation-capacity.minor-03': forEachOfList((i) => ({
    enlargement_K_bore: enlargementK(
      convert(i['barb_bore_mm'] as number, 'mm', 'm'),
      convert(i['tube_inside_diameter_mm'] as number, 'mm', 'm'),
    ),
  })),
  'irrigation-capacity.minor-04': forEachOfList((i) => ({
    loss_K_tube: barbK(
      convert(i['barb_bore_mm'] as number, 'mm', 'm'),
      convert(i['tube_inside_diameter_mm'] as number, 'mm', 'm'),
    ),
  })),
  'irrigation-capacity.minor-05': forEachOfList((i) => {
    const barb = intrudingBarb(i['free_area_ratio'] as number);
    return { obstruction_index: barb.obstructionIndex, loss_K: barb.lossK };
  }),
  'irrigation-capacity.minor-06': forEachOfList((i) => ({
    loss_K: valveK(i['cv_us_gal_per_min_per_sqrt_psi'] as number, convert(i['bore_mm'] as number, 'mm', 'm')),
  })),
  'irrigation-capacity.minor-07': forEachOfList((i) => {
    const lost = valvePressureLoss(i['cv_us_gal_per_min_per_sqrt_psi'] as number, usFlow(i['flow_us_gal_per_min'] as number));
    return { pressure_loss_psi: convert(lost.loss_Pa, 'Pa', 'psi'), head_loss_ft: convert(lost.loss_m, 'm', 'ft') };
  }),
  'irrigation-capacity.multiple-outlet-01': forEachOfList((i) => ({
    factor: multipleOutletFactor(i['outlets'] as number, i['flow_exponent'] as number),
  })),
  'irrigation-capacity.multiple-outlet-07': forEachOfList((i) => ({
    exact: multipleOutletFactor(i['outlets'] as number, i['flow_exponent'] as number),
    short_formula: multipleOutletFactorShort(i['outlets'] as number, i['flow_exponent'] as number),
  })),
  'irrigation-capacity.pump-01': forEachOfList((i) => {
    const curve = pumpCurve('one-point', [
      {
        flow_L_per_h: convert(i['design_flow_L_per_min'] as number, 'L_per_min', 'L_per_h'),
        head_m: i['design_head_m'] as number,
      },
    ]);
    return {
      shutoff_head_m: shutoffHead_m(curve),
      max_flow_L_per_min: convert(mostFlow_m3_per_s(curve), 'm3_per_s', 'L_per_min'),
      exponent: curve.form === 'power' ? curve.exponent : undefined,
    };
  }),
  'irrigation-capacity.pump-02': ({ points }: { readonly points: readonly SmallPoint[] }) => {
    const curve = pumpCurve('three-points', points);
    const head = (flow_L_per_h: number) => pumpHead(curve, smallFlow(flow_L_per_h)).head_m;
    return {
      A_m: shutoffHead_m(curve),
      C: curve.form === 'power' ? curve.exponent : undefined,
      head_at_500_L_per_h_m: head(500),
      head_at_1200_L_per_h_m: head(1200),
    };
  },
  'irrigation-capacity.also-pump-02': ({
    points,
    at_flow_L_per_h,
  }: {
    readonly points: readonly SmallPoint[];
    readonly at_flow_L_per_h: number | readonly number[];
  }) => {
    const curve = pumpCurve('three-points', points);
    const head = (flow_L_per_h: number) => pumpHead(curve, smallFlow(flow_L_per_h)).head_m;
    return {
      C: curve.form === 'power' ? curve.exponent : undefined,
      head_m: typeof at_flow_L_per_h === 'number' ? head(at_flow_L_per_h) : at_flow_L_per_h.map(head),
    };
  },
  'irrigation-capacity.pump-03': (i: {
    readonly points: readonly US[];
    readonly at_us_gal_per_min: number | readonly number[];
  }) => {
    const curve = pumpCurve(
      'three-points',
      i.points.map((point) => ({
        flow_L_per_h: convert(point.flow_us_gal_per_min, 'us_gal_per_min', 'L_per_h'),
        head_m: convert(point.head_ft, 'ft', 'm'),
      })),
    );
    const head = (flow: number) => convert(pumpHead(curve, usFlow(flow)).head_m, 'm', 'ft');
    return { head_ft: typeof i.at_us_gal_per_min === 'number' ? head(i.at_us_gal_per_min) : i.at_us_gal_per_min.map(head) };
  },
  'irrigation-capacity.pump-04': forEachOfList((i) => {
    const point = parabolaMeetsSystem(
      { shutoff: i['shutoff_head_m'] as number, curvature: -(i['pump_coefficient_m_per_L2_min2'] as number) },
      { staticLift: i['static_lift_m'] as number, coefficient: i['system_coefficient_m_per_L2_min2'] as number },
    );
    return { flow_L_per_min: point.flow, head_m: point.head };
  }),
  'irrigation-capacity.pump-05': (i: {
    readonly points: readonly US[];
    readonly static_lift_ft: number;
    readonly pipe_diameter_in: number;
    readonly pipe_length_ft: number;
    readonly roughness_ft: number;
    readonly kinematic_viscosity_ft2_per_s: number;
  }) => {
    const curve = leastSquaresParabola(
      i.points.map((point) => ({ flow: usFlow(point.flow_us_gal_per_min), head: convert(point.head_ft, 'ft', 'm') })),
    );
    const oneCubicFoot_m3_per_s = convert(1, 'ft3_per_s', 'm3_per_s');
    const coefficient = systemCoefficient_s2_per_m5({
      atFlow_m3_per_s: oneCubicFoot_m3_per_s,
      insideDiameter_m: convert(i.pipe_diameter_in, 'in', 'm'),
      length_m: convert(i.pipe_length_ft, 'ft', 'm'),
      roughness_m: convert(i.roughness_ft, 'ft', 'm'),
      viscosity_m2_per_s: squareMetres(i.kinematic_viscosity_ft2_per_s),
    });
    const point = parabolaMeetsSystem(curve, { staticLift: convert(i.static_lift_ft, 'ft', 'm'), coefficient });
    return {
      system_K_ft_per_cfs2: convert(headAtFlow_m(coefficient, oneCubicFoot_m3_per_s), 'm', 'ft'),
      flow_ft3_per_s: convert(point.flow, 'm3_per_s', 'ft3_per_s'),
      head_ft: convert(point.head, 'm', 'ft'),
    };
  },
  'irrigation-capacity.pump-06': tradePower,
  'irrigation-capacity.pump-08': forEachOfList((i) => {
    const water_W = waterPower_W(smallFlow(i['flow_L_per_h'] as number), i['head_m'] as number, i['density_kg_per_m3'] as number);
    return { hydraulic_power_W: water_W, efficiency: pumpEfficiency(water_W, i['electric_power_W'] as number) };
  }),
  'irrigation-capacity.pump-09': tradePower,
  'irrigation-capacity.pump-10': forEachOfList((i) => {
    const speed = atSpeed(i['speed_ratio'] as number);
    return { flow_ratio: speed.flowRatio, head_ratio: speed.headRatio, power_ratio: speed.powerRatio };
  }),
  'irrigation-capacity.pump-11': forEachOfList((i) => ({
    head_ft: convert(headOfPressure_m(convert(i['pressure_psi'] as number, 'psi', 'Pa')), 'm', 'ft'),
    head_m: headOfPressure_m(convert(i['pressure_kPa'] as number, 'kPa', 'Pa')),
  })),
  'irrigation-capacity.uniformity-01': forEachOfList((i) => ({
    du_low_quarter_percent: percentOf(
      distributionUniformityOfMeans(i['mean_of_low_quarter_us_gal_per_h'] as number, i['mean_of_all_us_gal_per_h'] as number),
    ),
  })),
  'irrigation-capacity.uniformity-02': ({ catch_mL }: { readonly catch_mL: readonly number[] }) => ({
    cu_percent: percentOf(christiansenUniformity(catch_mL)),
  }),
  'irrigation-capacity.uniformity-03': ({ volume_L }: { readonly volume_L: readonly number[] }) => ({
    du_low_quarter_percent: percentOf(distributionUniformity(volume_L)),
    cu_percent: percentOf(christiansenUniformity(volume_L)),
  }),
  'irrigation-capacity.uniformity-04': forEachOfList((i) => ({
    eu_percent: percentOf(
      emissionUniformity({
        manufacturingCv: i['manufacturing_cv'] as number,
        emittersPerPlant: i['emitters_per_plant'] as number,
        leastOverMeanFlow: i['min_over_mean_flow'] as number,
      }),
    ),
  })),
  'irrigation-capacity.uniformity-05': forEachOfList((i) => ({
    gross_depth_in: convert(
      grossDepth_m(convert(i['net_depth_in'] as number, 'in', 'm'), shareOf(i['du_low_quarter_percent'] as number)),
      'm',
      'in',
    ),
  })),
  'irrigation-capacity.uniformity-06': forEachOfList((i) => ({
    flow_ratio: flowRatioOfPressure(i['pressure_ratio'] as number, i['outlet_exponent'] as number),
  })),
  'irrigation-capacity.uniformity-07': ({ flow_L_per_h }: { readonly flow_L_per_h: readonly number[] }) => ({
    du_low_quarter_percent: percentOf(distributionUniformity(flow_L_per_h)),
  }),
  'irrigation-capacity.air-gap-01': forEachOfList((i) => ({
    air_gap_in: convert(airGap_m(convert(i['supply_diameter_in'] as number, 'in', 'm')), 'm', 'in'),
  })),
  'irrigation-capacity.air-gap-02': forEachOfList((i) => ({
    air_gap_mm: convert(airGapBritish_m(convert(i['supply_inside_diameter_mm'] as number, 'mm', 'm')), 'm', 'mm'),
  })),
  'irrigation-capacity.siphon-01': forEachOfList((i) => ({
    flow_L_per_h: convert(
      singleTubeFlow_m3_per_s({
        drivingHead_m: i['level_difference_m'] as number,
        length_m: i['length_m'] as number,
        insideDiameter_m: convert(i['inside_diameter_mm'] as number, 'mm', 'm'),
        lossK: i['sum_of_loss_K'] as number,
        roughness_m: convert(i['roughness_mm'] as number, 'mm', 'm'),
        viscosity_m2_per_s: i['kinematic_viscosity_m2_per_s'] as number,
      }),
      'm3_per_s',
      'L_per_h',
    ),
  })),
  'irrigation-capacity.siphon-02': (i: {
    readonly outlet_elevation_m: number;
    readonly reservoir_level_m: number;
    readonly vented: boolean;
  }) => {
    const test = siphonTest({
      outletElevation_m: i.outlet_elevation_m,
      reservoirLevel_m: i.reservoir_level_m,
      vented: i.vented,
    });
    return { siphons: test.siphons, driving_head_m: test.drivingHead_m };
  },
  'irrigation-capacity.siphon-03': forEachOfList((i) => ({
    volume_L: siphonLoss_L({
      reservoirArea_m2: i['reservoir_area_m2'] as number,
      reservoirLevel_m: i['reservoir_level_m'] as number,
      outletElevation_m: i['outlet_elevation_m'] as number,
      inletElevation_m: i['inlet_elevation_m'] as number,
    }),
  })),
  'irrigation-capacity.siphon-04': forEachOfList((i) => ({
    leak_L_per_h: convert(
      ventLeak_m3_per_s(
        convert(i['hole_diameter_mm'] as number, 'mm', 'm'),
        i['head_m'] as number,
        i['discharge_coefficient'] as number,
      ),
      'm3_per_s',
      'L_per_h',
    ),
  })),
  'irrigation-capacity.rain-01': forEachOfList((i) => ({
    volume_us_gal: convert(
      rainCatch_L({
        area_m2: convert(i['area_ft2'] as number, 'ft2', 'm2'),
        rain_mm: convert(i['rain_in'] as number, 'in', 'mm'),
        catchShare: i['runoff_coefficient'] as number,
      }),
      'L',
      'us_gal',
    ),
  })),
  'irrigation-capacity.also-rain-01': forEachOfList((i) => ({
    volume_us_gal: convert(
      rainCatchByTradeFactor_L({
        area_m2: convert(i['area_ft2'] as number, 'ft2', 'm2'),
        rain_mm: convert(i['rain_in'] as number, 'in', 'mm'),
        catchShare: i['runoff_coefficient'] as number,
        factor_us_gal_per_ft2_in: i['factor_gal_per_ft2_in'] as number,
      }),
      'L',
      'us_gal',
    ),
  })),
  'irrigation-capacity.rain-03': forEachOfList((i) => ({
    volume_L: rainCatch_L({
      area_m2: i['area_m2'] as number,
      rain_mm: i['rain_mm'] as number,
      catchShare: i['runoff_coefficient'] as number,
    }),
  })),
  'irrigation-capacity.rain-04': forEachOfList((i) => {
    const flush = firstFlush(convert(i['area_ft2'] as number, 'ft2', 'm2'), i['gal_per_1000_ft2'] as number);
    return { first_flush_us_gal: convert(flush.volume_L, 'L', 'us_gal'), depth_mm: flush.depth_mm };
  }),
  'irrigation-capacity.rain-05': forEachOfList((i) => ({
    flow_us_gal_per_min: convert(
      roofFlow_L_per_min(convert(i['area_ft2'] as number, 'ft2', 'm2'), convert(i['intensity_in_per_h'] as number, 'in', 'mm')),
      'L_per_min',
      'us_gal_per_min',
    ),
  })),
  'irrigation-capacity.rain-06': forEachOfList((i) => {
    const kept = rainKept({
      area_m2: i['area_m2'] as number,
      rain_mm: i['rain_mm'] as number,
      catchShare: i['runoff_coefficient'] as number,
      firstFlush_mm: i['first_flush_mm'] as number,
      free_L: i['free_capacity_L'] as number,
    });
    return { collected_L: kept.collected_L, overflow_L: kept.overflow_L };
  }),
  'irrigation-capacity.fill-01': forEachOfList((i) => {
    const volume_L = basinRing_L({
      basinDiameter_m: convert(i['basin_diameter_in'] as number, 'in', 'm'),
      bagDiameter_m: convert(i['bag_diameter_in'] as number, 'in', 'm'),
      depth_m: convert(i['depth_in'] as number, 'in', 'm'),
      bagPorosity: i['porosity_of_bag_zone'] as number,
    });
    return { volume_L, minutes: minutesFor(volume_L, i['flow_L_per_h'] as number) };
  }),
  'irrigation-capacity.reservoir-01': forEachOfList((i) => {
    const away = daysAway({
      usable_L: i['usable_volume_L'] as number,
      beds: i['beds'] as number,
      fill_L: i['fill_L'] as number,
      fillsPerDay: i['fills_per_day'] as number,
    });
    return { days: away.days, whole_fills: away.wholeFills };
  }),
  'irrigation-capacity.mosquito-01': () => ({
    conservative_limit_h: STANDING_WATER.limit_h,
    culex_egg_to_adult_days_min: STANDING_WATER.eggToAdultLeast_days,
    culex_egg_to_adult_days_max: STANDING_WATER.eggToAdultMost_days,
    fastest_reported_days: STANDING_WATER.fastestReported_days,
  }),
  'irrigation-capacity.also-mosquito-01': forEachOfList((i) => ({
    days: eggToAdult_days(celsiusOf(i['temperature_F'] as number)),
  })),
  'irrigation-capacity.power-01': forEachOfList((i) => ({
    energy_Wh: loadEnergy_Wh(i['power_W'] as number, i['hours'] as number),
  })),
  'irrigation-capacity.power-02': forEachOfList((i) => {
    const usable_Wh = energyAboveReserve_Wh(
      i['capacity_Wh'] as number,
      i['reserve_fraction'] as number,
      i['inverter_efficiency'] as number,
    );
    return { usable_Wh, hours: hoursFor(usable_Wh, i['load_W'] as number) };
  }),
  'irrigation-capacity.power-03': forEachOfList((i) => ({
    usable_Wh: ratedUsable_Wh(i['volts'] as number, i['amp_hours'] as number, i['usable_fraction'] as number),
  })),
  'irrigation-capacity.power-04': forEachOfList((i) => ({
    panel_W: panelSize_W(i['daily_energy_Wh'] as number, i['peak_sun_hours'] as number, i['system_factor'] as number),
  })),
  'irrigation-capacity.power-05': forEachOfList((i) => ({
    amp_hours: batterySize_Ah({
      daily_Wh: i['daily_energy_Wh'] as number,
      days: i['days'] as number,
      volts_V: i['volts'] as number,
      depthOfDischarge: i['depth_of_discharge'] as number,
      inverterShare: i['inverter_factor'] as number,
      cableShare: i['cable_factor'] as number,
    }),
  })),
  'irrigation-capacity.power-06': forEachOfList((i) => {
    const pump = {
      pump_W: i['pump_W'] as number,
      run_min: i['minutes_per_event'] as number,
      runsPerDay: i['events_per_day'] as number,
    };
    const bare = { controller_W: 0, inverterIdle_W: 0, inverterIdle_h: 24, inverterShare: 1 };
    const controller_W = i['controller_W'] as number;
    return {
      pump_only_Wh: dailyPower({ ...pump, ...bare }).total_Wh,
      with_controller_Wh: dailyPower({ ...pump, ...bare, controller_W }).total_Wh,
      inverter_always_on_Wh: dailyPower({
        ...pump,
        controller_W,
        inverterIdle_W: i['inverter_idle_W'] as number,
        inverterIdle_h: 24,
        inverterShare: i['inverter_efficiency'] as number,
      }).total_Wh,
    };
  }),
  'irrigation-capacity.also-power-01': forEachOfList((i) => {
    const daily_Wh = dailyPower({
      pump_W: i['pump_W'] as number,
      run_min: i['minutes_per_event'] as number,
      runsPerDay: i['events_per_day'] as number,
      controller_W: i['controller_W'] as number,
      inverterIdle_W: 0,
      inverterIdle_h: 0,
      inverterShare: 1,
    }).total_Wh;
    const usable_Wh = usableEnergy_Wh(i['capacity_Wh'] as number, i['usable_fraction'] as number);
    return { daily_Wh, days: daysFor(usable_Wh, daily_Wh) };
  }),
  'irrigation-capacity.power-08': forEachOfList((i) => ({
    left_Wh: afterSelfDischarge_Wh(i['start_Wh'] as number, i['self_discharge_per_month'] as number, i['months'] as number),
  })),
  'irrigation-capacity.power-09': forEachOfList((i) => ({ amps: current_A(i['power_W'] as number, i['volts'] as number) })),
  'irrigation-capacity.power-10': () => ({
    min_F: fahrenheitOf(LITHIUM_CHARGING_C.least_C),
    max_F: fahrenheitOf(LITHIUM_CHARGING_C.most_C),
  }),
};
