import { useState } from 'react';
import { say } from '../words/say.ts';
import { pair } from './field-client.ts';

/** The one-time code from the computer connects this phone. */
export function Pair({ onPaired }: { readonly onPaired: () => void }) {
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const [fault, setFault] = useState<string>();
  const send = async (): Promise<void> => {
    const because = await pair(code, name);
    setFault(because);
    if (because === undefined) onPaired();
  };
  return (
    <form
      className="field-card"
      aria-label={say('Connect this phone')}
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <h2>{say('Connect this phone')}</h2>
      <p>{say('At the computer open Farm, Phone, and switch the field page on. It shows a code that holds for five minutes.')}</p>
      <label>
        {say('Code')}
        <input
          inputMode="numeric"
          autoComplete="one-time-code"
          value={code}
          onChange={(event) => setCode(event.target.value)}
          aria-invalid={fault !== undefined}
        />
      </label>
      <label>
        {say('Who or what this is')}
        <input value={name} placeholder={say('Phone of the picker')} onChange={(event) => setName(event.target.value)} />
      </label>
      {fault === undefined ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <button type="submit" className="field-main">
        {say('Connect')}
      </button>
    </form>
  );
}
