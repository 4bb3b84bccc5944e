/** What the computer sends to a phone. */
export type FieldWeek = {
  readonly today: string;
  readonly tasks: readonly {
    readonly key: string;
    readonly kind: string;
    readonly title: string;
    readonly due: string;
    readonly late: boolean;
    readonly places: string;
    readonly note: string;
  }[];
  readonly plantings: readonly {
    readonly plantingId: string;
    readonly name: string;
    readonly inWindow: boolean;
    readonly beds: readonly { readonly bedId: string; readonly code: string }[];
    readonly units: readonly string[];
    readonly unit: string;
  }[];
};

/** What a phone logs. `id` makes sending twice harmless. */
export type FieldEntry =
  | {
      readonly kind: 'harvest';
      readonly id: string;
      readonly date: string;
      readonly plantingId: string;
      readonly bedId: string | null;
      readonly amount: number;
      readonly unit: string;
      readonly note: string;
      readonly confirmed: boolean;
    }
  | {
      readonly kind: 'task';
      readonly id: string;
      readonly date: string;
      readonly taskId: string;
      readonly state: 'done' | 'skipped';
    };

/** An entry on its way: waiting for the computer, or refused by it with a reason. */
export type Queued = { readonly entry: FieldEntry; readonly text: string; readonly refused?: string };
