/** A figure with a unit of its own, where the figures of one column have several. */
export type Amount = { readonly amount: number; readonly unit: string };

/** A figure, text or date in a report's table. Plain figures carry the canonical unit of their column. */
export type Cell = string | number | Amount | null;

export type ReportColumn = {
  readonly head: string;
  /** Canonical unit of the figures in it (`m2`, `L`, `minor` ...), '' for plain numbers, null for text. */
  readonly unit: string | null;
  /** Name of the column in the CSV, with the unit in it. */
  readonly name: string;
  /** Only in the CSV, where each figure's unit stands beside it. */
  readonly onlyInFile?: true;
};

export type ReportTable = {
  readonly name: string;
  readonly title: string;
  readonly columns: readonly ReportColumn[];
  readonly rows: readonly (readonly Cell[])[];
};

export type ReportBar = { readonly label: string; readonly parts: readonly { readonly name: string; readonly value: number }[] };
export type ReportChart = { readonly title: string; readonly unit: string; readonly bars: readonly ReportBar[] };

/** One of the four questions of a season, answered. */
export type ReportSection = {
  readonly title: string;
  /** Sentences that say what the tables below mean. */
  readonly says: readonly string[];
  readonly charts: readonly ReportChart[];
  readonly tables: readonly ReportTable[];
  /** By their names in `resources/cautions.json`. */
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
};
