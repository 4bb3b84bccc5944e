const parts = ['', '¼', '½', '¾'] as const;

/** A number of quarters as written on a card: 5.25 is `5¼`, 0.5 is `½`. */
export function quarters(value: number): string {
  const all = Math.round(value * 4);
  const whole = Math.floor(all / 4);
  const part = parts[all % 4] ?? '';
  return whole === 0 && part !== '' ? part : `${whole}${part}`;
}
