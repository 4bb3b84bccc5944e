import { readNumber } from '../../../planner/units/parse-number.ts';

export type Place = { readonly latitude_deg: number; readonly longitude_deg: number };

const SIGNS: Readonly<Record<string, 1 | -1>> = { n: 1, e: 1, s: -1, w: -1 };
const part = /^([+−-]?\d+(?:\.\d+)?)\s*°?\s*([nsew])?$/i;

function readPart(text: string, letters: string): number | undefined {
  const [, figure, letter] = part.exec(text.trim()) ?? [];
  if (figure === undefined) return undefined;
  const value = readNumber(figure);
  if (value === undefined || letter === undefined) return value;
  return letters.includes(letter.toLowerCase()) ? value * (SIGNS[letter.toLowerCase()] ?? 1) : undefined;
}

/** Reads a pair of decimal degrees as maps give it: `47.61, -122.33`, `47.61° N, 122.33° W`. Undefined for any other text. */
export function readPlace(text: string): Place | undefined {
  const parts = text.includes(',') ? text.split(',') : text.trim().split(/(?<=[nsew°\d])\s+(?=[+−-]?\d)/i);
  const [first, second] = parts;
  if (first === undefined || second === undefined || parts.length !== 2) return undefined;
  const latitude_deg = readPart(first, 'ns');
  const longitude_deg = readPart(second, 'ew');
  if (latitude_deg === undefined || longitude_deg === undefined) return undefined;
  return Math.abs(latitude_deg) <= 90 && Math.abs(longitude_deg) <= 180 ? { latitude_deg, longitude_deg } : undefined;
}
