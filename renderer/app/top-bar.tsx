import { Button } from './button.tsx';
import { useFarm } from './farm-gate.tsx';
import { ThemeSwitch } from './theme-switch.tsx';
import { useUndo } from './use-undo.ts';

/** The farm's name, undo and redo by name, find and go, look and help. */
export function TopBar({ onFind, onHelp }: { readonly onFind: () => void; readonly onHelp: () => void }) {
  const { undoName, redoName, undo, redo, busy } = useUndo();
  const farm = useFarm();
  return (
    <header className="top-bar">
      <span className="farm-name">{farm?.name ?? ''}</span>
      {farm?.invented === true ? (
        <span className="invented" title="This farm, its people and its prices are made up">
          invented sample
        </span>
      ) : null}
      <span className="push" />
      <Button
        weight="quiet"
        icon="undo"
        disabled={undoName === null || busy}
        name={undoName === null ? 'Nothing to undo' : `Undo ${lowerFirst(undoName)}`}
        onClick={() => void undo()}
      >
        <span className="undo-name">{undoName === null ? '' : `Undo ${lowerFirst(undoName)}`}</span>
      </Button>
      <Button
        weight="quiet"
        icon="redo"
        disabled={redoName === null || busy}
        name={redoName === null ? 'Nothing to redo' : `Redo ${lowerFirst(redoName)}`}
        onClick={() => void redo()}
      />
      <button type="button" className="button find-open" onClick={onFind}>
        Find and go
        <span className="keys" aria-hidden="true">
          Ctrl K
        </span>
      </button>
      <ThemeSwitch />
      <Button weight="quiet" icon="print" name="Print this page" onClick={() => window.print()} />
      <Button weight="quiet" icon="help" name="Help for this place (F1)" onClick={onHelp} />
    </header>
  );
}

const lowerFirst = (note: string): string => note.charAt(0).toLowerCase() + note.slice(1);
