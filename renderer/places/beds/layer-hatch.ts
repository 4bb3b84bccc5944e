import type { HatchName } from '../../draw/hatches.tsx';

/** The drafting hatch of a material, by what it is. */
export function hatchOf(material: {
  readonly materialId: string;
  readonly name: string;
  readonly kind: string;
  readonly isOwn: boolean;
}): HatchName {
  const said = `${material.materialId} ${material.name}`.toLowerCase();
  if (/\bmix\b/.test(said)) return 'mix';
  if (material.isOwn || /soil|loam/.test(said)) return 'soil';
  if (/gravel|stone|pumice|perlite|sand/.test(said)) return 'gravel';
  if (/compost|cast|manure|leaf/.test(said)) return 'compost';
  if (/wood|log|branch|roundwood|chip/.test(said)) return 'wood';
  if (material.kind === 'mulch') return 'mulch';
  return 'mix';
}
