import { useMemo } from 'react';
import { qrMatrix } from './qr-matrix.ts';

/** Light modules around a code, so that a reader finds it (ISO/IEC 18004 asks for four). */
const QUIET = 4;

/** A text as a QR code, dark on light in every look: a reader needs the contrast. */
export function QrCode({ text, size, name }: { readonly text: string; readonly size: string; readonly name: string }) {
  const matrix = useMemo(() => qrMatrix(text), [text]);
  const across = matrix.length + 2 * QUIET;
  const path = matrix
    .flatMap((row, down) => row.map((dark, along) => (dark ? `M${along + QUIET} ${down + QUIET}h1v1h-1z` : '')))
    .join('');
  return (
    <svg
      className="qr"
      width={size}
      height={size}
      viewBox={`0 0 ${across} ${across}`}
      role="img"
      aria-label={name}
      shapeRendering="crispEdges"
    >
      <rect width={across} height={across} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
