declare const idOf: unique symbol;

/** An identifier that cannot be taken for another kind's. Cast in two places only: row mapper and input schema. */
export type Id<Kind extends string> = string & { readonly [idOf]: Kind };

export type BlockId = Id<'block'>;
export type BedId = Id<'bed'>;
export type DesignId = Id<'design'>;
export type MaterialId = Id<'material'>;
export type SupplierId = Id<'supplier'>;
export type OfferId = Id<'offer'>;
export type CropId = Id<'crop'>;
export type VarietyId = Id<'variety'>;
export type SeasonId = Id<'season'>;
export type PlantingId = Id<'planting'>;
export type LineId = Id<'line'>;
export type NodeId = Id<'node'>;
