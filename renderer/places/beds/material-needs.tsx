import { Shown } from '../../app/states.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';

const counted = (count: number, name: string): string => `${count} ${name}${count === 1 ? '' : 's'}`;

/** All beds together by material: what to get, what it weighs, how many loads. */
export function MaterialNeeds() {
  const reader = useReader();
  const needs = useRead(api.beds.needsByMaterial, undefined);
  return (
    <section className="panel stack" aria-label="By material">
      <h2>By material</h2>
      <Shown reading={needs}>
        {(rows) =>
          rows.length === 0 ? (
            <p className="soft">Nothing is wanted.</p>
          ) : (
            <>
              <dl className="facts">
                {rows.map((row) => (
                  <div key={row.materialId} style={{ display: 'contents' }}>
                    <dt>{row.material}</dt>
                    <dd>
                      {reader.print(row.loose_L, 'bulk_L')} loose for {counted(row.beds, 'bed')},{' '}
                      {counted(row.barrows, 'barrow load')}
                      <div className="small soft">
                        {reader.print(row.fromStock_L, 'bulk_L')} from stock, {reader.print(row.wanted_L, 'bulk_L')} to get
                        {row.moist_kg === null || row.moist_kg === 0 ? '' : ` (${reader.print(row.moist_kg, 'kg')} as handled)`}
                        {row.vehicleLoads === null ? '' : `, ${counted(row.vehicleLoads, 'vehicle load')}`}
                        {row.dig_L === null || row.dig_L === 0 ? '' : `; dig ${reader.print(row.dig_L, 'bulk_L')} from the bank`}
                      </div>
                    </dd>
                  </div>
                ))}
              </dl>
              <p className="small soft">
                Barrow and vehicle are set in Farm; own soil and stock are used first. What is to get goes to Orders.
              </p>
              <Caution id="saturated-weight-lifting" folded />
            </>
          )
        }
      </Shown>
    </section>
  );
}
