import type { SVGProps } from 'react';

/** Strokes on a 16 by 16 field, drawn for this program as a draughtsman's marks. */
const marks = {
  week: 'M2.5 3.5h11v10h-11z M2.5 6.5h11 M5.5 2v3 M10.5 2v3 M5 9.5l1.5 1.5 3.5-3.5',
  beds: 'M2 3h5v10H2z M9.5 3H14v4H9.5z M9.5 9.5H14V13H9.5z',
  season: 'M2 3v11 M2 4.5h6 M4.5 8H12 M7 11.5h7',
  soil: 'M2 4h12 M2 8c2-1.5 4 1.5 6 0s4 1.5 6 0 M2 12.5c2-1.5 4 1.5 6 0s4 1.5 6 0',
  water: 'M2 13.5V7h4v6.500 M2 10h4 M6 11.5h3V4h5v3 M12.500 7h3 M14 9.500v1.500',
  orders: 'M3 2h10v12l-2-1.200-1.500 1.200L8 12.800 6.500 14 5 12.800 3 14z M5.500 5.500h5 M5.500 8.500h5',
  harvest: 'M2 7h12l-1.500 6.500h-9z M5 7c0-6 6-6 6 0 M6 9.500v2 M10 9.500v2',
  costs: 'M2 14h12 M3.500 14V9.500h2.500V14 M7 14V6h2.500v8 M10.500 14V3H13v11',
  library: 'M3 2.500h3v11H3z M6 2.500h3v11H6z M10 3.500l2.500-.700 2 10.200-2.500.700z',
  farm: 'M2 7.500 8 3l6 4.500 M3.500 6.500v7h9v-7 M6.500 13.500v-4h3v4',
  find: 'M6.800 11.600a4.800 4.800 0 1 0 0-9.600 4.800 4.800 0 0 0 0 9.600z M10.300 10.300 14 14',
  undo: 'M6 3 2.500 6.500 6 10 M2.500 6.500H10a3.500 3.500 0 0 1 0 7H7',
  redo: 'm10 3 3.500 3.500L10 10 M13.500 6.500H6a3.500 3.500 0 0 0 0 7h3',
  help: 'M5.500 6a2.500 2.500 0 1 1 3.600 2.200C8.300 8.700 8 9 8 10 M8 12.500v.6',
  close: 'm3.500 3.500 9 9 M12.500 3.500l-9 9',
  up: 'M8 13V3.500 M4 7l4-4 4 4',
  down: 'M8 3v9.500 M4 9l4 4 4-4',
  more: 'M3 8h.1 M8 8h.1 M13 8h.1',
  add: 'M8 3v10 M3 8h10',
  bin: 'M3 4.500h10 M6 4.500V3h4v1.500 M4.500 4.500 5.200 13.500h5.600l.7-9',
  edit: 'M3 13l.7-3L11 2.700l2.300 2.300L6 12.300z',
  print: 'M4.500 6V2.500h7V6 M4.500 11.500H2.500V6h11v5.500h-2 M4.500 9.500h7v4h-7z',
  save: 'M8 2.500v7 M5 7l3 3 3-3 M2.500 11v2.500h11V11',
  copy: 'M5.500 5.500h8v8h-8z M10.500 5.500v-3h-8v8h3',
  columns: 'M2.500 3h11v10h-11z M6.200 3v10 M9.800 3v10',
  look: 'M8 13.500a5.500 5.500 0 1 0 0-11 5.500 5.500 0 0 0 0 11z M8 2.500v11 M8 5.500h4.800 M8 8h5.500 M8 10.500h4.800',
  check: 'm3 8.500 3.500 3.500L13 4.500',
  caution: 'M8 2.500 14 13.500H2z M8 6.500v3.500 M8 11.700v.3',
  working: 'M3 3h10 M3 6.300h6 M3 9.700h8 M3 13h4 M10 12l1.500 1.500L14 10.500',
  play: 'M4.500 3v10l8-5z',
  stop: 'M4 4h8v8H4z',
  chevron: 'm6 3.500 4.500 4.500L6 12.500',
} as const;

export type IconName = keyof typeof marks;

export const iconNames = Object.keys(marks) as readonly IconName[];

export function Icon({
  name,
  size = 16,
  ...rest
}: { readonly name: IconName; readonly size?: number } & SVGProps<SVGSVGElement>) {
  return (
    <svg
      width={size}
      height={size}
      viewBox="0 0 16 16"
      fill="none"
      stroke="currentColor"
      strokeWidth={1.35}
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
      focusable="false"
      {...rest}
    >
      <path d={marks[name]} />
    </svg>
  );
}
