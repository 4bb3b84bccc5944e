import { act, renderHook } from '@testing-library/react';
import { expect, test } from 'vitest';
import { useLook } from '../../../renderer/imports/use-look.ts';

type Asked = { readonly text: string; readonly answer: (found: string) => void; readonly refuse: (why: Error) => void };

function looking() {
  const asked: Asked[] = [];
  const ask = (text: string): Promise<string> =>
    new Promise((answer, refuse) => {
      asked.push({ text, answer, refuse });
    });
  return { asked, look: renderHook(() => useLook(ask)).result };
}

test('the answer to an older text, come late, does not stand beside the newer text', async () => {
  const { asked, look } = looking();
  act(() => void look.current.into('old'));
  act(() => void look.current.into('new'));
  await act(async () => asked[1]?.answer('found in new'));
  await act(async () => asked[0]?.answer('found in old'));
  expect(look.current).toMatchObject({ text: 'new', found: 'found in new', refused: undefined });
});

test('a refusal is kept for the text it answers, and gone with the next', async () => {
  const { asked, look } = looking();
  act(() => void look.current.into('bad'));
  await act(async () => asked[0]?.refuse(new Error('no')));
  expect(look.current.refused?.message).toBe('no');
  act(() => void look.current.into('good'));
  expect(look.current.refused).toBeUndefined();
});

test('an empty text asks nothing', () => {
  const { asked, look } = looking();
  act(() => void look.current.into('  '));
  expect(asked).toEqual([]);
  expect(look.current.found).toBeUndefined();
});
