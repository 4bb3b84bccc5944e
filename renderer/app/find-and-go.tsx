import { type KeyboardEvent, useId, useMemo, useState } from 'react';
import { Dialog as AriaDialog, Modal, ModalOverlay } from 'react-aria-components';
import { say } from '../words/say.ts';
import { findIn } from './find.ts';
import { useFindings } from './use-findings.ts';

/** One box that finds beds, crops, plantings, materials, pages, help and actions, and goes there. */
export function FindAndGo({ onClose }: { readonly onClose: () => void }) {
  const all = useFindings();
  const [typed, setTyped] = useState('');
  const [chosen, setChosen] = useState(0);
  const listId = useId();
  const found = useMemo(() => findIn(all, typed), [all, typed]);
  const at = Math.min(chosen, found.length - 1);

  const take = (index: number): void => {
    const finding = found[index];
    if (finding === undefined) return;
    onClose();
    finding.go();
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === 'Enter') take(at);
    else if (event.key === 'ArrowDown') setChosen(Math.min(at + 1, found.length - 1));
    else if (event.key === 'ArrowUp') setChosen(Math.max(at - 1, 0));
    else if (event.key === 'Home' && event.ctrlKey) setChosen(0);
    else return;
    event.preventDefault();
  };

  return (
    <ModalOverlay className="veil" isOpen isDismissable onOpenChange={(open) => (open ? undefined : onClose())}>
      <Modal className="dialog-place">
        <AriaDialog className="dialog find-box" aria-label={say('Find and go')}>
          <input
            type="text"
            // biome-ignore lint/a11y/noAutofocus: the box was opened to type into it
            autoFocus
            role="combobox"
            aria-expanded="true"
            aria-controls={listId}
            aria-activedescendant={found[at] === undefined ? undefined : `${listId}-${at}`}
            aria-autocomplete="list"
            aria-label={say('Find beds, crops, plantings, materials, pages, actions')}
            placeholder={say('A bed, crop, planting, material, page or action')}
            autoComplete="off"
            spellCheck={false}
            value={typed}
            onChange={(event) => {
              setTyped(event.target.value);
              setChosen(0);
            }}
            onKeyDown={onKeyDown}
          />
          <div id={listId} role="listbox" aria-label={say('Found')} className="find-list">
            {found.map((finding, index) => (
              <div
                key={finding.id}
                id={`${listId}-${index}`}
                role="option"
                tabIndex={-1}
                aria-selected={index === at}
                className="find-item"
                ref={(element) => {
                  if (index === at) element?.scrollIntoView({ block: 'nearest' });
                }}
                onMouseMove={() => setChosen(index)}
                onClick={() => take(index)}
                onKeyDown={(event) => (event.key === 'Enter' ? take(index) : undefined)}
              >
                <span className="find-kind">{finding.kind}</span>
                <span className="find-title">{finding.title}</span>
                <span className="find-detail">{finding.detail}</span>
                {finding.keys === undefined ? null : <span className="keys">{finding.keys}</span>}
              </div>
            ))}
          </div>
          <p className="find-foot" role="status">
            {found.length === 0
              ? say('Nothing here is called “{typed}”.', { typed })
              : say('{found} found. Enter goes there.', { found: found.length })}
          </p>
        </AriaDialog>
      </Modal>
    </ModalOverlay>
  );
}
