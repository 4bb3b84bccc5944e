import { cleanup, render, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { useState } from 'react';
import { afterEach, expect, test } from 'vitest';
import { Dialog } from '../../../renderer/app/dialog.tsx';
import { useKeptFocus } from '../../../renderer/app/keep-focus.ts';

afterEach(cleanup);

function Tasks() {
  const [open, setOpen] = useState(['sow', 'hoe', 'water']);
  const [saving, setSaving] = useState(false);
  const [asking, setAsking] = useState(false);
  return (
    <>
      <ul>
        {open.map((task) => (
          <li key={task}>
            <button type="button" onClick={() => setOpen(open.filter((each) => each !== task))}>
              {task}
            </button>
          </li>
        ))}
      </ul>
      <button type="button" disabled={saving} onClick={() => setSaving(true)}>
        save
      </button>
      <button type="button" onClick={() => setAsking(true)}>
        ask
      </button>
      <output onDoubleClick={() => setSaving(false)}>beside all controls</output>
      {asking ? (
        <Dialog title="Ask" onClose={() => setAsking(false)}>
          <button type="button" onClick={() => setAsking(false)}>
            answer
          </button>
        </Dialog>
      ) : null}
    </>
  );
}

function Window({ farm }: { readonly farm: string }) {
  useKeptFocus();
  return (
    <main id="page" tabIndex={-1}>
      <Tasks key={farm} />
    </main>
  );
}

const focused = () => expect.poll(() => document.activeElement?.textContent);
const press = async (name: string, key: string) => {
  screen.getByRole('button', { name }).focus();
  await userEvent.keyboard(key);
};

test('a control that is gone hands the focus to the one after it, the last one to the one before', async () => {
  render(<Window farm="one" />);
  await press('hoe', '{Enter}');
  await focused().toBe('water');
  await userEvent.keyboard('{Enter}');
  await focused().toBe('sow');
});

test('when all around it is gone, the page has the focus', async () => {
  const { rerender } = render(<Window farm="old" />);
  screen.getByRole('button', { name: 'hoe' }).focus();
  rerender(<Window farm="new" />);
  await expect.poll(() => document.activeElement?.id).toBe('page');
});

test('a control barred while saving has the focus again when that is over', async () => {
  render(<Window farm="one" />);
  await press('save', '{Enter}');
  await expect.poll(() => document.activeElement).toBe(document.body);
  screen.getByText('beside all controls').dispatchEvent(new MouseEvent('dblclick', { bubbles: true }));
  await focused().toBe('save');
});

test('a dialog gives the focus back to what opened it', async () => {
  render(<Window farm="one" />);
  await press('ask', '{Enter}');
  await screen.findByRole('dialog');
  await press('answer', '{Enter}');
  await focused().toBe('ask');
});

test('who presses beside all controls is left alone', async () => {
  render(<Window farm="one" />);
  screen.getByRole('button', { name: 'save' }).focus();
  await userEvent.click(screen.getByText('beside all controls'));
  expect(document.activeElement?.textContent).not.toBe('save');
});
