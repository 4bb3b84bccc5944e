import { requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { computed, entry, type Working } from '../working.ts';
import { bedDose_kg } from './bed-dose.ts';
import { bufferLime } from './buffer-lime.ts';
import { limingMaterial_kg } from './liming-material.ts';
import { mehlichAcidity_meq_per_100cm3, mehlichLime } from './mehlich-lime.ts';
import type { SoilTables } from './soil-tables.ts';
import { sulfurRate, sulfurTexture } from './sulfur.ts';
import { textureLime_kg_per_m2 } from './texture-lime.ts';

export type PhPlanInput = {
  readonly tables: SoilTables;
  readonly kind: 'soil' | 'media';
  readonly soilPh: number;
  readonly bufferPh: number | null;
  /** `sikora`, `smp` or `mehlich`. */
  readonly bufferMethod: string | null;
  readonly texture: string;
  readonly targetPh: number;
  readonly area_m2: number;
  /** Depth that lime is worked into. */
  readonly depth_m: number;
  /** 100-score lime put on since the sample was taken. */
  readonly limeSince_kg_per_m2: number;
  /** Worth of the lime to be used, and the share of sulfur in the other. */
  readonly limeWorthShare: number;
  readonly sulfurShare: number;
};

export type PhPlan = {
  readonly act: 'none' | 'lime' | 'sulfur';
  readonly method: string;
  /** For the bed: 100-score lime or pure sulfur, and the material to weigh out. */
  readonly pure_kg: number;
  readonly material_kg: number;
  readonly rate_kg_per_m2: number;
  readonly applications: number;
  readonly heldAtEdge: boolean;
  readonly source: string;
  readonly note: string;
};

/** A pH this near its target is left alone: the electrode reads no finer. Common practice, no source. */
const LEAVE_ALONE_PH = 0.15;
/** Sulfur on bare ground in one go, 20 lb per 1,000 ft2. Common practice, no source. */
const MOST_SULFUR_KG_PER_M2 = convert(20, 'lb_per_1000ft2', 'kg_per_m2');
/** 3 to 6 kg of ground lime bring a cubic metre of peat mix from about pH 4 to 6. Common practice, no source. */
const MEDIA_LIME_KG_PER_M3_PER_PH = 2.25;

/**
 * What a bed's pH asks for: lime or sulfur, never both, as one dose for the bed and its split.
 *
 *   lime material = rate x area x depth/table depth / worth      sulfur = rate x area x depth/0.17 m / purity
 *
 * Method of lime by what the sheet gives: buffer pH by its own table, else texture alone (a rough guide); media by the
 * peat rule. Lime over 10 lb/100 ft2 is given in two, over 20 in three parts, six months apart (Penn State, home garden).
 * @throws InputError on a pH that cannot be
 */
export function phPlan(input: PhPlanInput): PhPlan {
  requireRange('soilPh', input.soilPh, 2.5, 10.5, '');
  requireRange('targetPh', input.targetPh, 4.5, 8, '');
  requireRange('area_m2', input.area_m2, 0, 100_000, 'm²');
  requireRange('depth_m', input.depth_m, 0.02, 1.5, 'm');
  if (Math.abs(input.soilPh - input.targetPh) <= LEAVE_ALONE_PH) return none('The pH is at its target.');
  return input.soilPh < input.targetPh ? limePlan(input) : sulfurPlan(input);
}

function limePlan(input: PhPlanInput): PhPlan {
  const { rate_kg_per_m2, heldAtEdge, method, source: from } = limeRate(input);
  const left_kg_per_m2 = Math.max(0, rate_kg_per_m2 - input.limeSince_kg_per_m2);
  if (left_kg_per_m2 === 0) return { ...none('The lime put on since the test covers it.'), method, source: from };
  const pure_kg = bedDose_kg(left_kg_per_m2, input.area_m2);
  const per100_lb = convert(left_kg_per_m2, 'kg_per_m2', 'lb_per_1000ft2') / 10;
  return {
    act: 'lime',
    method,
    pure_kg,
    material_kg: limingMaterial_kg(pure_kg, input.limeWorthShare),
    rate_kg_per_m2: left_kg_per_m2,
    applications: per100_lb > 20 ? 3 : per100_lb > 10 ? 2 : 1,
    heldAtEdge,
    source: from,
    note: 'Weeks before sowing, worked in, watered. Not together with sulfur, nor with fresh manure or ammonium.',
  };
}

/** 100-score lime for the depth it is worked into. */
function limeRate(input: PhPlanInput) {
  const { tables, soilPh, targetPh, depth_m } = input;
  if (input.kind === 'media')
    return {
      rate_kg_per_m2: MEDIA_LIME_KG_PER_M3_PER_PH * (targetPh - soilPh) * depth_m,
      heldAtEdge: false,
      method: 'peat mix, 2.25 kg/m3 for each pH step',
      source: 'common practice, no source: 3 to 6 kg/m³ from about pH 4 to 6',
    };
  if (input.bufferPh !== null && input.bufferMethod === 'mehlich' && targetPh <= 6.6) {
    const acidity_meq_per_100cm3 = mehlichAcidity_meq_per_100cm3(input.bufferPh);
    const { lime_kg_per_m2 } = mehlichLime({ soilPh, targetPh, acidity_meq_per_100cm3, credit_kg_per_m2: 0 });
    return {
      rate_kg_per_m2: (lime_kg_per_m2 * depth_m) / convert(8, 'in', 'm'),
      heldAtEdge: false,
      method: 'Mehlich buffer',
      source: 'North Carolina Department of Agriculture, notes to the Mehlich lime table',
    };
  }
  if (input.bufferPh !== null && (input.bufferMethod === 'sikora' || input.bufferMethod === 'smp')) {
    const table = input.bufferMethod === 'smp' ? tables.lime_smp_classic : tables.lime_sikora_oregon;
    const { lime_kg_per_m2, tableDepth_m, heldAtEdge } = bufferLime({ table, bufferPh: input.bufferPh, targetPh, soilPh });
    return {
      rate_kg_per_m2: (lime_kg_per_m2 * depth_m) / tableDepth_m,
      heldAtEdge,
      method: input.bufferMethod === 'smp' ? 'SMP buffer' : 'Sikora buffer',
      source: `${table.source ?? ''}${table.status === 'memory' ? ', from memory' : ''}`,
    };
  }
  const full = textureLime_kg_per_m2({ tables: tables.lime_by_texture_to_ph_6_5, soilPh, texture: input.texture });
  const reach = Math.min(1, (targetPh - soilPh) / Math.max(0.1, 6.5 - soilPh));
  return {
    rate_kg_per_m2: (full * reach * depth_m) / convert(6.67, 'in', 'm'),
    heldAtEdge: soilPh < 4,
    method: 'texture only, a rough guide',
    source: 'garden liming tables by texture: rough, ask for a buffer test',
  };
}

function sulfurPlan(input: PhPlanInput): PhPlan {
  if (input.kind === 'media')
    return { ...none('A medium above its target is leached or renewed rather than given sulfur.'), method: 'media' };
  const { sulfur_kg_per_m2, heldAtEdge } = sulfurRate({
    toPh4_5: input.tables.sulfur_to_ph_4_5_lb_per_acre,
    toPh6_5: input.tables.sulfur_to_ph_6_5_lb_per_acre,
    soilPh: input.soilPh,
    targetPh: input.targetPh,
    texture: sulfurTexture(input.texture),
  });
  const rate_kg_per_m2 = (sulfur_kg_per_m2 * input.depth_m) / convert(6.67, 'in', 'm');
  const pure_kg = bedDose_kg(rate_kg_per_m2, input.area_m2);
  return {
    act: pure_kg > 0 ? 'sulfur' : 'none',
    method: 'texture table',
    pure_kg,
    material_kg: pure_kg / Math.max(0.05, input.sulfurShare),
    rate_kg_per_m2,
    applications: Math.max(1, Math.ceil(rate_kg_per_m2 / MOST_SULFUR_KG_PER_M2 - 1e-9)),
    heldAtEdge,
    source: 'Michigan State University data to pH 4.5; to pH 6.5 from memory of vegetable handbooks',
    note: 'Works over months, by bacteria in warm moist soil. No use where the soil holds free lime: test for it. Not together with lime.',
  };
}

const none = (note: string): PhPlan => ({
  act: 'none',
  method: '',
  pure_kg: 0,
  material_kg: 0,
  rate_kg_per_m2: 0,
  applications: 0,
  heldAtEdge: false,
  source: '',
  note,
});

/** The working of the material to weigh out. */
export function explainPhPlan(input: PhPlanInput): Working {
  const plan = phPlan(input);
  const worth = plan.act === 'sulfur' ? input.sulfurShare : input.limeWorthShare;
  return {
    title: plan.act === 'sulfur' ? 'Sulfur for the bed' : 'Lime for the bed',
    formula: 'dose = (rate − lime since the test) × A ÷ worth',
    symbols: [
      { symbol: 'pH', name: 'soil pH', figure: { value: input.soilPh, unit: '' }, origin: entry('the soil test') },
      ...(input.bufferPh === null
        ? []
        : [{ symbol: 'BpH', name: 'buffer pH', figure: { value: input.bufferPh, unit: '' }, origin: entry('the soil test') }]),
      { symbol: 'target', name: 'wanted pH', figure: { value: input.targetPh, unit: '' }, origin: entry('the feeding plan') },
      { symbol: 'D', name: 'depth worked in', figure: { value: input.depth_m, unit: 'm' }, origin: computed('the bed') },
      { symbol: 'A', name: 'area', figure: { value: input.area_m2, unit: 'm2' }, origin: computed('the bed') },
      { symbol: 'worth', name: 'worth of the material', figure: { value: worth, unit: 'share' }, origin: entry('the material') },
    ],
    steps: [
      {
        text: `Rate by ${plan.method || 'no method'}`,
        figures: 'table(BpH, target) × D ÷ table depth',
        result: { value: plan.rate_kg_per_m2, unit: 'kg_per_m2' },
      },
      { text: 'Pure dose for the bed', figures: 'rate × A', result: { value: plan.pure_kg, unit: 'kg' } },
    ],
    result: { value: plan.material_kg, unit: 'kg' },
    sources: plan.source === '' ? [] : [plan.source],
    notes: [plan.note, ...(plan.heldAtEdge ? ['The reading lies outside the table; its edge was taken.'] : [])],
  };
}
