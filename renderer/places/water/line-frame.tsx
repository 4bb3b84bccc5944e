import { type ReactNode, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import type { LineData, LineList } from './line-data.ts';
import { LineWizard } from './line-wizard.tsx';

/** What every tab of a line stands in: which line, and a way to draw a new one. */
export function LineFrame({ tools, children }: { readonly tools?: ReactNode; readonly children: (data: LineData) => ReactNode }) {
  const list = useRead(api.waterLines.list, undefined);
  return <Shown reading={list}>{(known) => <ChosenLine known={known} tools={tools} body={children} />}</Shown>;
}

function ChosenLine({
  known,
  tools,
  body,
}: {
  readonly known: LineList;
  readonly tools: ReactNode;
  readonly body: (data: LineData) => ReactNode;
}) {
  const [asked, setAsked] = useQueryValue('line');
  const [drawing, setDrawing] = useState(false);
  const lineId = known.lines.find((line) => line.lineId === asked)?.lineId ?? known.lines[0]?.lineId;
  const wizard = drawing ? (
    <LineWizard
      beds={known.beds}
      onClose={() => setDrawing(false)}
      onDrawn={(drawn) => {
        setDrawing(false);
        setAsked(drawn);
      }}
    />
  ) : null;
  const draw = (
    <Button icon="add" weight={lineId === undefined ? 'main' : 'plain'} onClick={() => setDrawing(true)}>
      {say('Draw a line')}
    </Button>
  );
  if (lineId === undefined)
    return (
      <>
        <Empty title={say('No water line yet')} action={draw}>
          {say(
            'A line is one source with its pump and tubing. Begin with one barrel, one pump and rows of beds; every length and bore can be changed after.',
          )}
        </Empty>
        {wizard}
      </>
    );
  return (
    <div className="stack">
      <div className="row no-print">
        <label className="row">
          <span className="soft small">{say('Line')}</span>
          <select
            className="line-choice"
            aria-label={say('Water line')}
            value={lineId}
            onChange={(event) => setAsked(event.target.value)}
          >
            {known.lines.map((line) => (
              <option key={line.lineId} value={line.lineId}>
                {line.name} ({line.outlets})
              </option>
            ))}
          </select>
        </label>
        {draw}
        {tools}
      </div>
      {wizard}
      <OneLine key={lineId} lineId={lineId} body={body} />
    </div>
  );
}

function OneLine({ lineId, body }: { readonly lineId: string; readonly body: (data: LineData) => ReactNode }) {
  const line = useRead(api.waterLines.one, { lineId });
  return <Shown reading={line}>{body}</Shown>;
}
