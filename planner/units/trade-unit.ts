/**
 * The unit symbol by which an amount of a material is printed and entered. What is counted by volume is loose: a US reader
 * buys it by the cubic foot and yard, not by the gallon (common practice, no source).
 */
export const tradeUnit = (baseUnit: string): string => (baseUnit === 'L' ? 'bulk_L' : baseUnit);
