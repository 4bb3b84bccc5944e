/** US dollars of a case as minor units and back: notation, no arithmetic of the trade. A price may be a part of a cent. */
export const minor = (usd: number): number => Number((usd * 100).toPrecision(15));
export const usd = (minorUnits: number): number => minorUnits / 100;
export const usdAll = (minorUnits: readonly number[]): number[] => minorUnits.map(usd);
