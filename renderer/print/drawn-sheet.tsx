import type { ReactNode } from 'react';
import type { PrintedPart } from '../../api/print/printed-document.ts';
import { type Paper, type Room, roomOn } from './paper.ts';
import { drawnOnPaper } from './stage.ts';

/** What a mark of the drawing says; its swatch is 22 by 13 pixels, or as wide as it says. */
export type KeyEntry = { readonly name: string; readonly swatch: ReactNode; readonly wide?: number };

/** A drawing that fills its sheet, with its key under it. */
export function DrawnSheet({ entries = [], children }: { readonly entries?: readonly KeyEntry[]; readonly children: ReactNode }) {
  return (
    <div className="paper-drawing">
      <div className="paper-drawing-body">{children}</div>
      {entries.length === 0 ? null : (
        <ul className="paper-key">
          {entries.map(({ name, swatch, wide = 22 }) => (
            <li key={name}>
              <svg width={wide} height={16} aria-hidden="true">
                {swatch}
              </svg>
              {name}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/**
 * A drawing under its heading on a sheet of its own, on the side that suits its shape. `wide` is how wide what is drawn is to its
 * height; `high` a height in pixels for what does not fill a page.
 */
export async function sheetOfDrawing(
  title: string,
  paper: Paper,
  drawing: ReactNode,
  { wide, high, entries }: { readonly wide: number; readonly high?: number; readonly entries?: readonly KeyEntry[] },
): Promise<readonly PrintedPart[]> {
  const across = wide > 1.15 && high === undefined;
  const room = roomOn(paper, across);
  const size: Room = { width: room.width, height: Math.min(room.height, high ?? room.height) };
  return [
    { kind: 'heading', level: 1, text: title },
    await drawnOnPaper(<DrawnSheet {...(entries === undefined ? {} : { entries })}>{drawing}</DrawnSheet>, size, across),
  ];
}
