import { useEffect, useState } from 'react';
import { addressOf } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { announce } from '../../client/announce.ts';
import { say } from '../../words/say.ts';
import { withEnding } from './file-path.ts';
import { showFarm } from './files-tab.tsx';

type Taken = { readonly key: string; readonly path: string; readonly copied: boolean };

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true;

/** A field for files keeps what is dropped on it. */
const onFileField = (event: DragEvent): boolean => event.target instanceof HTMLInputElement && event.target.type === 'file';

async function send(file: File): Promise<Taken | string> {
  const answer = await fetch(`/farm-file?name=${encodeURIComponent(file.name)}`, {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream' },
    body: await file.arrayBuffer(),
  });
  return answer.ok ? ((await answer.json()) as Taken) : answer.text();
}

/** A farm file dropped anywhere on the window is opened. Another file is never taken for a page to go to. */
export function DropFarm() {
  const [over, setOver] = useState(false);
  const [taken, setTaken] = useState<Taken>();
  useEffect(() => {
    const onOver = (event: DragEvent): void => {
      if (!hasFiles(event) || onFileField(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent): void => {
      setOver(false);
      if (!hasFiles(event) || onFileField(event)) return;
      event.preventDefault();
      const files = [...(event.dataTransfer?.files ?? [])];
      const [file] = files;
      if (file === undefined) return;
      if (files.length > 1 || file.name !== withEnding(file.name)) {
        announce(say('One farm file at a time can be dropped here; its name ends in .bedwright.'), 'now');
        return;
      }
      announce(say('Taking in {file} …', { file: file.name }));
      void send(file).then((said) => {
        if (typeof said === 'string') announce(said, 'now');
        else if (said.copied) setTaken(said);
        else showFarm(said.key);
      });
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('drop', onDrop);
    };
  }, []);
  if (taken !== undefined)
    return (
      <Dialog
        title={say('Farm taken in')}
        onClose={() => setTaken(undefined)}
        foot={
          <>
            <a className="button" href={addressOf('week', { farm: taken.key })} target="_blank" rel="noreferrer">
              {say('In a second window')}
            </a>
            <Button weight="main" onClick={() => showFarm(taken.key)}>
              {say('Open it here')}
            </Button>
          </>
        }
      >
        <p>
          {say('A page is told what is in a dropped file, not where it lies. So a copy was made, and work goes on in the copy:')}
        </p>
        <p className="file-path">{taken.path}</p>
        <p className="soft">
          {say('The file that was dropped stays as it is. To work in the file itself, open it by its path.')}
        </p>
      </Dialog>
    );
  return over ? (
    <div className="drop-veil" role="status">
      {say('Drop a farm file to open it')}
    </div>
  ) : null;
}
