import { expect, test } from 'vitest';
import type { Queued } from '../../../renderer/field/field-types.ts';
import { type Answer, readQueue, sendQueue } from '../../../renderer/field/queue.ts';

const item = (id: string, refused?: string): Queued => ({
  entry: { kind: 'task', id, date: '2026-07-06', taskId: `task ${id}`, state: 'done' },
  text: `Done: ${id}`,
  ...(refused === undefined ? {} : { refused }),
});

const answering =
  (answers: Readonly<Record<string, Answer>>) =>
  (entry: { readonly id: string }): Promise<Answer> =>
    Promise.resolve(answers[entry.id] ?? { state: 'taken' });

test('what is taken leaves the queue; what is refused stays with its reason and holds up nothing', async () => {
  const done = await sendQueue([item('a'), item('b'), item('c')], answering({ b: { state: 'refused', because: 'Too much.' } }));
  expect(done).toEqual({ queue: [item('b', 'Too much.')], sent: 2, stopped: undefined });
});

test('out of reach everything from there on waits, in its order', async () => {
  const done = await sendQueue([item('a'), item('b'), item('c')], answering({ b: { state: 'away' } }));
  expect(done.queue.map((each) => each.entry.id)).toEqual(['b', 'c']);
  expect([done.sent, done.stopped]).toEqual([1, 'away']);
});

test('a refused entry is not sent again by itself', async () => {
  const done = await sendQueue([item('a', 'Too much.')], answering({}));
  expect([done.queue.length, done.sent]).toEqual([1, 0]);
});

test('a queue that cannot be read is empty, a broken entry in it is left out', () => {
  expect(readQueue('{')).toEqual([]);
  expect(readQueue(JSON.stringify([item('a'), { entry: 3 }, item('b', 'No.')]))).toEqual([item('a'), item('b', 'No.')]);
});
