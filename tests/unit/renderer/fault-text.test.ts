import { expect, test } from 'vitest';
import { faultText } from '../../../renderer/client/failure.ts';

test('a fault is told at its field without the field’s name, its limit in the reader’s units', () => {
  const fault = {
    path: 'layers.1.settlingShare',
    code: 'too-large',
    message: 'layers.1.settlingShare: 0.95 is above the most that makes sense, 0.9.',
  };
  expect(faultText(fault, 'us')).toBe('0.95 is above the most that makes sense, 0.9.');
  const deep = { path: 'depth_m', code: 'too-large', message: 'depth_m: 6.096 m is above the most that makes sense, 3.048 m.' };
  expect(faultText(deep, 'us')).toBe('20 ft is above the most that makes sense, 10 ft.');
});

test('a size in a name is left as it is written', () => {
  const fault = { path: 'name', code: 'in-use', message: 'There is a design called Framed bed 1.2 x 2.4 m already.' };
  expect(faultText(fault, 'us')).toBe(fault.message);
});
