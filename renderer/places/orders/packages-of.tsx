import { useId, useRef, useState } from 'react';
import { say } from '../../words/say.ts';

/** How many packages a line of the list is to be; what can't be taken is said there and changes nothing. */
export function PackagesOf(props: {
  readonly label: string;
  readonly packages: number;
  readonly onChange: (packages: number) => Promise<unknown>;
}) {
  const [text, setText] = useState(String(props.packages));
  const [shown, setShown] = useState(props.packages);
  const sent = useRef(Number.NaN);
  const [fault, setFault] = useState('');
  const faultId = useId();
  // changed elsewhere, or taken back: the field follows and keeps the focus
  if (shown !== props.packages) {
    setShown(props.packages);
    setText(String(props.packages));
  }
  const take = async (): Promise<void> => {
    const packages = text.trim() === '' ? Number.NaN : Number(text);
    if (!Number.isInteger(packages) || packages < 0) {
      setFault(say('A whole number of packages, 0 or more.'));
      return;
    }
    setFault('');
    // Enter sends it, and leaving the field must not send it once more
    if (packages === props.packages || packages === sent.current) return;
    sent.current = packages;
    const taken = await props.onChange(packages);
    sent.current = Number.NaN;
    if (taken === undefined) setText(String(props.packages));
  };
  return (
    <>
      <input
        className="narrow-number"
        inputMode="numeric"
        value={text}
        aria-label={props.label}
        aria-invalid={fault !== ''}
        aria-describedby={fault === '' ? undefined : faultId}
        onChange={(event) => setText(event.target.value)}
        onBlur={() => void take()}
        onKeyDown={(event) => {
          if (event.key === 'Enter') void take();
          if (event.key !== 'Escape') return;
          setText(String(props.packages));
          setFault('');
        }}
      />
      {fault === '' ? null : (
        <div className="field-fault" id={faultId} role="alert">
          {fault}
        </div>
      )}
    </>
  );
}
