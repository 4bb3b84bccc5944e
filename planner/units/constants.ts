/**
 * Exact definitions, from which every other factor is formed.
 * Sources: NIST Handbook 44, Appendix C (inch, gallon, bushel, pound); the litre and the hectare by the SI brochure;
 * the imperial gallon by the UK Weights and Measures Act 1985 (memory).
 */
export const M_PER_INCH = 0.0254;
export const M_PER_FOOT = 12 * M_PER_INCH;
export const M_PER_YARD = 3 * M_PER_FOOT;
export const M_PER_MILE = 1760 * M_PER_YARD;
export const L_PER_CUBIC_INCH = 0.016387064;
export const L_PER_US_GALLON = 231 * L_PER_CUBIC_INCH;
export const L_PER_US_FLUID_OUNCE = L_PER_US_GALLON / 128;
export const L_PER_US_CUP = L_PER_US_GALLON / 16;
export const L_PER_US_TABLESPOON = L_PER_US_GALLON / 256;
export const L_PER_US_TEASPOON = L_PER_US_GALLON / 768;
export const L_PER_IMPERIAL_GALLON = 4.54609;
export const L_PER_US_BUSHEL = 2150.42 * L_PER_CUBIC_INCH;
export const L_PER_US_DRY_QUART = L_PER_US_BUSHEL / 32;
export const L_PER_CUBIC_FOOT = 1728 * L_PER_CUBIC_INCH;
export const L_PER_CUBIC_YARD = 27 * L_PER_CUBIC_FOOT;
export const L_PER_CUBIC_METRE = 1000;
/** "Trade gallon" of nursery pots: 3 liquid quarts. Never a gallon. */
export const L_PER_TRADE_GALLON = 0.75 * L_PER_US_GALLON;
export const M2_PER_SQUARE_FOOT = M_PER_FOOT ** 2;
export const M2_PER_ACRE = 43_560 * M2_PER_SQUARE_FOOT;
export const M2_PER_HECTARE = 10_000;
export const KG_PER_POUND = 0.45359237;
export const KG_PER_OUNCE = KG_PER_POUND / 16;
/** US short ton, 2,000 lb. */
export const KG_PER_SHORT_TON = 2000 * KG_PER_POUND;
export const PA_PER_PSI = (KG_PER_POUND * 9.80665) / M_PER_INCH ** 2;
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;
export const S_PER_DAY = 86_400;
export const J_PER_WH = 3600;
export const MM_PER_INCH = 25.4;
