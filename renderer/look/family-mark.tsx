/** How a plant family is shown: a hue and a texture, so that families also stay apart in grey. */
export type FamilyMark = { readonly hue: string; readonly texture: 'plain' | 'lines' | 'dots' | 'cross' };

const HUES = 8;
const textures = ['plain', 'lines', 'dots', 'cross'] as const;

/** The families of a farm in their order get the same marks each time: hue by hue, then the next texture. */
export function familyMark(order: number): FamilyMark {
  const at = Math.max(0, order);
  return { hue: `var(--hue-${(at % HUES) + 1})`, texture: textures[Math.floor(at / HUES) % textures.length] ?? 'plain' };
}

/** Marks for all families named, by alphabet. */
export function familyMarks(families: readonly string[]): ReadonlyMap<string, FamilyMark> {
  return new Map(
    [...new Set(families)].sort((a, b) => a.localeCompare(b, 'en')).map((family, order) => [family, familyMark(order)]),
  );
}

/** The mark as a CSS background, for bars and chips. */
export function familyBackground({ hue, texture }: FamilyMark): string {
  const soft = `color-mix(in oklab, ${hue} 38%, var(--paper-raised))`;
  const ink = `color-mix(in oklab, ${hue} 80%, var(--ink))`;
  switch (texture) {
    case 'plain':
      return soft;
    case 'lines':
      return `repeating-linear-gradient(45deg, ${soft} 0 5px, ${ink} 5px 6px)`;
    case 'dots':
      return `radial-gradient(circle at 3px 3px, ${ink} 1px, transparent 1.3px) 0 0 / 7px 7px, ${soft}`;
    case 'cross':
      return `repeating-linear-gradient(45deg, transparent 0 5px, ${ink} 5px 6px), repeating-linear-gradient(-45deg, ${soft} 0 5px, ${ink} 5px 6px)`;
  }
}

export function FamilyChip({ mark, children }: { readonly mark: FamilyMark; readonly children: React.ReactNode }) {
  return (
    <span className="family-chip">
      <span className="family-swatch" style={{ background: familyBackground(mark), borderColor: mark.hue }} aria-hidden="true" />
      {children}
    </span>
  );
}
