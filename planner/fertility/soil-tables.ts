/** How well a shipped figure is known: read in its source, from memory, or common practice without a source. */
export type Standing = 'seen' | 'memory' | 'practice';

export type Sourced = { readonly status: Standing; readonly source?: string };

/** Lime for a buffer reading, US short tons an acre of 100-score lime, by target pH as text. */
export type BufferLimeTable = Sourced & {
  readonly depth_in: number;
  readonly rows: readonly { readonly buffer_ph: number; readonly ton_per_acre: Readonly<Record<string, number>> }[];
};

/** Lime by soil pH and texture, to pH 6.5; the first table is in lb per 100 ft2, the second in lb per 1,000 ft2. */
export type TextureLimeTable = Sourced & { readonly rows: Readonly<Record<string, Readonly<Record<string, number>>>> };

/** Elemental sulfur, lb an acre, by soil pH and texture. */
export type SulfurTable = Sourced & {
  readonly rows: Readonly<Record<string, { readonly sand: number; readonly loam: number; readonly clay: number }>>;
};

export type RemovalRow = {
  readonly crop: string;
  readonly crops_csv_id: string;
  readonly ndb: string;
  readonly water_pct: number;
  readonly refuse_pct: number | null;
  readonly protein_g_per_100g: number;
  readonly P_mg_per_100g: number;
  readonly K_mg_per_100g: number;
  readonly Ca_g_per_kg: number;
  readonly Mg_g_per_kg: number;
};

export type FloridaRow = {
  readonly crop: string;
  readonly target_ph: number;
  readonly N: number;
  readonly P2O5: Readonly<Record<string, number>>;
  readonly K2O: Readonly<Record<string, number>>;
};

/** N as a range; P2O5 and K2O at low, medium, high and very high soil test. lb an acre. */
export type ClassRatesRow = {
  readonly crop: string;
  readonly N_min: number;
  readonly N_max: number;
  readonly P2O5: readonly number[];
  readonly K2O: readonly number[];
};

export type Feedstock = {
  readonly material: string;
  readonly N_pct_dry: number;
  readonly c_to_n: number;
  readonly moisture_pct: number;
  readonly lb_per_gal: number;
};

/** Upper bounds of each class; the last class has none (`null`). */
export type SaltClasses = Sourced & {
  readonly upper_bounds: {
    readonly classes: readonly string[];
    readonly '1:2': readonly (number | null)[];
    readonly SME: readonly (number | null)[];
    readonly 'pour-through': readonly (number | null)[];
  };
};

/** The parts of `resources/soil-tables.json` that this folder reads, as they are printed there. */
export type SoilTables = {
  readonly lime_sikora_oregon: BufferLimeTable;
  readonly lime_smp_classic: BufferLimeTable;
  readonly lime_by_texture_to_ph_6_5: readonly TextureLimeTable[];
  readonly sulfur_to_ph_4_5_lb_per_acre: SulfurTable;
  readonly sulfur_to_ph_6_5_lb_per_acre: SulfurTable;
  readonly fertilizer_by_class_florida_lb_per_acre: Sourced & { readonly rows: readonly FloridaRow[] };
  readonly fertilizer_by_class_midatlantic_lb_per_acre: Sourced & { readonly rows: readonly ClassRatesRow[] };
  readonly removal_by_harvested_part: Sourced & { readonly rows: readonly RemovalRow[] };
  readonly feedstocks: Sourced & { readonly rows: readonly Feedstock[] };
  readonly decay_series_organic_N: Sourced & { readonly rows: Readonly<Record<string, readonly number[]>> };
  readonly ec_classes_media_ds_m: SaltClasses;
  readonly sar_classes: Sourced & {
    readonly upper_bounds: { readonly classes: readonly string[]; readonly sar: readonly (number | null)[] };
  };
};
