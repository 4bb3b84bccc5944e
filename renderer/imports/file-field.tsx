import { useState } from 'react';
import { FieldFrame } from '../fields/field-frame.tsx';
import { readText } from './read-text.ts';

/** Chooses a file and hands on its text. What can't be read as text is told at the field. */
export function FileField({
  label,
  accept,
  hint,
  onText,
}: {
  readonly label: string;
  /** Endings and kinds, as the browser's own file field takes them. */
  readonly accept: string;
  readonly hint?: string;
  readonly onText: (text: string, fileName: string) => void;
}) {
  const [fault, setFault] = useState<string>();
  const choose = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    const read = await readText(file);
    setFault(read.ok ? undefined : read.message);
    if (read.ok) onText(read.text, file.name);
  };
  return (
    <FieldFrame
      label={label}
      hint={hint}
      fault={fault}
      control={(props) => (
        <input {...props} type="file" accept={accept} onChange={(event) => void choose(event.target.files?.[0])} />
      )}
    />
  );
}
