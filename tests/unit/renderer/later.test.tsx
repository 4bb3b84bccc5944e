import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import type { ComponentType } from 'react';
import { afterEach, expect, test } from 'vitest';
import { CaughtFault } from '../../../renderer/app/caught-fault.tsx';
import { later } from '../../../renderer/app/later.tsx';

afterEach(cleanup);

type Props = { readonly bed: string };

const Sheet = ({ bed }: Props) => <p>The sheet of {bed}</p>;
const meanwhile = () => <p>Opening</p>;

/** Files that arrive, or break off, only when the test says so. */
function files() {
  const asked: PromiseWithResolvers<ComponentType<Props>>[] = [];
  const load = (): Promise<ComponentType<Props>> => {
    const next = Promise.withResolvers<ComponentType<Props>>();
    asked.push(next);
    return next.promise;
  };
  return { asked, load };
}

test('until its file is there something else stands in its place; it is read once, however often the part is shown', async () => {
  const { asked, load } = files();
  const Part = later(load, meanwhile);
  expect(asked).toHaveLength(0);
  const { rerender } = render(
    <>
      <Part bed="A-1" />
      <Part bed="A-2" />
    </>,
  );
  expect(screen.getAllByText('Opening')).toHaveLength(2);
  asked[0]?.resolve(Sheet);
  expect(await screen.findByText('The sheet of A-1')).toBeDefined();
  expect(await screen.findByText('The sheet of A-2')).toBeDefined();
  expect(screen.queryByText('Opening')).toBeNull();
  rerender(<Part key="anew" bed="B-3" />);
  expect(screen.getByText('The sheet of B-3')).toBeDefined();
  expect(asked).toHaveLength(1);
});

test('read ahead, it stands at once', async () => {
  const { asked, load } = files();
  const Part = later(load, meanwhile);
  Part.ahead();
  Part.ahead();
  expect(asked).toHaveLength(1);
  asked[0]?.resolve(Sheet);
  await asked[0]?.promise;
  await Promise.resolve();
  render(<Part bed="A-1" />);
  expect(screen.getByText('The sheet of A-1')).toBeDefined();
  Part.ahead();
  expect(asked).toHaveLength(1);
});

test('a file that cannot be read is told where the faults of a page are, and trying again reads it anew', async () => {
  const { asked, load } = files();
  const Part = later(load, meanwhile);
  render(
    <CaughtFault>
      <Part bed="A-1" />
    </CaughtFault>,
  );
  asked[0]?.reject(new Error('the file broke off'));
  expect((await screen.findByRole('alert')).textContent).toContain('the file broke off');
  await userEvent.click(screen.getByRole('button', { name: 'Try again' }));
  expect(screen.getByText('Opening')).toBeDefined();
  asked[1]?.resolve(Sheet);
  expect(await screen.findByText('The sheet of A-1')).toBeDefined();
});

test('a file that breaks off while it is read ahead hurts nothing: it is asked for when the part is shown', async () => {
  const { asked, load } = files();
  const Part = later(load, meanwhile);
  Part.ahead();
  asked[0]?.reject(new Error('the file broke off'));
  await asked[0]?.promise.catch(() => undefined);
  await Promise.resolve();
  render(<Part bed="A-1" />);
  expect(asked).toHaveLength(2);
  asked[1]?.resolve(Sheet);
  expect(await screen.findByText('The sheet of A-1')).toBeDefined();
});
