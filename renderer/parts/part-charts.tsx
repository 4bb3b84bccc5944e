import { Chart } from '../charts/chart.tsx';
import { HeatMap } from '../charts/heat-map.tsx';

const days = Array.from({ length: 40 }, (_, at) => ({
  day: `07-${String((at % 31) + 1).padStart(2, '0')}`,
  need: 120 + 40 * Math.sin(at / 5),
  supply: 150 - at,
}));
const weeks = Array.from({ length: 26 }, (_, at) => `W${at + 10}`);
const beds = Array.from({ length: 12 }, (_, at) => `B-${at + 1}`);

/** Each kind of chart, over made-up figures. */
export function PartCharts() {
  const x = { name: 'Day', text: (row: (typeof days)[number]) => row.day };
  return (
    <div className="columns">
      <Chart
        title="Lines with a band and a mark"
        rows={days}
        x={x}
        unit="L_per_day"
        series={[
          { name: 'Need', as: 'line', read: (row) => row.need },
          { name: 'Supply', as: 'line', read: (row) => row.supply },
        ]}
        bands={[{ name: '10 to 90 % of years', low: (row) => row.need * 0.8, high: (row) => row.need * 1.25 }]}
        marks={[{ name: 'Most the pump gives', value: 170 }]}
      />
      <Chart
        title="Stacked areas"
        rows={days}
        x={x}
        unit="L_per_day"
        series={[
          { name: 'Framed beds', as: 'stack', read: (row) => row.need * 0.5 },
          { name: 'Bags', as: 'stack', read: (row) => row.need * 0.3 },
          { name: 'Troughs', as: 'stack', read: (row) => row.need * 0.2 },
        ]}
      />
      <Chart
        title="Bars of money"
        rows={beds.map((bed, at) => ({ bed, cost: 4000 + at * 900, income: 9000 - at * 350 }))}
        x={{ name: 'Bed', text: (row) => row.bed }}
        unit="minor"
        series={[
          { name: 'Cost', as: 'bar', read: (row) => row.cost },
          { name: 'Margin', as: 'bar', read: (row) => row.income - row.cost },
        ]}
      />
      <Chart
        title="An area with a day marked, and gaps where nothing is known"
        rows={days}
        x={x}
        unit="L_per_day"
        series={[{ name: 'Taken', as: 'area', read: (row) => (row.supply % 7 === 0 ? null : row.need) }]}
        marks={[{ name: 'Tank empty', at: '07-20' }]}
        note="A note says from what the figures come."
      />
      <Chart title="A chart of nothing yet" rows={[]} x={x} unit="L_per_day" series={[]} />
      <HeatMap
        title="Occupancy"
        rows={beds}
        columns={weeks}
        ways={['Bed', 'Week']}
        unit="share"
        value={(row, column) => (column < row ? null : Math.abs(Math.sin((row + 1) * (column + 2))))}
      />
    </div>
  );
}
