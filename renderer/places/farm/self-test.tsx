import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';

type Line = Awaited<OutputOf<typeof api.program.selfTest>>[number];

/** Tries what every start rests on, on a farm made for it and removed again; the same as `--self-test` on the command line. */
export function SelfTest() {
  const test = useChange(api.program.selfTest);
  const [lines, setLines] = useState<readonly Line[]>();
  const start = async (): Promise<void> => {
    setLines(undefined);
    setLines(await test.run(undefined, say('The self-test has ended.')));
  };
  return (
    <section className="panel stack" aria-label={say('Self-test')}>
      <h2>{say('Self-test')}</h2>
      <p className="soft">
        {say(
          'Tries on this computer what the program rests on: the database engine, the data that ships with it, writing and reading a farm, a backup, long work, a document. It makes a farm of its own and removes it again; your farm is not touched.',
        )}
      </p>
      <div className="row">
        <Button disabled={test.busy} onClick={() => void start()}>
          {test.busy ? say('The self-test runs…') : say('Run the self-test')}
        </Button>
      </div>
      {lines === undefined ? null : <Result lines={lines} />}
    </section>
  );
}

function Result({ lines }: { readonly lines: readonly Line[] }) {
  const broken = lines.filter(({ fine }) => !fine).length;
  return (
    <>
      <p>
        {broken === 0
          ? say('{count, plural, one {# check, and it is fine.} other {# checks, all fine.}}', { count: lines.length })
          : say('{broken, plural, one {# check of {count} failed.} other {# checks of {count} failed.}}', {
              broken,
              count: lines.length,
            })}
      </p>
      <ul className="file-list">
        {lines.map(({ what, fine, detail }) => (
          <li key={what}>
            <span className="state-mark" data-tone={fine ? 'good' : 'stop'}>
              {fine ? say('Fine') : say('Failed')}
            </span>
            <div>
              {sayKnown(what)}
              {fine ? null : <div className="soft">{detail}</div>}
            </div>
          </li>
        ))}
      </ul>
    </>
  );
}
