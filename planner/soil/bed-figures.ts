import {
  type BedSpec,
  basinOfBed,
  fillFrom_m,
  formOfBed,
  outlineOfBed,
  requireBedSpec,
  withBedFields,
} from '../beds/bed-spec.ts';
import { bedWater_L } from '../beds/bed-water.ts';
import { massOf_kg, WATER_KG_PER_M3 } from '../beds/density.ts';
import { footprint_m2, plainArea_m2 } from '../beds/footprint.ts';
import { outlineAt } from '../beds/form.ts';
import { perimeter_m } from '../beds/perimeter.ts';
import { volumeTo_L } from '../beds/volume.ts';
import { wallArea_m2 } from '../beds/wall-area.ts';
import { weedBarrier } from '../beds/weed-barrier.ts';
import type { MaterialId } from '../ids.ts';
import { significant } from '../units/significant.ts';
import { computed, type Working } from '../working.ts';
import { bedWeight, type WeighedLayer } from './bed-weight.ts';
import { type FilledLayer, fillLayers, type LayerAmount } from './layers.ts';

/** A layer of the recipe with what is known of its material. */
export type FigureLayer = {
  readonly materialId: MaterialId;
  readonly name: string;
  readonly amount: LayerAmount;
  readonly settlingShare: number;
  readonly dryDensity_kg_per_m3: number | null;
  readonly moistDensity_kg_per_m3: number | null;
  readonly porosityShare: number | null;
};

export type BedFigures = {
  readonly area_m2: number;
  readonly perimeter_m: number;
  /** Settled fill, all layers. */
  readonly fill_L: number;
  /** Loose material to place for it. */
  readonly loose_L: number;
  readonly wall_m2: number | null;
  readonly barrier_m2: number | null;
  readonly water_L: number;
  /** Area that rests on the ground or floor. */
  readonly contact_m2: number;
  readonly layers: readonly FilledLayer[];
  /** Null while a layer's density is not known. */
  readonly dry_kg: number | null;
  readonly moist_kg: number | null;
  /** Fill full of water, and the water standing in basin or reservoir. */
  readonly wet_kg: number | null;
  readonly load_kg_per_m2: number | null;
};

/**
 * All that follows from a bed's measures and its fill recipe.
 * @throws InputError with every fault at its field
 */
export function bedFigures(spec: BedSpec, recipe: readonly FigureLayer[], barrierOverlap_m: number | null = null): BedFigures {
  requireBedSpec(spec);
  return withBedFields(() => {
    const form = formOfBed(spec);
    const outline = outlineOfBed(spec);
    const layers = fillLayers({ form, from_m: fillFrom_m(spec), to_m: spec.fillDepth_m }, recipe);
    const area_m2 = footprint_m2(outline);
    const water_L = bedWater_L(spec);
    const contact_m2 = contactArea_m2(spec);
    const weighed = weighedLayers(recipe, layers);
    const weight = weighed === undefined ? null : bedWeight(weighed);
    const wet_kg = weight === null ? null : weight.saturated_kg + freeWater_kg(spec, water_L);
    return {
      area_m2,
      perimeter_m: perimeter_m(outline),
      fill_L: volumeTo_L(form, spec.fillDepth_m),
      loose_L: layers.reduce((sum, layer) => sum + layer.loose_L, 0),
      wall_m2: form.solid === 'straight' || form.solid === 'tapered' ? wallArea_m2(form) : null,
      barrier_m2: barrierOverlap_m === null ? null : weedBarrier({ outline, reach_m: barrierOverlap_m, overlap_m: 0 }).area_m2,
      water_L,
      contact_m2,
      layers,
      dry_kg: weight?.dry_kg ?? null,
      moist_kg: weight?.moist_kg ?? null,
      wet_kg,
      load_kg_per_m2: wet_kg === null ? null : wet_kg / contact_m2,
    };
  });
}

/** Gravel of a reservoir is a layer and is weighed full of water already; basins and void formers hold water beside the fill. */
function freeWater_kg(spec: BedSpec, water_L: number): number {
  const isInFill = spec.watering === 'reservoir' && fillFrom_m(spec) === 0;
  return isInFill ? 0 : massOf_kg(water_L, WATER_KG_PER_M3);
}

/** What rests on the floor: the basin where there is one, else the bed's own floor. */
export function contactArea_m2(spec: BedSpec): number {
  const basin = basinOfBed(spec);
  return basin === undefined ? plainArea_m2(outlineAt(formOfBed(spec), 0)) : plainArea_m2(outlineAt(basin, 0));
}

/** The layers ready to be weighed; undefined while a density is missing. */
export function weighedLayers(
  recipe: readonly FigureLayer[],
  layers: readonly FilledLayer[],
): readonly WeighedLayer[] | undefined {
  const weighed: WeighedLayer[] = [];
  for (const [at, layer] of layers.entries()) {
    const part = recipe[at];
    if (part === undefined || part.dryDensity_kg_per_m3 === null) return undefined;
    weighed.push({
      name: part.name,
      loose_L: layer.loose_L,
      settled_L: layer.settled_L,
      dryDensity_kg_per_m3: part.dryDensity_kg_per_m3,
      ...(part.moistDensity_kg_per_m3 === null ? {} : { moistDensity_kg_per_m3: part.moistDensity_kg_per_m3 }),
      ...(part.porosityShare === null ? {} : { porosityShare: part.porosityShare }),
    });
  }
  return weighed;
}

/** Load of a bed on its floor: wet weight over the area that rests on it. @throws InputError as {@link bedFigures} */
export function explainBedLoad(spec: BedSpec, recipe: readonly FigureLayer[]): Working | undefined {
  const figures = bedFigures(spec, recipe);
  if (figures.load_kg_per_m2 === null || figures.wet_kg === null) return undefined;
  const result = { value: figures.load_kg_per_m2, unit: 'kg_per_m2' };
  return {
    title: 'Load on the floor',
    formula: 'q = M/A',
    symbols: [
      {
        symbol: 'M',
        name: 'fill full of water, with the water that stands beside it',
        figure: { value: figures.wet_kg, unit: 'kg' },
        origin: computed('weight of the fill'),
      },
      {
        symbol: 'A',
        name: 'area that rests on the floor',
        figure: { value: figures.contact_m2, unit: 'm2' },
        origin: computed('basin or floor of the bed'),
      },
    ],
    steps: [
      {
        text: 'Weight over area',
        figures: `${significant(figures.wet_kg, 3)} kg ÷ ${significant(figures.contact_m2, 3)} m²`,
        result,
      },
    ],
    sources: ['Definition'],
    notes: [
      'The bed’s fill and water only: not its frame, plants, people, snow or rain. Small feet press harder on one place.',
      'A structural engineer must check a deck, balcony or roof before it is loaded.',
    ],
    result,
  };
}
