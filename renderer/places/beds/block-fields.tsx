import { ChoiceField } from '../../fields/choice-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { Site } from './bed-types.ts';

export type BlockEntry = { readonly blockId: string | null; readonly code: string; readonly name: string };

export const blockInput = (block: BlockEntry) => ({ blockId: block.blockId, newBlock: { code: block.code, name: block.name } });

const NEW = '';

/** A block from the list, or a new one. */
export function BlockFields({
  blocks,
  value,
  onChange,
}: {
  readonly blocks: Site['blocks'];
  readonly value: BlockEntry;
  readonly onChange: (value: BlockEntry) => void;
}) {
  const choices = [
    ...blocks.map((block) => ({ value: block.blockId, text: `${block.code}, ${block.name}` })),
    { value: NEW, text: say('A new block…') },
  ];
  return (
    <>
      <ChoiceField
        label={say('Block')}
        value={value.blockId ?? NEW}
        choices={choices}
        onChange={(blockId) => onChange({ ...value, blockId: blockId === NEW ? null : blockId })}
      />
      {value.blockId === null ? (
        <div className="form-pair">
          <TextField
            label={say('Code of the new block')}
            path="newBlock.code"
            value={value.code}
            onChange={(code) => onChange({ ...value, code })}
          />
          <TextField label={say('Its name')} value={value.name} onChange={(name) => onChange({ ...value, name })} />
        </div>
      ) : null}
    </>
  );
}
