import type { PrintedPart } from '../../../api/print/printed-document.ts';
import { checkPlan } from '../../../planner/season/check-plan.ts';
import type { Finding } from '../../../planner/season/plan.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import type { FamilyMark } from '../../look/family-mark.tsx';
import { DrawnSheet, type KeyEntry } from '../../print/drawn-sheet.tsx';
import { type Paper, roomOn } from '../../print/paper.ts';
import { drawnOnPaper } from '../../print/stage.ts';
import { say } from '../../words/say.ts';
import { BoardBar } from './board-bar.tsx';
import type { BoardData, BoardRow } from './board-data.ts';
import { BoardHead, BoardLevels } from './board-head.tsx';
import { StripKey } from './board-legend.tsx';
import { type BoardLine, boardLines, piecesOf } from './board-lines.ts';
import { type BoardSheet, boardSheets, SHEET_PX, sheetEnds } from './board-sheets.ts';
import { FamilyTextures } from './family-textures.tsx';
import { worstByPlanting } from './lifted.ts';

type Marks = ReadonlyMap<string, FamilyMark>;

/** The season board on paper: as many sheets as it needs at a readable size, names of beds and weeks on each. */
export async function boardOnPaper(data: BoardData, marks: Marks, reader: Reader, paper: Paper): Promise<readonly PrintedPart[]> {
  const room = roomOn(paper, true);
  const sheets = boardSheets(boardLines(data, data.plantings), data.rules.start, data.rules.end, room);
  const worst = worstByPlanting(checkPlan({ beds: data.beds, plantings: data.plantings, rules: data.rules }));
  const parts: PrintedPart[] = [];
  for (const [at, sheet] of sheets.entries()) {
    const { beds, from, to } = sheetEnds(sheet);
    const text = say('Season {season}, sheet {sheet} of {sheets}: {beds}, {from} to {to}', {
      season: data.season.name,
      sheet: at + 1,
      sheets: sheets.length,
      beds: beds.length === 0 ? say('No bed yet') : beds.join(' – '),
      from: reader.date(from),
      to: reader.date(to),
    });
    const drawing = (
      <DrawnSheet entries={keyOf(data, marks)}>
        <SheetOf data={data} sheet={sheet} marks={marks} worst={worst} />
      </DrawnSheet>
    );
    parts.push({ kind: 'heading', level: 1, text }, await drawnOnPaper(drawing, room, true));
  }
  return parts;
}

function keyOf(data: BoardData, marks: Marks): readonly KeyEntry[] {
  const families = [...new Set(data.plantings.map((planting) => planting.crop.family))].sort();
  return [
    { name: say('raised, growing, harvest, clearing'), wide: 62, swatch: <StripKey /> },
    ...families.flatMap((family): readonly KeyEntry[] => {
      const mark = marks.get(family);
      return mark === undefined ? [] : [{ name: family, swatch: <FamilySwatch mark={mark} /> }];
    }),
  ];
}

function FamilySwatch({ mark }: { readonly mark: FamilyMark }) {
  return (
    <g className="strip" style={{ color: mark.hue }}>
      <rect className="strip-harvest" x={1} y={1} width={20} height={11} />
      {mark.texture === 'plain' ? null : <rect x={1} y={1} width={20} height={11} fill={`url(#family-${mark.texture})`} />}
    </g>
  );
}

function SheetOf(props: {
  readonly data: BoardData;
  readonly sheet: BoardSheet;
  readonly marks: Marks;
  readonly worst: ReadonlyMap<string, Finding>;
}) {
  const { data, sheet, marks, worst } = props;
  const { scale, lines, height_px } = sheet;
  const { name, head } = SHEET_PX;
  const rows = new Map(data.rows.map((row) => [row.plantingId, row]));
  const tops = topsOf(lines);
  const weeks = Array.from({ length: (scale.last - scale.first) / 7 + 1 }, (_, at) => name + at * 7 * scale.day_px);
  return (
    <div className="board-paper">
      <FamilyTextures />
      <svg aria-hidden="true" width={name + scale.width_px + 1} height={head + height_px + 1}>
        <path className="board-paper-week" d={weeks.map((x) => `M${x.toFixed(2)} ${head}V${head + height_px}`).join('')} />
        <path className="board-paper-edge" d={`M0 ${head}H${name + scale.width_px}M${name} 0V${head + height_px}`} />
        {lines.map((line, at) => (
          <PaperLine
            key={line.id}
            line={line}
            top={head + (tops[at] ?? 0)}
            scale={scale}
            rows={rows}
            marks={marks}
            worst={worst}
          />
        ))}
        <g transform={`translate(${name} 0)`}>
          <BoardHead scale={scale} />
        </g>
        <g transform={`translate(${name} ${head})`}>
          <BoardLevels scale={scale} frost={data.frost} today={data.today} height_px={height_px} />
        </g>
      </svg>
    </div>
  );
}

function topsOf(lines: readonly BoardLine[]): readonly number[] {
  let top = 0;
  return lines.map((line) => {
    const here = top;
    top += line.kind === 'block' ? SHEET_PX.block : SHEET_PX.bed;
    return here;
  });
}

function PaperLine(props: {
  readonly line: BoardLine;
  readonly top: number;
  readonly scale: BoardSheet['scale'];
  readonly rows: ReadonlyMap<string, BoardRow>;
  readonly marks: Marks;
  readonly worst: ReadonlyMap<string, Finding>;
}) {
  const { line, top, scale, rows, marks, worst } = props;
  const { name, bed, block } = SHEET_PX;
  const wide = name + scale.width_px;
  if (line.kind === 'block')
    return (
      <g className="board-paper-block">
        <rect x={0} y={top} width={wide} height={block} />
        <text x={4} y={top + 14}>
          {line.title}
        </text>
      </g>
    );
  return (
    <g>
      <path className="board-paper-week" d={`M0 ${top + bed}H${wide}`} />
      <text className="board-paper-name" x={4} y={top + 18}>
        {line.kind === 'unplaced' ? say('No bed yet') : line.bed.code}
      </text>
      <svg aria-hidden="true" x={name} y={top} width={scale.width_px} height={bed}>
        {piecesOf(line)
          .toReversed()
          .map(({ planting, span }) => (
            <BoardBar
              key={`${planting.id} ${span?.fromShare ?? 0}`}
              planting={planting}
              span={span}
              row={rows.get(planting.id)}
              scale={scale}
              line_px={bed}
              mark={marks.get(planting.crop.family)}
              worst={worst.get(planting.id)}
              standing="put"
            />
          ))}
      </svg>
    </g>
  );
}
