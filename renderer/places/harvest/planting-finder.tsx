import { type KeyboardEvent, type Ref, useId, useState } from 'react';
import { FieldFrame } from '../../fields/field-frame.tsx';
import { say } from '../../words/say.ts';
import { matchPlantings, plantingText } from './entry-text.ts';
import type { PlantingChoice } from './harvest-types.ts';

const SHOWN = 8;

/** Finds a planting by typing a bed or a crop: the best fit stands first, Enter takes it. */
export function PlantingFinder(props: {
  readonly plantings: readonly PlantingChoice[];
  readonly chosen: PlantingChoice | null;
  readonly onChoose: (planting: PlantingChoice | null) => void;
  /** After a choice the entry goes on in the next field. */
  readonly onDone: () => void;
  readonly input: Ref<HTMLInputElement>;
}) {
  const list = useId();
  const [typed, setTyped] = useState('');
  const [open, setOpen] = useState(false);
  const [at, setAt] = useState(0);
  const text = props.chosen === null ? typed : plantingText(props.chosen);
  const found = open ? matchPlantings(props.plantings, typed).slice(0, SHOWN) : [];
  const take = (planting: PlantingChoice | undefined): void => {
    if (planting === undefined) return;
    props.onChoose(planting);
    setTyped('');
    setOpen(false);
    props.onDone();
  };
  const keys = (event: KeyboardEvent): void => {
    if (event.key === 'ArrowDown' || event.key === 'ArrowUp') {
      event.preventDefault();
      if (!open) setOpen(true);
      else setAt((at + (event.key === 'ArrowDown' ? 1 : found.length - 1)) % Math.max(1, found.length));
    } else if (event.key === 'Enter' && props.chosen === null && typed !== '') {
      event.preventDefault();
      take(found[at]);
    } else if (event.key === 'Escape' && open) {
      event.stopPropagation();
      setOpen(false);
    }
  };
  return (
    <FieldFrame
      label={say('Bed or crop')}
      path="plantingId"
      control={(control) => (
        <span className="finder">
          <input
            {...control}
            ref={props.input}
            type="text"
            role="combobox"
            autoComplete="off"
            spellCheck={false}
            aria-expanded={open && found.length > 0}
            aria-controls={list}
            aria-autocomplete="list"
            aria-activedescendant={open && found[at] !== undefined ? `${list}-${at}` : undefined}
            value={text}
            onChange={(event) => {
              props.onChoose(null);
              setTyped(event.target.value);
              setOpen(true);
              setAt(0);
            }}
            onFocus={(event) => event.target.select()}
            onKeyDown={keys}
            onBlur={() => {
              setOpen(false);
              if (props.chosen === null && typed !== '') {
                const only = matchPlantings(props.plantings, typed);
                if (only.length === 1) props.onChoose(only[0] ?? null);
              }
            }}
          />
          <div id={list} role="listbox" aria-label={say('Plantings')} hidden={!open || found.length === 0}>
            {found.map((planting, index) => (
              <div
                key={planting.plantingId}
                id={`${list}-${index}`}
                role="option"
                tabIndex={-1}
                aria-selected={index === at}
                onPointerDown={(event) => event.preventDefault()}
                onClick={() => take(planting)}
                onKeyDown={(event) => {
                  if (event.key === 'Enter') take(planting);
                }}
              >
                <span>{plantingText(planting)}</span>
                <span className="soft small">{planting.inWindow ? say('in its harvest weeks') : planting.state}</span>
              </div>
            ))}
          </div>
          {open && typed !== '' && found.length === 0 ? (
            <span className="finder-none small soft">{say('No planting stands there on this day.')}</span>
          ) : null}
        </span>
      )}
    />
  );
}
