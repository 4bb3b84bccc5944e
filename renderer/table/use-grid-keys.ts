import type { KeyboardEvent } from 'react';
import type { Selection } from './use-selection.ts';

type Cell = { readonly row: number; readonly column: number };

const PAGE_ROWS = 20;

/**
 * Keys of the table: arrows, Home, End and Page move; Enter edits or opens, F2 edits, Alt+Enter opens; Space selects,
 * Shift with an arrow selects on; Ctrl+A all, Escape none, Ctrl+D fills down; a letter or figure begins an edit.
 */
export function useGridKeys<Row>(grid: {
  readonly at: Cell;
  readonly rowCount: number;
  readonly columnCount: number;
  readonly focusCell: (cell: Cell) => void;
  readonly openCell: (row: number, column: number, start?: string) => void;
  readonly openRow: (row: number) => void;
  readonly selection: Selection<Row>;
  readonly fillDown: () => void;
  readonly editable: boolean;
}): (event: KeyboardEvent) => void {
  const { at, rowCount, columnCount, focusCell, openCell, openRow, selection, fillDown, editable } = grid;

  const target = (event: KeyboardEvent): Cell | undefined => {
    const whole = event.ctrlKey || event.metaKey;
    switch (event.key) {
      case 'ArrowDown':
        return { row: whole ? rowCount - 1 : at.row + 1, column: at.column };
      case 'ArrowUp':
        return { row: whole ? 0 : at.row - 1, column: at.column };
      case 'ArrowRight':
        return { row: at.row, column: at.column + 1 };
      case 'ArrowLeft':
        return { row: at.row, column: at.column - 1 };
      case 'Home':
        return { row: whole ? 0 : at.row, column: 0 };
      case 'End':
        return { row: whole ? rowCount - 1 : at.row, column: columnCount - 1 };
      case 'PageDown':
        return { row: at.row + PAGE_ROWS, column: at.column };
      case 'PageUp':
        return { row: Math.max(0, at.row - PAGE_ROWS), column: at.column };
      default:
        return undefined;
    }
  };

  const act = (event: KeyboardEvent): boolean => {
    const whole = event.ctrlKey || event.metaKey;
    if (whole && event.key.toLowerCase() === 'a') selection.all();
    else if (whole && event.key.toLowerCase() === 'd' && editable) fillDown();
    else if (event.key === 'Escape' && selection.rows.length > 0) selection.none();
    else if (at.row < 0) return false;
    else if (event.key === ' ') selection.toggle(at.row, event.shiftKey);
    else if (event.key === 'Enter' && event.altKey) openRow(at.row);
    else if (event.key === 'Enter' || event.key === 'F2') openCell(at.row, at.column);
    else if (event.key.length === 1 && !whole && !event.altKey && editable) openCell(at.row, at.column, event.key);
    else return false;
    return true;
  };

  return (event) => {
    if ((event.target as Element).closest('.cell-editor') !== null) return;
    const to = target(event);
    if (to === undefined) {
      if (act(event)) event.preventDefault();
      return;
    }
    event.preventDefault();
    const next = {
      row: Math.max(-1, Math.min(to.row, rowCount - 1)),
      column: Math.max(0, Math.min(to.column, columnCount - 1)),
    };
    if (event.shiftKey && (event.key === 'ArrowDown' || event.key === 'ArrowUp') && next.row >= 0) {
      if (selection.rows.length === 0) selection.toggle(at.row, false);
      selection.toggle(next.row, true);
    }
    focusCell(next);
  };
}
