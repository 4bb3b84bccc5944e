import { type BedSpec, fillFrom_m, formOfBed, requireBedSpec, withBedFields } from '../../../planner/beds/bed-spec.ts';
import { InputError } from '../../../planner/errors.ts';
import { fillLayers, type LayerAmount } from '../../../planner/soil/layers.ts';
import type { UnitSystem } from '../../../planner/units/system.ts';
import { faultText } from '../../client/failure.ts';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import type { DesignEntry } from './design-sheet.tsx';
import type { Materials } from './layer-fields.tsx';
import { type SectionBed, SectionDrawing } from './section-drawing.tsx';

/** The cross-section of a design while it is being written; what does not fit is told beneath it at once. */
export function DesignPreview({ entry, materials }: { readonly entry: DesignEntry; readonly materials: Materials }) {
  const { system } = useReader();
  const drawn = sectionOrFault(entry, materials, system);
  return typeof drawn === 'string' ? (
    <p className="soft" role="status">
      {drawn}
    </p>
  ) : (
    <SectionDrawing bed={drawn} />
  );
}

function sectionOrFault({ values, layers }: DesignEntry, materials: Materials, system: UnitSystem): SectionBed | string {
  const spec: BedSpec = { ...values };
  const known = new Map(materials.map((material) => [material.materialId, material]));
  try {
    requireBedSpec(spec);
    const space = { form: formOfBed(spec), from_m: fillFrom_m(spec), to_m: spec.fillDepth_m };
    const recipe = layers.map((layer) => ({
      amount: amountOf(layer),
      settlingShare: layer.settlingShare ?? known.get(layer.materialId)?.settlingFirstShare ?? 0,
    }));
    const filled = withBedFields(() => fillLayers(space, recipe));
    return {
      label: values.name === '' ? say('the new design') : values.name,
      spec,
      mulchDepth_m: values.mulchDepth_m,
      layers: filled.map((layer, at) => {
        const materialId = layers[at]?.materialId ?? '';
        const material = known.get(materialId);
        return { ...layer, materialId, name: material?.name ?? '', kind: material?.kind ?? '', isOwn: material?.own ?? false };
      }),
    };
  } catch (error) {
    if (error instanceof InputError) return error.faults.map((fault) => faultText(fault, system)).join(' ');
    throw error;
  }
}

function amountOf({ amountKind, amount }: DesignEntry['layers'][number]): LayerAmount {
  const given = amount ?? 0;
  if (amountKind === 'depth') return { kind: 'depth', depth_m: given };
  if (amountKind === 'share') return { kind: 'share', share: given };
  return amountKind === 'volume' ? { kind: 'volume', settled_L: given } : { kind: 'rest' };
}
