import { useSyncExternalStore } from 'react';
import { createPortal } from 'react-dom';
import { stage, stageId } from './stage.ts';

/** Where drawings are made for paper. Stands once inside the providers of the pages. */
export function PaperStage() {
  const shown = useSyncExternalStore(stage.subscribe, stage.shown);
  return createPortal(
    shown.map(({ key, node, size }) => (
      <div key={key} className="paper-stage" aria-hidden="true" inert>
        <div id={stageId(key)} style={size}>
          {node}
        </div>
      </div>
    )),
    document.body,
  );
}
