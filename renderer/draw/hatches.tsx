/** What a drawn area is made of. Each has its own hatch, so that a drawing also reads in grey. */
export const hatchNames = ['soil', 'mix', 'compost', 'gravel', 'wood', 'water', 'mulch', 'fabric', 'void'] as const;

export type HatchName = (typeof hatchNames)[number];

/** A fill for SVG shapes. `<Hatches />` must stand once in the same SVG. */
export const hatch = (name: HatchName): string => `url(#hatch-${name})`;

/** The drafting hatches as definitions of an SVG. */
export function Hatches() {
  return (
    <defs>
      <Pattern name="soil" size={9}>
        <path d="M-1 10 10 -1 M2 10 10 2 M-1 6 6 -1" stroke="var(--soil)" />
      </Pattern>
      <Pattern name="mix" size={10}>
        <circle cx={2} cy={2} r={0.9} fill="var(--mix)" />
        <circle cx={7} cy={6.5} r={0.9} fill="var(--mix)" />
        <path d="M5 1.500 7.500 2.500 M1 7 3 8.500" stroke="var(--mix)" />
      </Pattern>
      <Pattern name="compost" size={8}>
        <path d="M1 2h2 M5 4h2 M2 6.500h2" stroke="var(--soil)" />
        <circle cx={6} cy={1.5} r={0.7} fill="var(--soil)" />
      </Pattern>
      <Pattern name="gravel" size={11}>
        <circle cx={3} cy={3} r={2} stroke="var(--mix)" fill="none" />
        <circle cx={8.5} cy={8} r={1.7} stroke="var(--mix)" fill="none" />
      </Pattern>
      <Pattern name="wood" size={8}>
        <path d="M0 1.500h8 M0 5.500h8 M2 3.500c1.500-1 3 1 4.500 0" stroke="var(--wood)" />
      </Pattern>
      <Pattern name="water" size={12}>
        <path d="M0 4c2-2 4-2 6 0s4 2 6 0 M0 10c2-2 4-2 6 0s4 2 6 0" stroke="var(--water)" />
      </Pattern>
      <Pattern name="mulch" size={9}>
        <path d="M1 3l3-1 M5 6l3-1 M2 8l2-1 M6 2l2 1" stroke="var(--wood)" />
      </Pattern>
      <Pattern name="fabric" size={4}>
        <path d="M0 2h4 M2 0v4" stroke="var(--line-strong)" />
      </Pattern>
      <Pattern name="void" size={10}>
        <path d="M0 10 10 0" stroke="var(--line)" strokeDasharray="2 2" />
      </Pattern>
    </defs>
  );
}

function Pattern({
  name,
  size,
  children,
}: {
  readonly name: HatchName;
  readonly size: number;
  readonly children: React.ReactNode;
}) {
  return (
    <pattern id={`hatch-${name}`} width={size} height={size} patternUnits="userSpaceOnUse">
      <rect width={size} height={size} fill={`color-mix(in oklab, ${grounds[name]} 14%, var(--paper-raised))`} />
      <g fill="none" strokeWidth={0.8} strokeLinecap="round">
        {children}
      </g>
    </pattern>
  );
}

const grounds: Readonly<Record<HatchName, string>> = {
  soil: 'var(--soil)',
  mix: 'var(--mix)',
  compost: 'var(--soil)',
  gravel: 'var(--mix)',
  wood: 'var(--wood)',
  water: 'var(--water)',
  mulch: 'var(--wood)',
  fabric: 'var(--line-strong)',
  void: 'var(--paper-raised)',
};
