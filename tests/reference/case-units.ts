/** A share as the percent that a case prints, and back: notation, no arithmetic of the trade. */
export const percentOf = (share: number): number => share * 100;
export const shareOf = (percent: number): number => percent / 100;

/** Dollars as cents, and back: notation. */
export const centsOf = (usd: number): number => usd * 100;
export const usdOf = (cents: number): number => cents / 100;
