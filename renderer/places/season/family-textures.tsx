/** Textures of plant families as SVG fills, in the family's own colour. */
export function FamilyTextures() {
  return (
    <svg width="0" height="0" aria-hidden="true" focusable="false" style={{ position: 'absolute' }}>
      <defs>
        <pattern id="family-lines" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V6" className="texture-ink" />
        </pattern>
        <pattern id="family-dots" width="6" height="6" patternUnits="userSpaceOnUse">
          <circle cx="3" cy="3" r="1" className="texture-dot" />
        </pattern>
        <pattern id="family-cross" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <path d="M0 0V7M0 0H7" className="texture-ink" />
        </pattern>
      </defs>
    </svg>
  );
}
