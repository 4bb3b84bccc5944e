const vulgar: Readonly<Record<string, number>> = { '½': 1 / 2, '¼': 1 / 4, '¾': 3 / 4, '⅓': 1 / 3, '⅔': 2 / 3, '⅛': 1 / 8 };

/**
 * Reads a written number: `1,200`, `3.5`, `1,5`, `3 1/2`, `3-1/2`, `1/4`, `2½`, `.75`, `−4`.
 * A comma groups thousands when exactly three digits follow each, else a single comma is the decimal sign.
 * @returns undefined when it is no number
 */
export function readNumber(text: string): number | undefined {
  const negative = /^\s*[-−]/.test(text);
  const body = text.replace(/^\s*[-−+]\s*/, '').trim();
  const size = vulgarNumber(body) ?? fraction(body) ?? decimal(body);
  return size === undefined ? undefined : negative ? 0 - size : size;
}

function vulgarNumber(text: string): number | undefined {
  const part = vulgar[text.slice(-1)];
  if (part === undefined) return undefined;
  const whole = text.slice(0, -1).trim();
  if (whole === '') return part;
  return /^\d+$/.test(whole) ? Number(whole) + part : undefined;
}

function fraction(text: string): number | undefined {
  const found = /^(?:(\d+)[\s-]+)?(\d+)\s*\/\s*(\d+)$/.exec(text);
  if (found === null || Number(found[3]) === 0) return undefined;
  return Number(found[1] ?? 0) + Number(found[2]) / Number(found[3]);
}

function decimal(text: string): number | undefined {
  const plain = /^\d{1,3}(,\d{3})+(\.\d*)?$/.test(text) ? text.replaceAll(',', '') : text.replace(/^(\d*),(\d+)$/, '$1.$2');
  return /^(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : undefined;
}
