import { useState } from 'react';
import { Button } from '../app/button.tsx';
import { useReader } from '../client/reader.tsx';
import { say } from '../words/say.ts';
import { paperOf } from './paper.ts';
import type { MakeParts } from './printables.ts';
import { savePdf } from './save-pdf.ts';

/** Saves one part of a page as a PDF on the farm's paper. */
export function PdfButton(props: {
  /** A function where it is known only when the button is pressed. */
  readonly title: string | (() => string);
  readonly make: MakeParts;
  /** What the button is called; needed where the title is not known before. */
  readonly name?: string;
}) {
  const { make } = props;
  const reader = useReader();
  const [busy, setBusy] = useState(false);
  const save = async (): Promise<void> => {
    setBusy(true);
    try {
      const paper = paperOf(reader);
      const title = typeof props.title === 'string' ? props.title : props.title();
      await savePdf(title, paper, await make(paper));
    } finally {
      setBusy(false);
    }
  };
  const name = props.name ?? say('Save {title} as PDF', { title: typeof props.title === 'string' ? props.title : '' });
  return (
    <Button weight="quiet" disabled={busy} name={name} onClick={() => void save()}>
      {say('PDF')}
    </Button>
  );
}
