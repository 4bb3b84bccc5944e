/** What the help of a place says: what it is for, what is computed there and from which sources, which cautions hold. */
export type PlaceHelp = {
  readonly what: string;
  readonly steps: readonly string[];
  readonly computes: readonly { readonly name: string; readonly how: string; readonly source: string }[];
  /** Ids of the cautions shown in this place. */
  readonly cautions: readonly string[];
};
