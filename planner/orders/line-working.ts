import { entry, library, type Working } from '../working.ts';

export type OrderLineInput = {
  readonly material: string;
  readonly package: string;
  /** The material's base unit: of the needs, the stock and what a package holds. */
  readonly unit: string;
  readonly needs: readonly { readonly reason: string; readonly amount: number }[];
  readonly onHand: number;
  /** Ordered and not here yet. */
  readonly onTheWay: number;
  /** What the list's other packages of the same material hold together. */
  readonly otherPackages: number;
  readonly packageAmount: number;
  readonly packages: number;
  readonly price_minor: number;
};

/** What is still to be covered by this line's packages; never below nothing. */
export function leftForLine(input: OrderLineInput): number {
  const needed = input.needs.reduce((sum, need) => sum + need.amount, 0);
  return Math.max(0, needed - Math.max(0, input.onHand) - input.onTheWay - input.otherPackages);
}

/** The fewest whole packages of this size that cover what is left. */
export function fewestPackages(input: OrderLineInput): number {
  return Math.ceil(leftForLine(input) / input.packageAmount - 1e-9);
}

const SHOWN_NEEDS = 12;

/**
 * Why a line of the shopping list asks for so many packages.
 *
 *   n >= (sum of needs - on hand - on the way - other packages) / package
 *
 * The search may buy more than the fewest packages, to reach a price break or free delivery; the working then says so.
 */
export function explainOrderLine(input: OrderLineInput): Working {
  const needed = input.needs.reduce((sum, need) => sum + need.amount, 0);
  const left = leftForLine(input);
  const fewest = fewestPackages(input);
  const shown = input.needs.slice(0, SHOWN_NEEDS);
  const rest = input.needs.slice(SHOWN_NEEDS).reduce((sum, need) => sum + need.amount, 0);
  return {
    title: `${input.material}: ${input.package}`,
    formula:
      input.onTheWay > 0
        ? 'n ≥ (Σ needs − on hand − on the way − other packages) ÷ package'
        : 'n ≥ (Σ needs − on hand − other packages) ÷ package',
    symbols: [
      ...shown.map((need, at) => ({
        symbol: `need ${at + 1}`,
        name: need.reason,
        figure: { value: need.amount, unit: input.unit },
        origin: entry('the season’s needs'),
      })),
      ...(rest > 0
        ? [
            {
              symbol: '…',
              name: `${input.needs.length - SHOWN_NEEDS} more needs`,
              figure: { value: rest, unit: input.unit },
              origin: entry('the season’s needs'),
            },
          ]
        : []),
      {
        symbol: 'on hand',
        name: 'in stock',
        figure: { value: Math.max(0, input.onHand), unit: input.unit },
        origin: entry('stock ledger'),
      },
      ...(input.onTheWay > 0
        ? [
            {
              symbol: 'on the way',
              name: 'ordered and not here yet',
              figure: { value: input.onTheWay, unit: input.unit },
              origin: entry('purchases'),
            },
          ]
        : []),
      {
        symbol: 'other packages',
        name: 'other packages on the list',
        figure: { value: input.otherPackages, unit: input.unit },
        origin: entry('the list'),
      },
      {
        symbol: 'package',
        name: input.package,
        figure: { value: input.packageAmount, unit: input.unit },
        origin: library('the offer'),
      },
    ],
    steps: [
      { text: 'needs together', figures: `${input.needs.length} needs`, result: { value: needed, unit: input.unit } },
      {
        text: 'left to buy',
        figures:
          input.onTheWay > 0
            ? 'less what is on hand, on the way and in other packages'
            : 'less what is on hand and in other packages',
        result: { value: left, unit: input.unit },
      },
      { text: 'fewest whole packages', figures: 'rounded up', result: { value: fewest, unit: '' } },
      {
        text: 'cost of the line',
        figures: `${input.packages} packages`,
        result: { value: input.packages * input.price_minor, unit: 'minor' },
      },
    ],
    result: { value: input.packages, unit: '' },
    sources: [],
    notes:
      input.packages > fewest
        ? [
            'More than the fewest packages: chosen by the search for a price break, free delivery or a mix that costs less in all, or set by hand.',
          ]
        : input.packages < fewest
          ? [
              'Fewer than the needs ask for: set by hand, a stand-in serves the rest, or the needs changed since the list was made.',
            ]
          : [],
  };
}
