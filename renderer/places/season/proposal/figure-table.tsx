import type { ReactNode } from 'react';
import { explainPlanMargin } from '../../../../planner/season/proposal/explain-plan.ts';
import { useReader } from '../../../client/reader.tsx';
import { say } from '../../../words/say.ts';
import { Figure } from '../../../working/figure.tsx';
import type { Figures } from './proposal-types.ts';

type Line = {
  readonly name: string;
  readonly hint?: string;
  readonly print: (figures: Figures) => ReactNode;
  readonly value: (figures: Figures) => number;
};

/** The same figures of several plans side by side, the difference to the first beneath each. */
export function FigureTable({
  plans,
  caption,
}: {
  readonly plans: readonly { readonly name: string; readonly figures: Figures; readonly note?: string }[];
  readonly caption: string;
}) {
  const reader = useReader();
  const percent = (share: number) => reader.print(share, 'share', 2);
  const lines: readonly Line[] = [
    {
      name: say('Margin'),
      hint: say('after missed orders'),
      print: (figures) => <Figure of={explainPlanMargin(figures)} />,
      value: ({ margin_minor }) => margin_minor,
    },
    { name: say('Sales'), print: ({ sales_minor }) => reader.money(sales_minor), value: ({ sales_minor }) => sales_minor },
    {
      name: say('Missed orders'),
      hint: say('what they cost'),
      print: ({ missed_minor }) => reader.money(missed_minor),
      value: ({ missed_minor }) => missed_minor,
    },
    {
      name: say('Standing orders met'),
      hint: say('by worth'),
      print: ({ ordersMet_share }) => percent(ordersMet_share),
      value: ({ ordersMet_share }) => ordersMet_share,
    },
    { name: say('Wages'), print: ({ wages_minor }) => reader.money(wages_minor), value: ({ wages_minor }) => wages_minor },
    {
      name: say('Other direct costs'),
      print: ({ direct_minor }) => reader.money(direct_minor),
      value: ({ direct_minor }) => direct_minor,
    },
    { name: say('Hours'), print: ({ hours_h }) => reader.print(hours_h, 'h', 3), value: ({ hours_h }) => hours_h },
    { name: say('Overtime'), print: ({ overtime_h }) => reader.print(overtime_h, 'h', 3), value: ({ overtime_h }) => overtime_h },
    {
      name: say('Water'),
      hint: say('crops’ need in dry weeks'),
      print: ({ water_L }) => reader.print(water_L, 'L', 3),
      value: ({ water_L }) => water_L,
    },
    {
      name: say('Bed taken'),
      hint: say('area times weeks'),
      print: ({ bedWeeks_m2 }) => `${reader.number(bedWeeks_m2, 'm2', 3)} ${reader.sign('m2')}·weeks`,
      value: ({ bedWeeks_m2 }) => bedWeeks_m2,
    },
    { name: say('Crops grown'), print: ({ crops }) => String(crops), value: ({ crops }) => crops },
  ];
  const [first] = plans;
  return (
    <section
      className="proposal-scroll"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls, and must do so by keys too
      tabIndex={0}
      aria-label={caption}
    >
      <table className="proposal-figures">
        <caption className="heard-only">{caption}</caption>
        <thead>
          <tr>
            <td />
            {plans.map(({ name, note }) => (
              <th scope="col" key={name}>
                {name}
                {note === undefined ? null : <div className="small soft">{note}</div>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.name}>
              <th scope="row">
                {line.name}
                {line.hint === undefined ? null : <span className="small soft"> {line.hint}</span>}
              </th>
              {plans.map(({ name, figures }, at) => (
                <td
                  key={name}
                  className={
                    at > 0 && first !== undefined && line.value(figures) !== line.value(first.figures)
                      ? 'proposal-changed'
                      : undefined
                  }
                >
                  {line.print(figures)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
