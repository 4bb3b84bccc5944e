import type { ReactNode } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { DateField } from '../../fields/date-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { CountField, QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import type { FeedingPlanView } from './soil-types.ts';

const secondaries = ['Ca', 'Mg', 'S'] as const;
type Secondary = (typeof secondaries)[number];

/** How the grower wants to feed: tolerance, measure, parts, organic use, and which nutrients count. */
export function BlendWishes(props: {
  readonly plan: FeedingPlanView;
  readonly season: ReactNode;
  readonly set: (part: Partial<FeedingPlanView['plan']>) => void;
  readonly secondary: readonly Secondary[];
  readonly onSecondary: (names: readonly Secondary[]) => void;
}) {
  const { plan } = props.plan;
  const { set } = props;
  return (
    <div className="soil-wishes">
      {props.season}
      <ShareField
        label="Tolerance either way"
        value={plan.tolerance_share}
        onChange={(tolerance_share) => tolerance_share === null || set({ tolerance_share })}
      />
      <QuantityField
        label="Your scoop holds"
        unit="L"
        value={plan.scoop_L}
        onChange={(scoop_L) => scoop_L === null || set({ scoop_L })}
      />
      <CountField label="Given in parts" value={plan.splits} onChange={(splits) => splits === null || set({ splits })} />
      <CountField
        label="Weeks between parts"
        value={plan.splitWeeks}
        onChange={(splitWeeks) => splitWeeks === null || set({ splitWeeks })}
      />
      <DateField
        label="First part on"
        hint="Empty: a week before planting"
        value={plan.firstDate as IsoDate | null}
        onChange={(firstDate) => set({ firstDate })}
      />
      <FlagField label="Organic use only" value={plan.organicOnly} onChange={(organicOnly) => set({ organicOnly })} />
      {secondaries.map((name) => (
        <FlagField
          key={name}
          label={`Count ${name} too`}
          value={props.secondary.includes(name)}
          onChange={(on) => props.onSecondary(on ? [...props.secondary, name] : props.secondary.filter((each) => each !== name))}
        />
      ))}
    </div>
  );
}
