/** A share as the percent that a case prints, and back: notation, no arithmetic of the trade. */
export const percentOf = (share: number): number => share * 100;
export const shareOf = (percent: number): number => percent / 100;
