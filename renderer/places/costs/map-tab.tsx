import { useState } from 'react';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { ChartFrame } from '../../charts/chart-frame.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { extentOf, scaleTo } from '../../draw/scale.ts';
import { ScaleBar } from '../../draw/scale-bar.tsx';
import { useSize } from '../../draw/use-size.ts';
import { type KeyEntry, sheetOfDrawing } from '../../print/drawn-sheet.tsx';
import { say } from '../../words/say.ts';
import type { TabHead } from '../orders/tab-head.ts';

type MapBed = OutputOf<typeof api.costs.map>[number];
type Measure = 'margin_minor' | 'margin_minor_per_m2' | 'income_minor';

const measures: readonly { readonly value: Measure; readonly text: string }[] = [
  { value: 'margin_minor_per_m2', text: say('Margin for its ground') },
  { value: 'margin_minor', text: say('Margin') },
  { value: 'income_minor', text: say('Income') },
];

/** The site drawing, each bed shaded by what it earned. */
export function MapTab({ tabs, choice, season }: TabHead) {
  const beds = useRead(api.costs.map, { seasonId: season.seasonId });
  const [measure, setMeasure] = useState<Measure>('margin_minor_per_m2');
  return (
    <Page
      title={say('Costs')}
      lead={say('Stronger is more; hatched beds lost money. The figures stand in the table by bed.')}
      tabs={tabs}
      actions={
        <>
          {choice}
          <label className="row small">
            {say('Shade by')}
            <select
              value={measure}
              onChange={(event) =>
                setMeasure(measures.find((each) => each.value === event.target.value)?.value ?? 'margin_minor')
              }
            >
              {measures.map((each) => (
                <option key={each.value} value={each.value}>
                  {each.text}
                </option>
              ))}
            </select>
          </label>
        </>
      }
    >
      <Shown reading={beds}>
        {(all) =>
          all.length === 0 ? (
            <Empty title={say('No beds yet')}>{say('Build beds first.')}</Empty>
          ) : (
            <CostMap beds={all} measure={measure} />
          )
        }
      </Shown>
    </Page>
  );
}

const MARGIN_M = 1.5;
/** A code is written where its bed is drawn at least this wide. */
const LABEL_PX = 34;

function widthOf(bed: MapBed): number {
  const across = ringOnSite(bed).map(([x]) => x);
  return Math.max(...across) - Math.min(...across);
}

/** The map, the same figures as a table, and its sheet of paper. */
function CostMap({ beds, measure }: { readonly beds: readonly MapBed[]; readonly measure: Measure }) {
  const reader = useReader();
  const text = measures.find((each) => each.value === measure)?.text ?? '';
  const title = say('{measure} by bed', { measure: text });
  const head = [say('Bed'), text, say('Income')];
  const rows = beds.map((bed) => [
    bed.code,
    bed[measure] === null ? '–' : reader.money(Math.round(bed[measure])),
    reader.money(bed.income_minor),
  ]);
  return (
    <ChartFrame
      title={title}
      height={Math.max(320, window.innerHeight * 0.6)}
      table={{ head, rows }}
      onPaper={(paper) => sheetOfDrawing(title, paper, <SiteHeat beds={beds} measure={measure} />, { wide: 2, entries: mapKey })}
    >
      <SiteHeat beds={beds} measure={measure} />
    </ChartFrame>
  );
}

const swatch = (fill: string, share: number) => (
  <rect x={1} y={1} width={20} height={11} fill={fill} fillOpacity={share} stroke="var(--line-strong)" />
);

const mapKey: readonly KeyEntry[] = [
  { name: say('nothing'), swatch: swatch('var(--accent)', 0.12) },
  { name: say('stronger is more'), swatch: swatch('var(--accent)', 0.97) },
  {
    name: say('hatched: lost money'),
    swatch: (
      <>
        <LossHatch id="loss-hatch-key" />
        {swatch('url(#loss-hatch-key)', 1)}
      </>
    ),
  },
];

function LossHatch({ id }: { readonly id: string }) {
  return (
    <defs>
      <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1="0" y1="0" x2="0" y2="6" stroke="var(--stop)" strokeWidth="2" />
      </pattern>
    </defs>
  );
}

function SiteHeat({ beds, measure }: { readonly beds: readonly MapBed[]; readonly measure: Measure }) {
  const reader = useReader();
  const [ref, size] = useSize();
  const corners = beds.flatMap((bed) => ringOnSite(bed).map(([x_m, y_m]) => ({ x_m, y_m })));
  const extent = extentOf(corners) ?? { minX_m: 0, minY_m: 0, maxX_m: 1, maxY_m: 1 };
  const scale = scaleTo(
    {
      minX_m: extent.minX_m - MARGIN_M,
      minY_m: extent.minY_m - MARGIN_M,
      maxX_m: extent.maxX_m + MARGIN_M,
      maxY_m: extent.maxY_m + MARGIN_M,
    },
    size,
  );
  const most = Math.max(1, ...beds.map((bed) => Math.abs(bed[measure] ?? 0)));
  return (
    <div className="drawing squared" ref={ref} style={{ height: '100%' }}>
      <svg
        width={size.width}
        height={size.height}
        role="img"
        aria-label={say('Beds of the site shaded by {find}', {
          find: measures.find((each) => each.value === measure)?.text ?? '',
        })}
      >
        <LossHatch id="loss-hatch" />
        {beds.map((bed) => {
          const value = bed[measure] ?? 0;
          const points = ringOnSite(bed)
            .map(([x, y]) => `${scale.x(x).toFixed(1)},${scale.y(y).toFixed(1)}`)
            .join(' ');
          return (
            <g key={bed.bedId}>
              <polygon points={points} fill="var(--paper-raised)" stroke="var(--line-strong)" />
              <polygon
                points={points}
                fill={value < 0 ? 'url(#loss-hatch)' : 'var(--accent)'}
                fillOpacity={0.12 + 0.85 * (Math.abs(value) / most)}
                stroke="none"
              >
                <title>
                  {say('{bed}: {find} {value}, income {income}', {
                    bed: bed.code,
                    find: measures.find((each) => each.value === measure)?.text,
                    value: reader.money(Math.round(value)),
                    income: reader.money(bed.income_minor),
                  })}
                </title>
              </polygon>
              {scale.length(widthOf(bed)) > LABEL_PX ? (
                <text x={scale.x(bed.x_m)} y={scale.y(bed.y_m)} textAnchor="middle" dy={3.5} fontSize="10" fill="var(--ink)">
                  {bed.code}
                </text>
              ) : null}
            </g>
          );
        })}
        <ScaleBar scale={scale} x={16} y={size.height - 16} />
      </svg>
    </div>
  );
}

/** A bed's outline where it lies and as it is turned. */
function ringOnSite(bed: MapBed): readonly (readonly [number, number])[] {
  const turn = (bed.turn_deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return bed.ring_m.map(([x, y]) => [bed.x_m + x * cos - y * sin, bed.y_m + x * sin + y * cos] as const);
}
