import { useMemo, useState } from 'react';
import { BATTERY_FACTS, explainUsableEnergy, LITHIUM_CHARGING_C } from '../../../planner/irrigation/battery.ts';
import { type PowerPlan, powerPlan } from '../../../planner/irrigation/power-plan.ts';
import { explainDailyPower } from '../../../planner/irrigation/power-use.ts';
import { monthLoads } from '../../../planner/irrigation/programme-water.ts';
import { roundMoney } from '../../../planner/money.ts';
import { Button } from '../../app/button.tsx';
import { Empty } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { useReader } from '../../client/reader.tsx';
import { shortMonthNames } from '../../words/months.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { LineData } from './line-data.ts';
import { LineFrame } from './line-frame.tsx';
import { solved } from './line-solve.ts';
import { cautionsOfPower } from './power-cautions.ts';
import { PowerDialog } from './power-dialog.tsx';

/** What the line takes from its power, and how long a battery carries it. */
export function PowerTab() {
  return <LineFrame>{(data) => <PowerBody data={data} />}</LineFrame>;
}

function planOf(data: LineData): PowerPlan | null {
  if (data.power === null) return null;
  const report = solved(data.plan).report;
  const flows = (report?.zones ?? []).map((zone) => ({ zone: zone.zone, total_L_per_h: zone.now?.total_L_per_h ?? 0 }));
  return powerPlan({
    power: data.power,
    pump_W: (data.plan.pump?.power_W ?? 0) * (data.plan.pump?.count ?? 1),
    months: monthLoads(data.timers, flows),
    electricity_minor_per_kWh: data.prices?.electricity_minor_per_kWh ?? 0,
  });
}

function PowerBody({ data }: { readonly data: LineData }) {
  const reader = useReader();
  const [open, setOpen] = useState(false);
  const plan = useMemo(() => planOf(data), [data]);
  const edit = (
    <Button onClick={() => setOpen(true)}>{data.power === null ? say('Enter the power') : say('Change the power')}</Button>
  );
  const lithium = data.power?.battery === 'lithium-iron-phosphate' || data.power?.battery === 'other-lithium';
  return (
    <div className="stack">
      {plan === null ? (
        <Empty title={say('What drives the pump?')} action={edit}>
          {say('Mains with a timer, a battery with or without a panel, or an engine.')}
        </Empty>
      ) : (
        <>
          <div className="row no-print">{edit}</div>
          {plan.hardest === null ? (
            <Empty title={say('No timer programme yet')}>{say('Enter one on the tab Timer; the energy follows from it.')}</Empty>
          ) : (
            <PowerAnswer data={data} plan={plan} />
          )}
        </>
      )}
      {lithium ? (
        <p className="panel line-panel">
          {say(
            'Lithium: no charging below {least} or above {most}, no direct sun. A closed box outdoors passes that on many summer days.',
            { least: reader.print(LITHIUM_CHARGING_C.least_C, 'C'), most: reader.print(LITHIUM_CHARGING_C.most_C, 'C') },
          )}
        </p>
      ) : null}
      <Cautions ids={cautionsOfPower(data)} />
      {open ? <PowerDialog data={data} onClose={() => setOpen(false)} /> : null}
    </div>
  );
}

function PowerAnswer({ data, plan }: { readonly data: LineData; readonly plan: PowerPlan }) {
  const reader = useReader();
  const { power } = data;
  const { hardest } = plan;
  if (power === null || hardest === null) return null;
  const battery = power.kind === 'battery';
  const facts = BATTERY_FACTS[power.battery ?? 'other-lithium'];
  return (
    <>
      <dl className="figures">
        <div>
          <dt>{say('A mean day in {month}, the hardest month', { month: shortMonthNames[hardest.month - 1] })}</dt>
          <dd>
            <Figure
              value={hardest.day.total_Wh}
              unit="Wh"
              name={say('Energy of a mean day')}
              digits={2}
              explain={() => explainDailyPower(hardest.input)}
            />
          </dd>
        </div>
        {battery ? (
          <>
            <div>
              <dt>{say('Usable when full')}</dt>
              <dd>
                {plan.usable_Wh === null || power.capacity_Wh === null ? (
                  '–'
                ) : (
                  <Figure
                    value={plan.usable_Wh}
                    unit="Wh"
                    name={say('Usable energy')}
                    digits={2}
                    explain={() => explainUsableEnergy(power.capacity_Wh ?? 0, power.usableShare ?? facts.usableShare)}
                  />
                )}
              </dd>
            </div>
            <div>
              <dt>{say('Days without sun')}</dt>
              <dd>{plan.days === null ? '–' : reader.print(plan.days, 'days')}</dd>
            </div>
            <div>
              <dt>{say('Panel that keeps up')}</dt>
              <dd>{plan.neededPanel_W === null ? '–' : reader.print(plan.neededPanel_W, 'W', 2)}</dd>
            </div>
            <div>
              <dt>{say('Battery for three dark days, 12 V')}</dt>
              <dd>{plan.neededBattery_Ah === null ? '–' : reader.print(plan.neededBattery_Ah, 'Ah', 2)}</dd>
            </div>
          </>
        ) : null}
        <div>
          <dt>{say('Through the year’s programme')}</dt>
          <dd>{reader.print(plan.season_kWh, 'kWh', 2)}</dd>
        </div>
        {power.kind === 'mains' ? (
          <div>
            <dt>{say('From the mains, a year')}</dt>
            <dd>{reader.money(roundMoney(plan.seasonCost_minor))}</dd>
          </div>
        ) : null}
      </dl>
      <p>{decided[hardest.day.decides]}</p>
      {battery && power.peakSun_h === null ? (
        <p className="soft small">
          {say('Enter the peak-sun hours of the month of use to size the panel; take that month, not the year’s mean.')}
        </p>
      ) : null}
      <table className="plain-table">
        <caption className="soft small">{say('A mean day of each month of the programme')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('Month')}</th>
            <th scope="col" className="number">
              {say('Pump')}
            </th>
            <th scope="col" className="number">
              {say('Controller')}
            </th>
            <th scope="col" className="number">
              {say('Inverter')}
            </th>
            <th scope="col" className="number">
              {say('Together')}
            </th>
            {battery ? (
              <th scope="col" className="number">
                {say('From the panel')}
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {plan.months.map((month) => (
            <tr key={month.month}>
              <th scope="row">{shortMonthNames[month.month - 1]}</th>
              <td className="number">{reader.print(month.day.pump_Wh, 'Wh', 2)}</td>
              <td className="number">{reader.print(month.day.controller_Wh, 'Wh', 2)}</td>
              <td className="number">{reader.print(month.day.idle_Wh + month.day.inverterLoss_Wh, 'Wh', 2)}</td>
              <td className="number">{reader.print(month.day.total_Wh, 'Wh', 2)}</td>
              {battery ? (
                <td className="number">{month.panel_Wh === null ? '–' : reader.print(month.panel_Wh, 'Wh', 2)}</td>
              ) : null}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

const decided: Readonly<Record<'pump' | 'controller' | 'inverter', string>> = {
  pump: say('The pump itself decides.'),
  controller: say('The controller’s stand-by decides, not the pump: a thriftier timer does more than a thriftier pump.'),
  inverter: say('The inverter decides, not the pump: a direct-current pump, or an inverter that sleeps, saves most of it.'),
};
