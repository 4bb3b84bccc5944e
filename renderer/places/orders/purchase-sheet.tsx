import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { PurchaseRow } from './purchases-tab.tsx';

/** One purchase: what came of each line goes into stock at what it cost to have it there; what went back comes out. */
export function PurchaseSheet({ lines, onClose }: { readonly lines: readonly PurchaseRow[]; readonly onClose: () => void }) {
  const reader = useReader();
  const today = useRead(api.soilTests.today, undefined);
  const receive = useChange(api.orders.receive);
  const callOff = useChange(api.orders.callOff);
  const first = lines[0];
  const begun = lines.some((line) => line.receivedPackages > 0);
  const [came, setCame] = useState<Readonly<Record<string, number | null>>>(() =>
    Object.fromEntries(lines.map((line) => [line.lineId, Math.max(0, line.open)])),
  );
  const [charges, setCharges] = useState<number | null>(
    begun || first === undefined ? 0 : first.delivery_minor + first.tax_minor,
  );
  const [who, setWho] = useState('');
  const [lots, setLots] = useState<Readonly<Record<string, Lot>>>({});
  if (first === undefined || today.state !== 'ready') return null;
  const open = lines.filter((line) => line.open > 0);
  const take = () =>
    void receive.run(
      {
        purchaseId: first.purchaseId,
        date: today.data.today,
        who,
        charges_minor: charges ?? 0,
        lines: lines.map((line) => ({
          lineId: line.lineId,
          packages: line.open > 0 ? (came[line.lineId] ?? 0) : 0,
          ...(lots[line.lineId] ?? noLot),
        })),
      },
      say('Took the delivery into stock.'),
    );
  return (
    <Sheet title={`${first.supplier}, ${reader.date(first.orderedDate)}`} onClose={onClose}>
      {open.length === 0 ? (
        <p>{sayEnded(lines)}</p>
      ) : (
        <Form
          label={say('Receive')}
          failure={receive.failure}
          paths={[...lines.map((_, at) => `lines.${at}.packages`), 'charges_minor', 'who']}
          onSave={take}
        >
          <Cautions ids={open.flatMap((line) => line.cautions)} folded />
          <h3>{say('What came')}</h3>
          {lines.map((line, at) =>
            line.open <= 0 ? null : (
              <QuantityField
                key={line.lineId}
                label={say('{material}, of {open}', { material: line.material, open: line.open })}
                path={`lines.${at}.packages`}
                unit=""
                value={came[line.lineId] ?? null}
                onChange={(value) => setCame({ ...came, [line.lineId]: value })}
              />
            ),
          )}
          <details>
            <summary>{say('Lots and dates on the packages')}</summary>
            {open.map((line) => (
              <LotOfLine
                key={line.lineId}
                material={line.material}
                lot={lots[line.lineId] ?? noLot}
                onChange={(lot) => setLots({ ...lots, [line.lineId]: lot })}
              />
            ))}
          </details>
          <MoneyField
            label={say('Delivery and tax of this receipt')}
            path="charges_minor"
            value={charges}
            onChange={setCharges}
            hint={say('Shared over the goods by value')}
          />
          <TextField label={say('Received by')} path="who" value={who} onChange={setWho} />
          <Button type="submit" weight="main" disabled={receive.busy}>
            {say('Take into stock')}
          </Button>
        </Form>
      )}
      {open.length > 0 ? (
        <Form
          label={say('Call off')}
          failure={callOff.failure}
          paths={[]}
          onSave={() =>
            void callOff.run({ purchaseId: first.purchaseId, date: today.data.today }, say('Called off what had not come.'))
          }
        >
          <h3>{say('What will not come')}</h3>
          <p className="soft small">
            {say('Until it is here or called off, what is open counts as on the way and is not bought again.')}
          </p>
          <Button type="submit" disabled={callOff.busy}>
            {say('Call off the rest')}
          </Button>
        </Form>
      ) : null}
      {lines.some((line) => line.receivedPackages > line.returnedPackages) ? (
        <SendBack lines={lines} date={today.data.today} />
      ) : null}
    </Sheet>
  );
}

/** How a purchase ended of which nothing is still to come. */
function sayEnded(lines: readonly PurchaseRow[]): string {
  if (lines.every(({ state }) => state === 'called-off')) return say('It was called off.');
  return lines.some(({ state }) => state === 'called-off')
    ? say('What came is here, the rest was called off.')
    : say('All of it is here.');
}

type Lot = { readonly lot: string; readonly expiresDate: IsoDate | null };
const noLot: Lot = { lot: '', expiresDate: null };

function LotOfLine(props: { readonly material: string; readonly lot: Lot; readonly onChange: (lot: Lot) => void }) {
  const { lot, onChange } = props;
  return (
    <div className="form-pair">
      <TextField
        label={say('Lot of {material}', { material: props.material })}
        value={lot.lot}
        onChange={(code) => onChange({ ...lot, lot: code })}
      />
      <DateField
        label={say('Best before')}
        value={lot.expiresDate}
        onChange={(expiresDate) => onChange({ ...lot, expiresDate })}
      />
    </div>
  );
}

function SendBack({ lines, date }: { readonly lines: readonly PurchaseRow[]; readonly date: string }) {
  const back = useChange(api.orders.sendBack);
  const here = lines.filter((line) => line.receivedPackages > line.returnedPackages);
  const [lineId, setLineId] = useState(here[0]?.lineId ?? '');
  const [packages, setPackages] = useState<number | null>(null);
  const [reason, setReason] = useState('');
  const line = here.find((each) => each.lineId === lineId) ?? here[0];
  if (line === undefined) return null;
  return (
    <Form
      label={say('Send back')}
      failure={back.failure}
      paths={['packages', 'reason']}
      onSave={() =>
        void back.run(
          { purchaseId: line.purchaseId, lineId: line.lineId, packages: packages ?? 0, date, reason },
          say('Sent it back.'),
        )
      }
    >
      <h3>{say('Send back')}</h3>
      <label className="field">
        <span className="soft small">{say('Material')}</span>
        <select value={line.lineId} onChange={(event) => setLineId(event.target.value)}>
          {here.map((each) => (
            <option key={each.lineId} value={each.lineId}>
              {each.material}
            </option>
          ))}
        </select>
      </label>
      <div className="form-pair">
        <QuantityField label={say('Packages')} path="packages" unit="" value={packages} onChange={setPackages} />
        <TextField label={say('Why')} path="reason" value={reason} onChange={setReason} />
      </div>
      <Button type="submit" disabled={back.busy}>
        {say('Send back')}
      </Button>
    </Form>
  );
}
