import type { ReactNode } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { useReader } from '../../client/reader.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { CountField, ShareField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { FeedingPlanView } from './soil-types.ts';

const secondaries = ['Ca', 'Mg', 'S'] as const;
type Secondary = (typeof secondaries)[number];

/** Measures that lie about in sheds: cups of the kitchen, half and whole litres. */
const scoops_L = [0.059147, 0.118294, 0.236588, 0.25, 0.473176, 0.5, 0.946353, 1] as const;
const names = [
  say('¼ cup'),
  say('½ cup'),
  say('1 cup'),
  say('quarter litre'),
  say('1 pint'),
  say('half litre'),
  say('1 quart'),
  say('1 litre'),
] as const;

function scoopChoices(now_L: number, print: (volume_L: number) => string) {
  const known = scoops_L.map((volume_L, at) => ({ value: String(volume_L), text: `${names[at]} (${print(volume_L)})` }));
  return known.some((each) => each.value === String(now_L)) ? known : [{ value: String(now_L), text: print(now_L) }, ...known];
}

/** How the grower wants to feed: tolerance, measure, parts, organic use, and which nutrients count. */
export function BlendWishes(props: {
  readonly plan: FeedingPlanView;
  readonly season: ReactNode;
  readonly set: (part: Partial<FeedingPlanView['plan']>) => void;
  readonly secondary: readonly Secondary[];
  readonly onSecondary: (names: readonly Secondary[]) => void;
}) {
  const reader = useReader();
  const { plan } = props.plan;
  const { set } = props;
  return (
    <div className="soil-wishes">
      {props.season}
      <ShareField
        label={say('Tolerance either way')}
        value={plan.tolerance_share}
        onChange={(tolerance_share) => tolerance_share === null || set({ tolerance_share })}
      />
      <ChoiceField
        label={say('Your scoop holds')}
        value={String(plan.scoop_L)}
        choices={scoopChoices(plan.scoop_L, (volume_L) => reader.print(volume_L, 'L'))}
        onChange={(text) => set({ scoop_L: Number(text) })}
      />
      <CountField label={say('Given in parts')} value={plan.splits} onChange={(splits) => splits === null || set({ splits })} />
      <CountField
        label={say('Weeks between parts')}
        value={plan.splitWeeks}
        onChange={(splitWeeks) => splitWeeks === null || set({ splitWeeks })}
      />
      <DateField
        label={say('First part on')}
        hint={say('Empty: a week before planting')}
        value={plan.firstDate as IsoDate | null}
        onChange={(firstDate) => set({ firstDate })}
      />
      <FlagField label={say('Organic use only')} value={plan.organicOnly} onChange={(organicOnly) => set({ organicOnly })} />
      {secondaries.map((name) => (
        <FlagField
          key={name}
          label={say('Count {name} too', { name })}
          value={props.secondary.includes(name)}
          onChange={(on) => props.onSecondary(on ? [...props.secondary, name] : props.secondary.filter((each) => each !== name))}
        />
      ))}
    </div>
  );
}
