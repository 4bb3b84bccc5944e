import { Shown } from '../../app/states.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

const counted = (count: number, name: string): string => `${count} ${name}${count === 1 ? '' : 's'}`;

/** All beds together by material: what to get, what it weighs, how many loads. */
export function MaterialNeeds() {
  const reader = useReader();
  const needs = useRead(api.beds.needsByMaterial, undefined);
  return (
    <section className="panel stack" aria-label={say('By material')}>
      <h2>{say('By material')}</h2>
      <Shown reading={needs}>
        {(rows) =>
          rows.length === 0 ? (
            <p className="soft">{say('Nothing is wanted.')}</p>
          ) : (
            <>
              <dl className="facts">
                {rows.map((row) => (
                  <div key={row.materialId} style={{ display: 'contents' }}>
                    <dt>{row.material}</dt>
                    <dd>
                      {say('{loose} loose for {counted}, {counted2}', {
                        loose: reader.print(row.loose_L, 'bulk_L'),
                        counted: counted(row.beds, 'bed'),
                        counted2: counted(row.barrows, say('barrow load')),
                      })}
                      <div className="small soft">
                        {say('{fromStock} from stock, {wanted} to get{more}{more2}{more3}', {
                          fromStock: reader.print(row.fromStock_L, 'bulk_L'),
                          wanted: reader.print(row.wanted_L, 'bulk_L'),
                          more:
                            row.moist_kg === null || row.moist_kg === 0
                              ? ''
                              : say(' ({moist} as handled)', { moist: reader.print(row.moist_kg, 'kg') }),
                          more2: row.vehicleLoads === null ? '' : `, ${counted(row.vehicleLoads, say('vehicle load'))}`,
                          more3:
                            row.dig_L === null || row.dig_L === 0
                              ? ''
                              : say('; dig {dig} from the bank', { dig: reader.print(row.dig_L, 'bulk_L') }),
                        })}
                      </div>
                    </dd>
                  </div>
                ))}
              </dl>
              <p className="small soft">
                {say('Barrow and vehicle are set in Farm; own soil and stock are used first. What is to get goes to Orders.')}
              </p>
              <Caution id="saturated-weight-lifting" folded />
            </>
          )
        }
      </Shown>
    </section>
  );
}
