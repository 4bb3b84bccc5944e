import { Icon } from '../look/icon.tsx';
import { PagePdf } from '../print/page-pdf.tsx';
import { say } from '../words/say.ts';
import { go } from './address.ts';
import { Button } from './button.tsx';
import { keysOf } from './commands.ts';
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
        <>
          <span className="invented" title={say('This farm, its people and its prices are made up')}>
            {say('invented sample')}
          </span>
          <Button weight="quiet" icon="add" name={say('Make your own farm')} onClick={() => go('farm', { tab: 'new' })}>
            <span className="own-farm">{say('Make your own farm')}</span>
          </Button>
        </>
      ) : null}
      <span className="push" />
      <Button
        weight="quiet"
        icon="undo"
        disabled={undoName === null || busy}
        name={undoName === null ? say('Nothing to undo') : say('Undo {lowerFirst}', { lowerFirst: lowerFirst(undoName) })}
        onClick={() => void undo()}
      >
        <span className="undo-name">
          {undoName === null ? '' : say('Undo {lowerFirst}', { lowerFirst: lowerFirst(undoName) })}
        </span>
      </Button>
      <Button
        weight="quiet"
        icon="redo"
        disabled={redoName === null || busy}
        name={redoName === null ? say('Nothing to redo') : say('Redo {lowerFirst}', { lowerFirst: lowerFirst(redoName) })}
        onClick={() => void redo()}
      />
      <button type="button" className="button find-open" onClick={onFind}>
        <Icon name="find" />
        <span className="find-name">{say('Find and go')}</span>
        <span className="keys" aria-hidden="true">
          {keysOf('find')}
        </span>
      </button>
      <ThemeSwitch />
      <Button weight="quiet" icon="print" name={say('Print this page')} onClick={() => window.print()} />
      <PagePdf />
      <Button weight="quiet" icon="help" name={say('Help for this place (F1)')} onClick={onHelp} />
    </header>
  );
}

const lowerFirst = (note: string): string => note.charAt(0).toLowerCase() + note.slice(1);
