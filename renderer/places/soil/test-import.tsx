import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { CsvImport, FoundRows } from '../../imports/csv-import.tsx';
import { FaultList } from '../../imports/fault-list.tsx';
import { UnreadColumns } from '../../imports/unread-columns.tsx';
import { useLook } from '../../imports/use-look.ts';
import { say } from '../../words/say.ts';

/** Bring in many sheets from CSV: looked into whole, each wrong line named, and written only when all are right. */
export function TestImport({ onClose }: { readonly onClose: () => void }) {
  const reader = useReader();
  const bring = useChange(api.soilTests.importFile);
  const { text, found, refused, into } = useLook((csv) => client.soilTests.lookIntoFile.query({ csv }));
  const tests = found?.tests.length ?? 0;
  return (
    <CsvImport
      title={say('Bring in soil tests from CSV')}
      lead={say(
        'One sample a line. Columns: date, sample, beds (codes, or a block), method, pH, buffer pH, buffer method, OM %, CEC, EC, and each nutrient with its unit, as “P ppm”, “K (lb/acre)”, “Ca meq/100g”.',
      )}
      text={text}
      onText={(csv) => void into(csv)}
      refusals={[refused?.message, bring.failure?.message]}
      bringIn={
        found === undefined
          ? undefined
          : {
              text: say('Bring in {tests, plural, one {one test} other {# tests}}', { tests }),
              ready: found.faults.length === 0 && tests > 0,
              busy: bring.busy,
              run: async () =>
                (await bring.run(
                  { csv: text },
                  say('{tests, plural, one {One soil test} other {# soil tests}} brought in.', { tests }),
                )) !== undefined,
            }
      }
      onClose={onClose}
    >
      {found === undefined ? null : (
        <>
          <UnreadColumns names={found.unread} />
          {found.warnings.length === 0 ? null : (
            <div className="panel" role="note">
              <p>{say('Look at these figures again; they are brought in as they stand:')}</p>
              <ul>
                {found.warnings.slice(0, 20).map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </div>
          )}
          <FaultList
            lead={say('Nothing is brought in while these are not mended:')}
            faults={found.faults.map((fault) => fault.message)}
          />
          <FoundRows
            heads={[say('Sampled'), say('Sample'), say('pH'), say('Figures'), say('Beds')]}
            rows={found.tests.slice(0, 50).map((each) => ({
              key: `${each.date} ${each.sample}`,
              cells: [reader.date(each.date), each.sample, each.ph ?? '–', each.figures, each.beds],
            }))}
          />
        </>
      )}
    </CsvImport>
  );
}
