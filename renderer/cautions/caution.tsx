import { useEffect, useState } from 'react';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';
import { cautionText, emergency } from './caution-texts.ts';

const severityNames = { stop: say('Stop'), guard: say('Guard'), note: say('Note') } as const;

/**
 * A caution where a decision is made. It can be folded, but not closed for good; a folded one opens when the page is
 * printed. `folded` is for lists of many, such as the help.
 */
export function Caution({ id, folded = false }: { readonly id: string; readonly folded?: boolean }) {
  const { title, severity, text, defer, source } = cautionText(id);
  const [open, setOpen] = useState(!folded);
  useEffect(() => {
    const show = () => setOpen(true);
    window.addEventListener('beforeprint', show);
    return () => window.removeEventListener('beforeprint', show);
  }, []);
  return (
    <details className="caution" data-severity={severity} open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span className="caution-severity">{severityNames[severity]}</span>
        <span className="caution-title">{sayKnown(title)}</span>
      </summary>
      <div className="caution-body">
        <p>{sayKnown(text)}</p>
        <p>
          <strong>{sayKnown(defer)}</strong>
          {severity === 'stop' ? ` ${sayKnown(emergency)}` : ''}
        </p>
        <p className="faint">{say('Source: {source}', { source })}</p>
      </div>
    </details>
  );
}

/** Several cautions; the gravest first. */
export function Cautions({ ids, folded = false }: { readonly ids: readonly string[]; readonly folded?: boolean }) {
  const order = ['stop', 'guard', 'note'];
  const sorted = [...new Set(ids)].sort(
    (a, b) => order.indexOf(cautionText(a).severity) - order.indexOf(cautionText(b).severity),
  );
  return (
    <>
      {sorted.map((id) => (
        <Caution key={id} id={id} folded={folded} />
      ))}
    </>
  );
}
