import { requirePositive, requireRange } from '../errors.ts';
import { entry, practice, type Working } from '../working.ts';
import { type Asset, bookValue_minor, requireAsset, straightLine_minor_per_year } from './depreciation.ts';

/**
 * Capital recovery factor: the equal yearly payment for each unit lent.
 *
 *   CRF = i (1 + i)^n / ((1 + i)^n - 1),   1 / n where i = 0
 *
 *   i  interest  share a year  0 to 1
 *   n  life      years         above 0
 *
 * Computed with expm1 and log1p, so that very small rates go over into 1 / n without loss.
 * Source: University of Texas, notes ME 353; checked with a published table of factors.
 * @throws InputError naming the field
 */
export function capitalRecoveryFactor(interest_share_per_year: number, life_years: number): number {
  requireRange('interest_share_per_year', interest_share_per_year, 0, 1, '');
  requirePositive('life_years', life_years, 'years');
  if (interest_share_per_year === 0) return 1 / life_years;
  return interest_share_per_year / -Math.expm1(-life_years * Math.log1p(interest_share_per_year));
}

/** Equal yearly payment on a loan: `loan x CRF`. @throws InputError naming the field */
export function loanPayment_minor_per_year(loan_minor: number, interest_share_per_year: number, life_years: number): number {
  requireRange('loan_minor', loan_minor, 0, Infinity, '');
  return loan_minor * capitalRecoveryFactor(interest_share_per_year, life_years);
}

/**
 * Yearly equivalent cost of an asset by capital recovery: depreciation and interest in one.
 *
 *   A = (P - S) CRF(i, n) + S i
 *
 * Never add straight-line depreciation to it.
 * Source: University of Texas, notes ME 353; Iowa State University Extension A3-29.
 * @throws InputError naming the field
 */
export function capitalRecovery_minor_per_year(asset: Asset, interest_share_per_year: number): number {
  requireAsset(asset);
  return (
    (asset.purchase_minor - asset.salvage_minor) * capitalRecoveryFactor(interest_share_per_year, asset.life_years) +
    asset.salvage_minor * interest_share_per_year
  );
}

/**
 * The same cost by way of the books: each year's depreciation and interest on the opening book value, their present
 * value, and that levelled over the life, which equals {@link capitalRecovery_minor_per_year}. Whole years only.
 *
 * Source: engineering-economy textbook identity, worked here.
 * @throws InputError naming the field
 */
export function yearlyCharges(
  asset: Asset,
  interest_share_per_year: number,
): {
  readonly charges_minor: readonly number[];
  readonly presentValue_minor: number;
  readonly levelled_minor_per_year: number;
} {
  const depreciation = straightLine_minor_per_year(asset);
  const years = Math.ceil(asset.life_years);
  const charges = Array.from({ length: years }, (_, at) => {
    const opening = at === 0 ? asset.purchase_minor : bookValue_minor(asset, at);
    return depreciation * Math.min(1, asset.life_years - at) + opening * interest_share_per_year;
  });
  const presentValue = charges.reduce((sum, charge, at) => sum + charge / (1 + interest_share_per_year) ** (at + 1), 0);
  return {
    charges_minor: charges,
    presentValue_minor: presentValue,
    levelled_minor_per_year: presentValue * capitalRecoveryFactor(interest_share_per_year, asset.life_years),
  };
}

/**
 * Real rate of interest: `(1 + nominal) / (1 + inflation) - 1`.
 *
 * Source: Fisher relation, from memory.
 * @throws InputError naming the field
 */
export function realRate_share_per_year(nominal_share_per_year: number, inflation_share_per_year: number): number {
  requireRange('nominal_share_per_year', nominal_share_per_year, 0, 1, '');
  requireRange('inflation_share_per_year', inflation_share_per_year, -0.5, 10, '');
  return (1 + nominal_share_per_year) / (1 + inflation_share_per_year) - 1;
}

/** The subtraction rule for the real rate. Source: Iowa State University Extension A3-29. */
export function realRateBySubtraction_share_per_year(nominal_share_per_year: number, inflation_share_per_year: number): number {
  return nominal_share_per_year - inflation_share_per_year;
}

/** Working of {@link capitalRecovery_minor_per_year}. */
export function explainCapitalRecovery(asset: Asset, interest_share_per_year: number): Working {
  const factor = capitalRecoveryFactor(interest_share_per_year, asset.life_years);
  return {
    title: 'Yearly cost by capital recovery',
    formula: 'A = (P - S) CRF + S i',
    symbols: [
      { symbol: 'P', name: 'price paid', figure: { value: asset.purchase_minor, unit: 'minor' }, origin: entry() },
      { symbol: 'S', name: 'salvage value', figure: { value: asset.salvage_minor, unit: 'minor' }, origin: entry() },
      { symbol: 'n', name: 'service life', figure: { value: asset.life_years, unit: 'years' }, origin: practice() },
      { symbol: 'i', name: 'interest a year', figure: { value: interest_share_per_year, unit: 'share' }, origin: entry() },
    ],
    steps: [
      {
        text: 'Capital recovery factor CRF = i (1 + i)^n / ((1 + i)^n - 1)',
        figures: `i = ${interest_share_per_year}, n = ${asset.life_years}`,
        result: { value: factor, unit: '' },
      },
    ],
    result: { value: capitalRecovery_minor_per_year(asset, interest_share_per_year), unit: 'minor' },
    sources: ['University of Texas, notes ME 353', 'Iowa State University Extension, Ag Decision Maker A3-29'],
    notes: ['Depreciation and interest are both in it.'],
  };
}
