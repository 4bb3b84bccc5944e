import { useState } from 'react';
import { Button } from '../app/button.tsx';
import { Empty, Shown } from '../app/states.tsx';
import { api } from '../client/api.ts';
import { useReader } from '../client/reader.tsx';
import { type OutputOf, useRead } from '../client/use-read.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { FlagField } from '../fields/flag-field.tsx';
import { CountField } from '../fields/quantity-field.tsx';
import { sizeOfPaper_px } from '../print/paper.ts';
import { savePdf } from '../print/save-pdf.ts';
import { sheetOf } from '../print/sheet-of.ts';
import { say } from '../words/say.ts';
import { type LabelSheet, labelSheets, paperSizes_mm, placesOf } from './label-sheets.ts';
import { QrCode } from './qr-code.tsx';

type Label = OutputOf<typeof api.labels.beds>[number];

/** Labels for beds on a sheet of labels: the code, what grows, and the code as a QR code. `bedIds` names which; all when empty. */
export function BedLabels({ bedIds }: { readonly bedIds: readonly string[] }) {
  const labels = useRead(api.labels.beds, undefined);
  const reader = useReader();
  const [sheetId, setSheetId] = useState(reader.system === 'us' ? 'letter-30' : 'a4-21');
  const [skipped, setSkipped] = useState<number | null>(0);
  const [outlined, setOutlined] = useState(true);
  const sheet = labelSheets.find((each) => each.id === sheetId) ?? (labelSheets[0] as LabelSheet);
  return (
    <Shown reading={labels}>
      {(all) => {
        const wanted = bedIds.length === 0 ? all : all.filter((label) => bedIds.includes(label.bedId));
        if (wanted.length === 0) return <Empty title={say('No beds to label')}>{say('Build beds first.')}</Empty>;
        const used = Math.max(0, Math.min(skipped ?? 0, sheet.across * sheet.down - 1));
        return (
          <>
            <div className="panel row label-options no-print">
              <ChoiceField
                label={say('Sheet')}
                value={sheet.id}
                choices={labelSheets.map(({ id, text }) => ({ value: id, text }))}
                onChange={setSheetId}
              />
              <CountField label={say('Labels already used on the first sheet')} value={skipped} onChange={setSkipped} />
              <FlagField label={say('Outlines (for plain paper)')} value={outlined} onChange={setOutlined} />
              <Button weight="main" icon="print" onClick={() => window.print()}>
                {say('Print {wanted} labels', { wanted: wanted.length })}
              </Button>
              <Button weight="quiet" name={say('Save the sheets of labels as PDF')} onClick={() => void saveSheets(sheet)}>
                {say('PDF')}
              </Button>
            </div>
            <p className="small soft no-print">
              {say('Print at full size, without fitting to the page. Try one sheet of plain paper against the labels first.')}
            </p>
            <Sheets sheet={sheet} labels={wanted} skipped={used} outlined={outlined} />
          </>
        );
      }}
    </Shown>
  );
}

async function saveSheets({ paper }: LabelSheet): Promise<void> {
  const size = sizeOfPaper_px(paper);
  const sheets = [...document.querySelectorAll('.label-sheet')];
  await savePdf(
    say('Bed labels'),
    paper,
    sheets.map((sheet) => sheetOf(sheet, size)),
  );
}

function Sheets({
  sheet,
  labels,
  skipped,
  outlined,
}: {
  readonly sheet: LabelSheet;
  readonly labels: readonly Label[];
  readonly skipped: number;
  readonly outlined: boolean;
}) {
  const places = placesOf(sheet, labels.length, skipped);
  const pages = (places.at(-1)?.page ?? 0) + 1;
  const paper = paperSizes_mm[sheet.paper];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keys
    <section className="label-sheets" data-paper={sheet.paper} aria-label={say('Sheets of labels')} tabIndex={0}>
      {Array.from({ length: pages }, (_, page) => page).map((page) => (
        <section
          key={page}
          className="label-sheet"
          aria-label={say('Sheet {page}', { page: page + 1 })}
          style={{ width: `${paper.width}mm`, height: `${paper.height}mm` }}
        >
          {labels.map((label, at) => {
            const place = places[at];
            return place === undefined || place.page !== page ? null : (
              <BedLabel key={label.bedId} label={label} sheet={sheet} x_mm={place.x_mm} y_mm={place.y_mm} outlined={outlined} />
            );
          })}
        </section>
      ))}
    </section>
  );
}

function BedLabel(props: {
  readonly label: Label;
  readonly sheet: LabelSheet;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly outlined: boolean;
}) {
  const { label, sheet, x_mm, y_mm, outlined } = props;
  const reader = useReader();
  const code_mm = Math.min(sheet.height_mm - 3, sheet.width_mm * 0.42);
  return (
    <article
      className="bed-label"
      data-outlined={outlined ? '' : undefined}
      style={{ left: `${x_mm}mm`, top: `${y_mm}mm`, width: `${sheet.width_mm}mm`, height: `${sheet.height_mm}mm` }}
    >
      <QrCode text={label.code} size={`${code_mm}mm`} name={say('QR code of {label}', { label: label.code })} />
      <div>
        <strong style={{ fontSize: `${Math.min(9, sheet.height_mm * 0.24)}mm` }}>{label.code}</strong>
        <span>{label.crop}</span>
        <span className="label-small">{label.variety}</span>
        <span className="label-small">
          {label.from === null ? label.block : say('from {from}', { from: reader.date(label.from) })}
        </span>
      </div>
    </article>
  );
}
