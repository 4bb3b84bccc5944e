/** A number as it is written in a sheet: a thousandth of a pixel is finer than any printer. */
export const figure = (value: number): string => String(Math.round(value * 1000) / 1000);
