import { type FamilyMark, familyBackground } from '../../../look/family-mark.tsx';
import { say } from '../../../words/say.ts';
import type { Strip, StripBar } from './strip-rows.ts';

/** Each bed twice: the present plan above, the proposal beneath, weeks across. A tick takes the bed over. */
export function PlanStrips({
  strips,
  months,
  marks,
  chosen,
  onToggle,
}: {
  readonly strips: readonly Strip[];
  readonly months: readonly { readonly text: string; readonly at: number }[];
  readonly marks: ReadonlyMap<string, FamilyMark>;
  readonly chosen: ReadonlySet<string>;
  readonly onToggle: (bedId: string) => void;
}) {
  return (
    <fieldset className="plan-strips">
      <legend className="heard-only">{say('Beds: the present plan above, the proposal beneath')}</legend>
      <div className="plan-strip plan-strip-head" aria-hidden="true">
        <span />
        <span className="plan-strip-lanes">
          {months.map(({ text, at }) => (
            <span key={`${text}${at}`} className="plan-strip-month" style={{ insetInlineStart: `${at * 100}%` }}>
              {text}
            </span>
          ))}
        </span>
      </div>
      {strips.map((strip) => (
        <label key={strip.bedId} className="plan-strip" data-changes={strip.changes ? '' : undefined}>
          <span className="row plan-strip-name">
            <input
              type="checkbox"
              checked={chosen.has(strip.bedId)}
              disabled={!strip.changes}
              onChange={() => onToggle(strip.bedId)}
            />
            {strip.code}
            <span className="heard-only">{strip.said}</span>
          </span>
          <span className="plan-strip-lanes" aria-hidden="true">
            {strip.present.map((bar) => (
              <Bar key={bar.key} bar={bar} lane="present" marks={marks} />
            ))}
            {strip.proposed.map((bar) => (
              <Bar key={bar.key} bar={bar} lane="proposed" marks={marks} />
            ))}
          </span>
        </label>
      ))}
    </fieldset>
  );
}

function Bar({
  bar,
  lane,
  marks,
}: {
  readonly bar: StripBar;
  readonly lane: 'present' | 'proposed';
  readonly marks: ReadonlyMap<string, FamilyMark>;
}) {
  const mark = marks.get(bar.family);
  return (
    <span
      className="plan-strip-bar"
      data-lane={lane}
      data-fixed={bar.isFixed ? '' : undefined}
      title={bar.title}
      style={{
        insetInlineStart: `${bar.from * 100}%`,
        inlineSize: `${Math.max(0.3, (bar.to - bar.from) * 100)}%`,
        ...(mark === undefined ? {} : { background: familyBackground(mark), borderColor: mark.hue }),
      }}
    >
      <span>{bar.text}</span>
    </span>
  );
}
