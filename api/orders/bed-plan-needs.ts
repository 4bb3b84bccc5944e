import type { FarmDb } from '../../db/file/open-farm.ts';
import { bedPlans } from '../../db/repositories/bed-plans.ts';
import { designLayers, designParts } from '../../db/repositories/designs.ts';
import type { MaterialFacts } from '../../db/repositories/stock.ts';
import type { IsoDate } from '../../planner/calendar.ts';
import { mulchVolume_L } from '../../planner/orders/mulch-volume.ts';
import type { FarmNeed } from '../../planner/orders/needs.ts';
import { bedFigures } from '../../planner/soil/bed-figures.ts';
import { recipeOf, specOfDesign } from '../beds/bed-spec-of.ts';
import { inBaseUnit, type OpenNeed } from './gathered.ts';

/** Parts, fill and mulch of the beds that are to be built up to a day, by plan. The farm's own soil is dug, not bought. */
export function bedPlanNeeds(db: FarmDb, facts: MaterialFacts, until: IsoDate): readonly (FarmNeed | OpenNeed)[] {
  const layers = Map.groupBy(designLayers(db), (layer) => layer.ownerId);
  return bedPlans(db)
    .filter(({ plan }) => plan.wantedDate <= until)
    .flatMap(({ plan, design }): readonly (FarmNeed | OpenNeed)[] => {
      const recipe = recipeOf(layers.get(design.id) ?? []);
      const figures = bedFigures(specOfDesign(design), recipe, design.barrierOverlap_m);
      const beds = `${plan.count} ${plan.count === 1 ? 'bed' : 'beds'} of ${design.name}`;
      const need = (what: string, materialId: string) => ({
        key: `plan:${plan.id}:${what}:${materialId}`,
        source: 'new-bed' as const,
        materialId,
        reason: `${what === 'part' ? 'To build' : what === 'fill' ? 'To fill' : 'To mulch'} ${beds}`,
        wanted: plan.wantedDate as IsoDate,
      });
      const fill = Map.groupBy(
        figures.layers.flatMap((layer, at) => {
          const part = recipe[at];
          return part === undefined || part.isOwn || layer.loose_L === 0
            ? []
            : [{ materialId: part.materialId, loose_L: layer.loose_L }];
        }),
        (each) => each.materialId,
      );
      const { mulchMaterialId, mulchDepth_m } = design;
      return [
        ...[...Map.groupBy(designParts(db, design.id), (part) => part.materialId)].map(
          ([materialId, of]): FarmNeed => ({
            ...need('part', materialId),
            amount: plan.count * of.reduce((sum, part) => sum + part.amount, 0),
          }),
        ),
        ...[...fill].map(([materialId, of]) =>
          inBaseUnit(facts, {
            ...need('fill', materialId),
            loose_L: plan.count * of.reduce((sum, layer) => sum + layer.loose_L, 0),
          }),
        ),
        ...(mulchMaterialId === null || mulchDepth_m === null
          ? []
          : [
              inBaseUnit(facts, {
                ...need('mulch', mulchMaterialId),
                loose_L: plan.count * mulchVolume_L(figures.area_m2, mulchDepth_m),
              }),
            ]),
      ];
    });
}
