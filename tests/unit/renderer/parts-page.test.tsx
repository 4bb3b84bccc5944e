import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, expect, test } from 'vitest';
import '../../../renderer/look/tokens.css';
import '../../../renderer/look/base.css';
import '../../../renderer/look/parts.css';
import '../../../renderer/charts/charts.css';
import '../../../renderer/table/grid.css';
import { ReaderProvider } from '../../../renderer/client/reader.tsx';
import { PartsPage } from '../../../renderer/parts/parts-page.tsx';

type Fiber = {
  readonly type: unknown;
  /** What was exported, where `type` is what a memo wraps. */
  readonly elementType: unknown;
  readonly child: Fiber | null;
  readonly sibling: Fiber | null;
};

const modules: Readonly<Record<string, Readonly<Record<string, unknown>>>> = import.meta.glob(
  '../../../renderer/{fields,table,charts,draw}/*.tsx',
  { eager: true },
);

/** Every exported part of the folders; a part is called with a capital. */
const parts = Object.entries(modules).flatMap(([file, exported]) =>
  Object.entries(exported)
    .filter(([name]) => /^[A-Z][a-z]/.test(name))
    .map(([name, part]) => ({ name: `${file.split('/').slice(-2).join('/')} ${name}`, part })),
);

/** The types of all that is drawn below an element, as React itself keeps them. */
function drawnBelow(element: HTMLElement): ReadonlySet<unknown> {
  const key = Object.keys(element).find((each) => each.startsWith('__reactContainer$'));
  const found = new Set<unknown>();
  const walk = (fiber: Fiber | null): void => {
    for (let at = fiber; at !== null; at = at.sibling) {
      found.add(at.type).add(at.elementType);
      walk(at.child);
    }
  };
  const root = (element as unknown as Record<string, { readonly stateNode: { readonly current: Fiber } }>)[key ?? ''];
  walk(root?.stateNode.current ?? null);
  return found;
}

afterEach(cleanup);

test('the page of all parts shows every part of fields, tables, charts and drawings', { timeout: 120_000 }, async () => {
  const { container } = render(
    <ReaderProvider settings={{ system: 'metric', currency: 'USD', locale: 'en-US' }}>
      <PartsPage />
    </ReaderProvider>,
  );
  // the drawing of charts is fetched with the first of them
  await expect.poll(() => container.querySelectorAll('.plot').length, { timeout: 60_000 }).toBeGreaterThan(3);
  const drawn = new Set(drawnBelow(container));
  for (const name of ['Dialog: columns', 'Dialog: edit many', 'Dialog: refused', 'Dialog: long']) {
    await userEvent.click(screen.getByRole('button', { name }));
    await screen.findByRole('dialog');
    for (const each of drawnBelow(container)) drawn.add(each);
    await userEvent.keyboard('{Escape}');
    await expect.poll(() => screen.queryByRole('dialog')).toBeNull();
  }
  expect(parts.length).toBeGreaterThan(25);
  expect(parts.filter(({ part }) => !drawn.has(part)).map(({ name }) => name)).toEqual([]);
});

test('it shows the states of the table: being read, failed, empty, edited, unreadable, selected, read only, refused', async () => {
  render(
    <ReaderProvider settings={{ system: 'metric', currency: 'USD', locale: 'en-US' }}>
      <PartsPage />
    </ReaderProvider>,
  );
  expect(await screen.findByText(/"nine" is not a/)).toBeInstanceOf(HTMLElement);
  const state = (name: string) => screen.getByRole('region', { name }).textContent;
  expect(state('Being read')).toContain('Reading the farm file');
  expect(state('Several rows selected')).toContain('3 selected');
  expect(state('A pasted block that was refused')).toContain('Not taken in; nothing was changed.');
  expect(state('Empty')).toContain('No beds yet');
  expect(state('Could not be read')).toContain('Try again');
  expect(screen.getByRole('region', { name: 'Read only; rows open' }).querySelector('[data-editable]')).toBeNull();
});
