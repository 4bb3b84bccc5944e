import { type ReactNode, useCallback, useMemo, useState } from 'react';
import { dateOfDay } from '../../../planner/calendar.ts';
import { checkPlan } from '../../../planner/season/check-plan.ts';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { familyMarks } from '../../look/family-mark.tsx';
import type { Paper } from '../../print/paper.ts';
import { PdfButton } from '../../print/pdf-button.tsx';
import { usePrintable } from '../../print/printables.ts';
import { say } from '../../words/say.ts';
import { AddPlanting, type PlantingStart } from './add-planting.tsx';
import type { BoardData } from './board-data.ts';
import { BoardLegend } from './board-legend.tsx';
import { boardOnPaper } from './board-on-paper.tsx';
import { BoardRules } from './board-rules.tsx';
import { FindingsList } from './findings-list.tsx';
import { GapSheet } from './gap-sheet.tsx';
import { type Lifted, liftedSpans } from './lifted.ts';
import { PlantingSheet } from './planting-sheet.tsx';
import { SeasonBoard } from './season-board.tsx';
import { SeasonChoice, useSeasonId } from './season-choice.tsx';

const zooms = [9, 14, 21, 32, 56] as const;

/** The season drawn: beds down, weeks across. */
export function BoardTab({ tabs }: { readonly tabs: ReactNode }) {
  const [seasonId] = useSeasonId();
  const board = useRead(api.plantings.board, { seasonId });
  return <Shown reading={board}>{(data) => <BoardOf data={data} tabs={tabs} />}</Shown>;
}

function BoardOf({ data, tabs }: { readonly data: BoardData; readonly tabs: ReactNode }) {
  const [plantingId, setPlantingId] = useQueryValue('planting');
  const [gap, setGap] = useState<{ readonly bedId: string; readonly day: number | null } | null>(null);
  const [adding, setAdding] = useState<PlantingStart | null>(null);
  const [zoom, setZoom] = useState(2);
  const [settingRules, setSettingRules] = useState(false);
  const [listing, setListing] = useState(false);
  const move = useChange(api.plantings.move);
  const copy = useChange(api.plantings.copy);
  const remove = useChange(api.plantings.remove);
  const marks = useMemo(() => familyMarks(data.families), [data.families]);
  const findings = useMemo(
    () => checkPlan({ beds: data.beds, plantings: data.plantings, rules: data.rules }).filter((each) => each.weight !== 'note'),
    [data],
  );
  const { run: runMove } = move;
  const { run: runCopy } = copy;
  const onPut = useCallback(
    (lifted: Lifted): void => {
      const planting = data.plantings.find((each) => each.id === lifted.plantingId);
      const row = data.rows.find((each) => each.plantingId === lifted.plantingId);
      if (planting === undefined || row === undefined) return;
      const changesBed = lifted.bedId !== null && lifted.bedId !== lifted.fromBedId;
      const spans = liftedSpans(planting, lifted).map(({ bedId, fromShare, toShare }) => ({ bedId, fromShare, toShare }));
      if (lifted.asCopy) {
        void runCopy(
          { plantingId: lifted.plantingId, days: lifted.days, ...(changesBed ? { spans } : {}) },
          say('Copied {cropName}.', { cropName: planting.crop.cropName }),
        );
        return;
      }
      if (lifted.days === 0 && !changesBed) return;
      void runMove(
        {
          moves: [
            {
              plantingId: lifted.plantingId,
              revision: row.revision,
              how: lifted.how,
              days: lifted.days,
              ...(changesBed ? { spans } : {}),
            },
          ],
        },
        say('Moved {cropName}.', { cropName: planting.crop.cropName }),
      );
    },
    [data, runMove, runCopy],
  );
  const choose = useCallback(
    (id: string): void => {
      setGap(null);
      setPlantingId(id);
    },
    [setPlantingId],
  );
  const { run: runRemove } = remove;
  const acts = useMemo(
    () => ({
      onPut,
      onChoose: choose,
      onGap: (bedId: string, day: number | null) => {
        setPlantingId(undefined);
        setGap({ bedId, day });
      },
      onRemove: (id: string) => void runRemove({ plantingIds: [id] }, say('Removed the planting. Undo brings it back.')),
    }),
    [onPut, choose, runRemove, setPlantingId],
  );
  const reader = useReader();
  const onPaper = (paper: Paper) => boardOnPaper(data, marks, reader, paper);
  const printable = usePrintable(onPaper);
  const bed = gap === null ? undefined : data.beds.find((each) => each.id === gap.bedId);
  const sheet =
    plantingId !== undefined ? (
      <PlantingSheet plantingId={plantingId} data={data} onClose={() => setPlantingId(undefined)} />
    ) : bed !== undefined && gap !== null ? (
      <GapSheet
        bed={bed}
        data={data}
        day={gap.day === null ? null : dateOfDay(gap.day)}
        onPlant={setAdding}
        onClose={() => setGap(null)}
      />
    ) : null;
  return (
    <Page
      title={say('Season')}
      tabs={tabs}
      actions={
        <>
          <SeasonChoice seasonId={data.season.id} />
          <Button onClick={() => setSettingRules(true)}>{say('Rules')}</Button>
          <Button icon="print" onClick={() => window.print()}>
            {say('Print')}
          </Button>
          <PdfButton title={say('Season board')} make={onPaper} />
          <Button weight="main" icon="add" onClick={() => setAdding({})}>
            {say('Add planting')}
          </Button>
        </>
      }
      sheet={sheet}
    >
      {data.beds.length === 0 ? (
        <Empty title={say('No beds yet')}>{say('Build beds first; then plantings are laid on them here.')}</Empty>
      ) : (
        <>
          <div className="row no-print">
            <BoardLegend data={data} marks={marks} />
            <span className="row small">
              <Button weight="quiet" name={say('Narrower weeks')} disabled={zoom === 0} onClick={() => setZoom(zoom - 1)}>
                −
              </Button>
              {say('weeks')}
              <Button
                weight="quiet"
                name={say('Wider weeks')}
                disabled={zoom === zooms.length - 1}
                onClick={() => setZoom(zoom + 1)}
              >
                +
              </Button>
            </span>
            <Button weight="quiet" icon="caution" aria-expanded={listing} onClick={() => setListing(!listing)}>
              {findings.length === 0
                ? say('Nothing against the plan')
                : say('{findings} against the plan', { findings: findings.length })}
            </Button>
          </div>
          {listing ? <FindingsList findings={findings} data={data} onOpen={choose} /> : null}
          <h2 className="print-only">
            {say('Season {season}: {startDate} to {endDate}', {
              season: data.season.name,
              startDate: reader.date(data.season.startDate),
              endDate: reader.date(data.season.endDate),
            })}
          </h2>
          <div ref={printable}>
            <SeasonBoard
              data={data}
              marks={marks}
              week_px={zooms[zoom] ?? 21}
              chosenId={plantingId ?? null}
              today={data.today}
              acts={acts}
            />
          </div>
        </>
      )}
      {adding === null ? null : <AddPlanting start={adding} data={data} onClose={() => setAdding(null)} />}
      {settingRules ? <BoardRules data={data} onClose={() => setSettingRules(false)} /> : null}
    </Page>
  );
}
