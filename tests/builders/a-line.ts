import type { LineNetwork } from '../../planner/irrigation/line-network.ts';
import type { LinePlan } from '../../planner/irrigation/line-plan.ts';
import { rowsOfBeds, type WizardInput, wizardLine } from '../../planner/irrigation/line-wizard.ts';
import { pumpCurve } from '../../planner/irrigation/pump-curve.ts';

/** An invented 25 W pump: 2.2 m at no flow, 950 L/h at 1.3 m, 1514 L/h at no head. */
export const smallPumpPoints = [
  { flow_L_per_h: 0, head_m: 2.2 },
  { flow_L_per_h: 950, head_m: 1.3 },
  { flow_L_per_h: 1514, head_m: 0 },
] as const;

export type ASnake = {
  readonly beds: number;
  readonly insideDiameter_m: number;
  readonly outlet_m: number;
  readonly teeK: number;
  readonly openK: number;
  readonly length_m: number;
};

/** One half-inch tube past equal beds, valves open: what the printed table of small lines was computed on. */
export function aSnake(given: Partial<ASnake> = {}): LineNetwork {
  const snake: ASnake = { beds: 8, insideDiameter_m: 0.0127, outlet_m: 0.3, teeK: 1.4, openK: 16, length_m: 1.2, ...given };
  const tube = { insideDiameter_m: snake.insideDiameter_m, roughness_m: 1.5e-6 };
  const beds = Array.from({ length: snake.beds }, (_, at) => at + 1);
  return {
    source: 'PUMP',
    level_m: 0,
    pump: pumpCurve('three-points', smallPumpPoints),
    viscosity_m2_per_s: 1.004e-6,
    tubes: [
      { ...tube, id: 'riser', from: 'PUMP', to: 'T0', length_m: 2, fittingK: 0.5 },
      ...beds.flatMap((at) => [
        { ...tube, id: `M${at}`, from: `T${at - 1}`, to: `T${at}`, length_m: snake.length_m, fittingK: snake.teeK },
        { ...tube, id: `L${at}`, from: `T${at}`, to: `B${at}`, length_m: 0.3, fittingK: 1.8 },
      ]),
    ],
    outlets: beds.map((at) => ({
      id: `bed ${at}`,
      node: `B${at}`,
      outlet_m: snake.outlet_m,
      bore_m: snake.insideDiameter_m,
      lossK: snake.openK,
    })),
  };
}

/** A drawn line: one barrel, one pump, rows of beds. */
export function aPlan(given: Partial<WizardInput> & { readonly rows?: number; readonly bedsInRow?: number } = {}): LinePlan {
  const { rows = 2, bedsInRow = 4, ...wizard } = given;
  const line = wizardLine({
    source: { x_m: 0, y_m: 0 },
    beds: rowsOfBeds({ rows, bedsInRow, spacing_m: 1.2, rowSpacing_m: 1.5 }),
    arrangement: 'snake',
    mainDiameter_m: 0.0127,
    lateralDiameter_m: 0.0127,
    lateral_m: 0.3,
    teeBore_m: 0.0095,
    slackShare: 0.1,
    outlet_m: 0.3,
    riser_m: 2,
    ...wizard,
  });
  return {
    supply: {
      supply: 'reservoir',
      highLevel_m: 0,
      lowLevel_m: -0.3,
      tapHead_m: null,
      tapFlow_L_per_min: null,
      reserveHead_m: 0.1,
      water_C: 20,
    },
    pump: { curveKind: 'three-points', points: smallPumpPoints, power_W: 25, inletHeight_m: -0.4, count: 1 },
    ...line,
  };
}
