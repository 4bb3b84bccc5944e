import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { type ReactNode, useState } from 'react';
import { afterEach, expect, test } from 'vitest';
import { Caution } from '../../../renderer/cautions/caution.tsx';
import type { Failure } from '../../../renderer/client/failure.ts';
import { ReaderProvider } from '../../../renderer/client/reader.tsx';
import { DateField } from '../../../renderer/fields/date-field.tsx';
import { Form } from '../../../renderer/fields/form.tsx';
import { MoneyField } from '../../../renderer/fields/money-field.tsx';
import { QuantityField } from '../../../renderer/fields/quantity-field.tsx';
import { TextField } from '../../../renderer/fields/text-field.tsx';
import { Figure } from '../../../renderer/working/figure.tsx';
import { WorkingProvider } from '../../../renderer/working/working-sheet.tsx';

afterEach(cleanup);

const us = (children: ReactNode) => (
  <ReaderProvider settings={{ system: 'us', currency: 'USD', locale: 'en-US' }}>{children}</ReaderProvider>
);

let given: (number | null)[] = [];

function Depth({
  start,
  failure,
  onSave = () => undefined,
}: {
  readonly start: number | null;
  readonly failure?: Failure;
  readonly onSave?: () => void;
}) {
  const [depth_m, setDepth] = useState(start);
  return (
    <Form onSave={onSave} failure={failure} paths={['depth_m']} label="Depth">
      <QuantityField
        label="Depth"
        name="depth_m"
        needed
        hint="To the top of the fill"
        value={depth_m}
        onChange={(value) => {
          given.push(value);
          setDepth(value);
        }}
      />
      <button type="submit">Save</button>
    </Form>
  );
}

test('a quantity is shown in the reader’s unit, taken in any, and given on in metres', async () => {
  given = [];
  render(us(<Depth start={0.3048} />));
  const field = screen.getByRole('textbox', { name: 'Depth' });
  expect(field).toHaveProperty('value', '12');
  await userEvent.clear(field);
  await userEvent.type(field, '90 cm');
  expect(given.at(-1)).toBeCloseTo(0.9, 9);
  expect(field).toHaveProperty('value', '90 cm');
});

test('text that cannot be read is said at the field and nothing is sent', async () => {
  let sent = 0;
  render(us(<Depth start={null} onSave={() => (sent += 1)} />));
  await userEvent.click(screen.getByRole('button', { name: 'Save' }));
  expect(sent).toBe(0);
  const field = screen.getByRole('textbox', { name: 'Depth' });
  expect(document.activeElement).toBe(field);
  expect(screen.getByRole('alert').textContent).toBe('Something is needed here.');
  await userEvent.type(field, '5 gal');
  await userEvent.click(screen.getByRole('button', { name: 'Save' }));
  expect(screen.getByRole('alert').textContent).toContain('"gal" measures something else');
  await userEvent.clear(field);
  await userEvent.type(field, '1 ft');
  await userEvent.click(screen.getByRole('button', { name: 'Save' }));
  expect(sent).toBe(1);
});

test('a fault of the program stands at its field, linked for a screen reader; one of no field at the head', () => {
  const failure = {
    code: 'input',
    message: 'No.',
    faults: [
      { path: 'depth_m', code: 'x', message: 'Too deep for this bed.' },
      { path: 'block', code: 'x', message: 'Choose a block.' },
    ],
  };
  render(us(<Depth start={1} failure={failure} />));
  const field = screen.getByRole('textbox', { name: 'Depth' });
  expect(field.getAttribute('aria-invalid')).toBe('true');
  const described = (field.getAttribute('aria-describedby') ?? '')
    .split(' ')
    .map((id) => document.getElementById(id)?.textContent);
  expect(described).toEqual(['To the top of the fill', 'Too deep for this bed.']);
  expect(screen.getAllByRole('alert').map((alert) => alert.textContent)).toContain('Choose a block.');
});

function Price({ got }: { readonly got: (number | null)[] }) {
  const [price_minor, setPrice] = useState<number | null>(null);
  return (
    <MoneyField
      label="Price"
      value={price_minor}
      onChange={(value) => {
        got.push(value);
        setPrice(value);
      }}
    />
  );
}

test('money keeps whole cents and refuses parts of them', async () => {
  const got: (number | null)[] = [];
  render(us(<Price got={got} />));
  const field = screen.getByRole('textbox', { name: 'Price' });
  await userEvent.type(field, '1250.5');
  expect(got.at(-1)).toBe(125_050);
  await userEvent.clear(field);
  expect(got.at(-1)).toBeNull();
  await userEvent.type(field, '1.005');
  await userEvent.tab();
  expect(screen.getByRole('alert').textContent).toContain('more decimals');
  expect(got.at(-1)).toBe(100);
});

test('a needed line of words says so when it is left empty', async () => {
  render(us(<TextField label="Name" value="" onChange={() => undefined} needed />));
  await userEvent.click(screen.getByRole('textbox', { name: 'Name' }));
  await userEvent.tab();
  expect(screen.getByRole('alert').textContent).toBe('Something is needed here.');
});

test('a caution can be folded but stays, and names its source and whom it defers to', async () => {
  render(<Caution id="electricity-near-water" />);
  expect(screen.getByText(/licensed electrician/)).toBeTruthy();
  expect(screen.getByText(/call the local emergency number/i)).toBeTruthy();
  await userEvent.click(screen.getByText('Electricity near water'));
  await expect.poll(() => document.querySelector('details')?.open).toBe(false);
  expect(screen.getByText('Electricity near water')).toBeTruthy();
});

test('a figure opens its working with every symbol and its origin; Escape closes it and gives the focus back', async () => {
  const working = {
    title: 'Water used in a day',
    formula: 'V = Kc * ETo * A',
    symbols: [
      {
        symbol: 'A',
        name: 'planted area',
        figure: { value: 2.88, unit: 'm2' },
        origin: { kind: 'entry' as const, text: 'your entry' },
      },
    ],
    steps: [],
    result: { value: 15.7, unit: 'L_per_day' },
    sources: ['FAO Irrigation and Drainage Paper 56 (1998), eq. 58'],
    notes: [],
  };
  render(
    us(
      <WorkingProvider>
        <Figure of={working} />
      </WorkingProvider>,
    ),
  );
  const figure = screen.getByRole('button', { name: /Water used in a day: 4.15 gal\/day/ });
  await userEvent.click(figure);
  const sheet = screen.getByRole('complementary', { name: 'Working' });
  expect(sheet.textContent).toContain('V = Kc * ETo * A');
  expect(sheet.textContent).toContain('31 ft²');
  expect(sheet.textContent).toContain('Your entry');
  expect(sheet.textContent).toContain('Paper 56');
  screen.getByRole('button', { name: 'Close the sheet' }).focus();
  await userEvent.keyboard('{Escape}');
  expect(screen.queryByRole('complementary')).toBeNull();
  expect(document.activeElement).toBe(figure);
});

test('where the comma is the decimal sign a field shows and takes it, takes a clear point, and says what may mean two', async () => {
  given = [];
  render(
    <ReaderProvider settings={{ system: 'metric', currency: 'EUR', locale: 'de-DE' }}>
      <Depth start={0.125} />
    </ReaderProvider>,
  );
  const field = screen.getByRole('textbox', { name: 'Depth' });
  expect(field).toHaveProperty('value', '12,5');
  await userEvent.clear(field);
  await userEvent.type(field, '33.5');
  expect(given.at(-1)).toBeCloseTo(0.335, 9);
  await userEvent.clear(field);
  await userEvent.type(field, '1.234');
  await userEvent.tab();
  expect(screen.getByRole('alert').textContent).toContain('"1.234" may mean');
  await userEvent.clear(field);
  await userEvent.type(field, '1.234,5');
  expect(given.at(-1)).toBeCloseTo(12.345, 9);
});

test('a needed date that is empty is told at its field, and the form is not sent', async () => {
  let sent = 0;
  render(
    us(
      <Form onSave={() => (sent += 1)} label="Order">
        <DateField label="Wanted by" needed value={null} onChange={() => undefined} />
        <button type="submit">Add</button>
      </Form>,
    ),
  );
  const field = screen.getByLabelText('Wanted by');
  expect(field.getAttribute('aria-invalid')).not.toBe('true');
  await userEvent.click(screen.getByRole('button', { name: 'Add' }));
  expect(screen.getByText('A date is needed here.')).toBeTruthy();
  expect(field.getAttribute('aria-invalid')).toBe('true');
  expect(sent).toBe(0);
});
