import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import type { SystemPoint } from '../../../planner/irrigation/system-curve.ts';
import { ChartFrame } from '../../charts/chart-frame.tsx';
import { roundTicks } from '../../charts/round-ticks.ts';
import { useReader } from '../../client/reader.tsx';
import { useSize } from '../../draw/use-size.ts';
import { say } from '../../words/say.ts';

type Point = { readonly flow_L_per_h: number; readonly head_m: number };
type Mark = Point & { readonly name: string; readonly state: 'now' | 'set' };

const ROOM = { left: 46, right: 16, top: 22, bottom: 34 };

/** The pump's falling curve, what the line takes at each head, and where they meet. */
export function PumpChart({
  report,
  system,
  supply,
}: {
  readonly report: LineReport;
  readonly system: readonly SystemPoint[];
  readonly supply: 'reservoir' | 'tap';
}) {
  const reader = useReader();
  const [ref, size] = useSize();
  const marks = report.zones.flatMap((zone): readonly Mark[] => {
    const named = (name: string): string =>
      report.zones.length > 1 ? say('{name}, zone {zone}', { name, zone: zone.zone }) : name;
    return [
      ...(zone.now === null
        ? []
        : [
            { name: named(say('Now')), state: 'now' as const, flow_L_per_h: zone.now.total_L_per_h, head_m: zone.now.pumpHead_m },
          ]),
      ...(zone.design === null
        ? []
        : [
            {
              name: named(say('Valves set')),
              state: 'set' as const,
              flow_L_per_h: zone.design.total_L_per_h,
              head_m: zone.design.pumpHead_m,
            },
          ]),
    ];
  });
  const most = {
    flow: Math.max(report.most_L_per_h ?? 0, ...marks.map((mark) => mark.flow_L_per_h)),
    head: report.shutoff_m ?? 0,
  };
  const shown = { flow: reader.scale(most.flow, 'L_per_h'), head: reader.scale(most.head, 'm') };
  const flowTicks = roundTicks(0, shown.flow, 6);
  const headTicks = roundTicks(0, shown.head, 5);
  const x = (flow: number): number => ROOM.left + (flow / (flowTicks.at(-1) ?? 1)) * (size.width - ROOM.left - ROOM.right);
  const y = (head: number): number =>
    size.height - ROOM.bottom - (head / (headTicks.at(-1) ?? 1)) * (size.height - ROOM.top - ROOM.bottom);
  const path = (points: readonly Point[]): string =>
    points
      .filter((point) => point.flow_L_per_h <= most.flow && point.head_m <= most.head + 1e-9)
      .map(
        (point) =>
          `${x(reader.scale(point.flow_L_per_h, 'L_per_h')).toFixed(1)} ${y(reader.scale(point.head_m, 'm')).toFixed(1)}`,
      )
      .join('L');
  const [pumpPath, linePath] = [path(report.curve), path(system)];
  const rows = [
    ...report.curve.filter((_, at) => at % 4 === 0).map((point) => [say('Pump'), point] as const),
    ...system.map((point) => [say('Line'), point] as const),
  ];
  return (
    <ChartFrame
      title={supply === 'tap' ? say('What the tap gives and the line takes') : say('Pump curve and operating point')}
      height={240}
      table={{
        head: [
          say('Row'),
          say('Curve'),
          say('Flow ({sign})', { sign: reader.sign('L_per_h') }),
          say('Head ({sign})', { sign: reader.sign('m') }),
        ],
        rows: [
          ...rows.map(([name, point], at) => [
            String(at + 1),
            name,
            reader.number(point.flow_L_per_h, 'L_per_h'),
            reader.number(point.head_m, 'm'),
          ]),
          ...marks.map((mark) => [
            mark.name,
            say('Operating point'),
            reader.number(mark.flow_L_per_h, 'L_per_h'),
            reader.number(mark.head_m, 'm'),
          ]),
        ],
      }}
      note={
        report.curveIsGuess && supply === 'reservoir'
          ? say(
              'The curve is a guess from the figures on the box (common practice, no source). Enter the maker’s table of flow and height.',
            )
          : undefined
      }
    >
      <div className="pump-chart" ref={ref}>
        <svg
          role="img"
          aria-label={say('Pump from {head} at no flow to {flow} at no height. {marks}', {
            head: reader.print(most.head, 'm'),
            flow: reader.print(most.flow, 'L_per_h'),
            marks: marks
              .map((mark) =>
                say('{mark}: {flow} at {head}', {
                  mark: mark.name,
                  flow: reader.print(mark.flow_L_per_h, 'L_per_h', 2),
                  head: reader.print(mark.head_m, 'm', 2),
                }),
              )
              .join('. '),
          })}
        >
          {flowTicks.map((tick) => (
            <g key={tick} className="pump-tick">
              <line x1={x(tick)} x2={x(tick)} y1={y(0)} y2={ROOM.top} />
              <text x={x(tick)} y={y(0) + 14} textAnchor="middle">
                {tick}
              </text>
            </g>
          ))}
          {headTicks.map((tick) => (
            <g key={tick} className="pump-tick">
              <line x1={x(0)} x2={size.width - ROOM.right} y1={y(tick)} y2={y(tick)} />
              <text x={x(0) - 5} y={y(tick) + 4} textAnchor="end">
                {tick}
              </text>
            </g>
          ))}
          <text className="pump-axis" x={size.width - ROOM.right} y={size.height - 4} textAnchor="end">
            {say('flow, {sign}', { sign: reader.sign('L_per_h') })}
          </text>
          <text className="pump-axis" x={4} y={12}>
            {say('head, {sign}', { sign: reader.sign('m') })}
          </text>
          {pumpPath === '' ? null : <path className="pump-curve" d={`M${pumpPath}`} />}
          {linePath === '' ? null : <path className="system-curve" d={`M${linePath}`} />}
          {marks.map((mark) => {
            const [cx, cy] = [x(reader.scale(mark.flow_L_per_h, 'L_per_h')), y(reader.scale(mark.head_m, 'm'))];
            const right = cx > size.width * 0.6;
            return (
              <g key={mark.name} className="pump-mark" data-state={mark.state}>
                <circle cx={cx} cy={cy} r={5} />
                <text x={cx + (right ? -9 : 9)} y={cy - 7} textAnchor={right ? 'end' : 'start'}>
                  {mark.name}: {reader.print(mark.flow_L_per_h, 'L_per_h', 2)}
                </text>
              </g>
            );
          })}
        </svg>
      </div>
    </ChartFrame>
  );
}
