import { useMemo } from 'react';
import { InputError } from '../../../planner/errors.ts';
import { type LineOption, lineOptions } from '../../../planner/irrigation/line-options.ts';
import { pricesOfParts } from '../../../planner/irrigation/part-prices.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { say } from '../../words/say.ts';
import { type LineData, optionTitles } from './line-data.ts';

function optionsOf(data: LineData): readonly LineOption[] {
  try {
    return lineOptions({
      plan: data.plan,
      prices: pricesOfParts(data.parts),
      wanted_L: new Map(data.facts.map((fact) => [fact.outletId, fact.wanted_L])),
    });
  } catch (error) {
    if (error instanceof InputError) return [];
    throw error;
  }
}

/** Ways to get more water to the beds, each computed on the whole line, with what its parts cost. */
export function LineOptions({ data }: { readonly data: LineData }) {
  const reader = useReader();
  const take = useChange(api.waterLines.takeOption);
  const options = useMemo(() => optionsOf(data), [data]);
  if (options.length === 0) return null;
  const cost = (option: LineOption): string =>
    option.kind === 'as-it-is'
      ? '–'
      : option.cost_minor === 0
        ? say('none')
        : option.cost_minor === null
          ? say('no price known')
          : reader.money(option.cost_minor);
  return (
    <section className="panel line-panel">
      <h2>{say('Ways compared')}</h2>
      <p className="soft small">
        {say('Valves set, reservoir at its lowest. Costs are those of the parts on offer; working time is not in them.')}
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{say('Way')}</th>
            <th scope="col" className="number">
              {say('Least bed')}
            </th>
            <th scope="col" className="number">
              {say('Whole programme')}
            </th>
            <th scope="col" className="number">
              {say('Parts')}
            </th>
            <td className="no-print" />
          </tr>
        </thead>
        <tbody>
          {options.map((option) => {
            const { kind } = option;
            const name =
              option.mainDiameter_m === null
                ? optionTitles[kind]
                : say('{optionTitles}, {mainDiameter} inside', {
                    optionTitles: optionTitles[kind],
                    mainDiameter: reader.print(option.mainDiameter_m * 1000, 'mm'),
                  });
            return (
              <tr key={`${kind} ${option.mainDiameter_m}`}>
                <th scope="row">
                  {name}
                  {option.unserved > 0 ? (
                    <span className="small soft"> {say('· {unserved} beds not reached', { unserved: option.unserved })}</span>
                  ) : null}
                </th>
                <td className="number">{reader.print(option.least_L_per_h, 'L_per_h', 2)}</td>
                <td className="number">{option.programme_min > 0 ? reader.print(option.programme_min, 'min', 2) : '–'}</td>
                <td className="number">{cost(option)}</td>
                <td className="no-print">
                  {kind === 'as-it-is' ? null : (
                    <Button
                      weight="quiet"
                      disabled={take.busy}
                      aria-label={say('Rebuild the line so: {name}', { name })}
                      onClick={() =>
                        void take.run(
                          { lineId: data.line.id, kind, mainDiameter_m: option.mainDiameter_m },
                          say('Rebuilt: {name}.', { name }),
                        )
                      }
                    >
                      {say('Rebuild so')}
                    </Button>
                  )}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
