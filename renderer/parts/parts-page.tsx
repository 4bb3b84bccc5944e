import { useState } from 'react';
import { Button } from '../app/button.tsx';
import { Page } from '../app/page.tsx';
import { Empty, Failed, Waiting } from '../app/states.tsx';
import { Caution, Cautions } from '../cautions/caution.tsx';
import { cautionIds } from '../cautions/caution-texts.ts';
import { QrCode } from '../labels/qr-code.tsx';
import { FamilyChip, familyMark } from '../look/family-mark.tsx';
import { Icon, iconNames } from '../look/icon.tsx';
import { PartCharts } from './part-charts.tsx';
import { PartDrawing } from './part-drawing.tsx';
import { PartFields } from './part-fields.tsx';
import { PartGrid } from './part-grid.tsx';
import { PartOverlays } from './part-overlays.tsx';
import { PartWorking } from './part-working.tsx';

const tokens = [
  'paper',
  'paper-raised',
  'paper-sunk',
  'paper-hover',
  'paper-selected',
  'ink',
  'ink-soft',
  'ink-faint',
  'line',
  'line-strong',
  'accent',
  'accent-soft',
  'stop',
  'guard',
  'note',
  'good',
  'water',
  'soil',
  'wood',
  'mix',
  'hue-1',
  'hue-2',
  'hue-3',
  'hue-4',
  'hue-5',
  'hue-6',
  'hue-7',
  'hue-8',
] as const;
const sizes = ['size-1', 'size-2', 'size-3', 'size-4', 'size-5', 'size-6', 'size-7'] as const;
const weights = ['main', 'plain', 'quiet', 'harm'] as const;

/** Every part in every state, for those who work on the look. Only in the development build; the figures on it are made up. */
export function PartsPage() {
  const [grey, setGrey] = useState(false);
  return (
    <Page
      title="Parts"
      lead="Every part in every state. The figures are made up."
      actions={
        <Button aria-pressed={grey} onClick={() => setGrey(!grey)}>
          {grey ? 'In colour' : 'In grey, as printed'}
        </Button>
      }
    >
      <div className="stack" style={grey ? { filter: 'grayscale(1)' } : {}}>
        <AllParts />
      </div>
    </Page>
  );
}

function AllParts() {
  return (
    <>
      <section className="panel stack" aria-label="Colours">
        <h2>Colours</h2>
        <div className="row">
          {tokens.map((token) => (
            <span key={token} className="part-swatch">
              <span style={{ background: `var(--${token})` }} />
              {token}
            </span>
          ))}
        </div>
      </section>
      <section className="panel stack" aria-label="Type">
        <h2>Type</h2>
        {sizes.map((size) => (
          <p key={size} style={{ fontSize: `var(--${size})` }}>
            Bed B-14 holds 302 L of mix and 41.5 kg of water ({size})
          </p>
        ))}
      </section>
      <section className="panel stack" aria-label="Buttons and marks">
        <h2>Buttons and marks</h2>
        {weights.map((weight) => (
          <div className="row" key={weight}>
            <Button weight={weight}>Build beds</Button>
            <Button weight={weight} icon="add">
              With a mark
            </Button>
            <Button weight={weight} icon="edit" name={`Only a mark, ${weight}`} />
            <Button weight={weight} disabled>
              Not now
            </Button>
            <Button weight={weight} disabled aria-busy="true">
              Saving…
            </Button>
            <Button weight={weight} aria-pressed="true">
              Pressed
            </Button>
          </div>
        ))}
        <div className="row">
          {iconNames.map((name) => (
            <span key={name} title={name}>
              <Icon name={name} size={20} />
            </span>
          ))}
        </div>
        <div className="row">
          {(['good', 'guard', 'stop'] as const).map((tone) => (
            <span key={tone} className="state-mark" data-tone={tone}>
              {tone}
            </span>
          ))}
          <span className="keys">Ctrl K</span>
        </div>
        <div className="row">
          {Array.from({ length: 16 }, (_, at) => at).map((at) => (
            <FamilyChip key={at} mark={familyMark(at)}>
              family {at + 1}
            </FamilyChip>
          ))}
        </div>
      </section>
      <section className="panel stack" aria-label="Fields">
        <h2>Fields</h2>
        <PartFields />
      </section>
      <section className="stack" aria-label="Table">
        <h2>Table</h2>
        <PartGrid />
      </section>
      <section className="stack" aria-label="Charts">
        <h2>Charts</h2>
        <PartCharts />
      </section>
      <section className="panel stack" aria-label="Drawing">
        <h2>Drawing</h2>
        <PartDrawing />
      </section>
      <section className="panel stack" aria-label="Figures and working">
        <h2>Figures and working</h2>
        <PartWorking />
      </section>
      <section className="panel stack" aria-label="States">
        <h2>States</h2>
        <Waiting />
        <Failed message="The disk is full. Nothing was changed." retry={() => undefined} />
        <Empty title="No beds yet" action={<Button weight="main">New design</Button>}>
          Make a design first, then build beds of it.
        </Empty>
        <QrCode text="B-14" size="6rem" name="QR code of B-14" />
      </section>
      <section className="stack" aria-label="What opens over a page">
        <h2>What opens over a page</h2>
        <PartOverlays />
      </section>
      <section className="stack" aria-label="Cautions">
        <h2>Cautions</h2>
        <h3>Folded</h3>
        <Caution id={cautionIds[0] ?? ''} folded />
        <h3>Each of them, open</h3>
        <Cautions ids={cautionIds} />
      </section>
    </>
  );
}
