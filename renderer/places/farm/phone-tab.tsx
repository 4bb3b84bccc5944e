import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { QrCode } from '../../labels/qr-code.tsx';
import { say } from '../../words/say.ts';

type FieldState = OutputOf<typeof api.field.state>;

const LOOK_AGAIN_MS = 2000;

/** The field page for phones: off until it is switched on here, one code for each phone, who is connected, off with one click. */
export function PhoneTab() {
  const state = useRead(api.field.state, undefined);
  const cache = useQueryClient();
  const on = state.state === 'ready' && state.data.on;
  useEffect(() => {
    if (!on) return undefined;
    const timer = setInterval(() => void cache.invalidateQueries(api.field.state.queryFilter()), LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [on, cache]);
  return <Shown reading={state}>{(data) => (data.on ? <PhoneOn state={data} /> : <PhoneOff />)}</Shown>;
}

function PhoneOff() {
  const turnOn = useChange(api.field.on);
  return (
    <section className="panel stack" aria-label={say('Phones in the field')}>
      <h2>{say('Phones in the field')}</h2>
      <p>
        {say(
          'A page for phones on the farm’s own network: read this week’s work, tick it off, log a harvest. Out of reach the phone keeps its entries and sends them later. It reaches nothing else of the farm, and it is off until you switch it on.',
        )}
      </p>
      <p className="soft">
        {say(
          'What is sent is not encrypted: use it only on a network that is your own. Anyone in the farm’s network can see that the page is there; only a phone with a code gets in.',
        )}
      </p>
      <p className="soft">
        {say(
          'Leave the page open on the phone while out of reach: over an unencrypted network a browser cannot keep the page itself, so one that is closed there opens again only within reach. The entries are kept all the same.',
        )}
      </p>
      <div className="row">
        <Button weight="main" disabled={turnOn.busy} onClick={() => void turnOn.run(undefined, say('The field page is on.'))}>
          {say('Switch the field page on')}
        </Button>
      </div>
      {turnOn.failure === undefined ? null : <p role="alert">{turnOn.failure.message}</p>}
    </section>
  );
}

function PhoneOn({ state }: { readonly state: FieldState }) {
  const off = useChange(api.field.off);
  const newCode = useChange(api.field.newCode);
  const forget = useChange(api.field.forget);
  return (
    <section className="panel stack" aria-label={say('Phones in the field')}>
      <div className="row">
        <h2>{say('The field page is on')}</h2>
        <Button
          weight="harm"
          disabled={off.busy}
          onClick={() => void off.run(undefined, say('The field page is off, and every phone is forgotten.'))}
        >
          {say('Switch it off')}
        </Button>
      </div>
      <div className="columns">
        <div className="stack">
          <h3>{say('Open on the phone')}</h3>
          {state.addresses.length === 0 ? <p>{say('This computer is in no network now.')}</p> : null}
          {state.addresses.map((address) => (
            <div key={address} className="row">
              <QrCode text={address} size="7rem" name={say('QR code of {address}', { address })} />
              <span className="file-path">{address}</span>
            </div>
          ))}
        </div>
        <div className="stack">
          <h3>{say('Code for one phone')}</h3>
          {state.code === null ? (
            <p className="soft">{say('No code holds now.')}</p>
          ) : (
            <p className="pair-code">
              {state.code.digits.slice(0, 4)} {state.code.digits.slice(4)}
            </p>
          )}
          <div className="row">
            <Button
              disabled={newCode.busy}
              onClick={() => void newCode.run(undefined, say('There is a new code; the one before is void.'))}
            >
              {say('New code')}
            </Button>
          </div>
          <p className="small soft">{say('It holds for five minutes and for one phone.')}</p>
          <h3>{say('Connected')}</h3>
          {state.devices.length === 0 ? <p className="soft">{say('No phone yet.')}</p> : null}
          <ul className="file-list">
            {state.devices.map((device) => (
              <li key={device.id}>
                <div>
                  <strong>{device.name}</strong>
                  <p className="small soft">
                    {say('{address}, last seen {toLocaleTimeString}', {
                      address: device.address,
                      toLocaleTimeString: new Date(device.seen_ms).toLocaleTimeString(),
                    })}
                  </p>
                </div>
                <Button
                  disabled={forget.busy}
                  onClick={() =>
                    void forget.run({ id: device.id }, say('{device} is no longer connected.', { device: device.name }))
                  }
                >
                  {say('Disconnect')}
                </Button>
              </li>
            ))}
          </ul>
        </div>
      </div>
    </section>
  );
}
