import { describe, expect, test } from 'vitest';
import { readText, TEXT_LIMIT_B } from '../../../renderer/imports/read-text.ts';

const file = (bytes: readonly number[] | string, name = 'prices.csv'): File =>
  new File([typeof bytes === 'string' ? bytes : new Uint8Array(bytes)], name);

const textOf = async (bytes: readonly number[] | string): Promise<string> => {
  const read = await readText(file(bytes));
  return read.ok ? read.text : `refused: ${read.message}`;
};

const utf16le = (text: string): number[] => [
  0xff,
  0xfe,
  ...[...text].flatMap((sign) => [sign.charCodeAt(0) & 0xff, sign.charCodeAt(0) >> 8]),
];
const utf16be = (text: string): number[] => [
  0xfe,
  0xff,
  ...[...text].flatMap((sign) => [sign.charCodeAt(0) >> 8, sign.charCodeAt(0) & 0xff]),
];

describe('the text of a chosen file', () => {
  test('UTF-8, with its byte order mark or without', async () => {
    expect(await textOf('Kürbis,4,00 €')).toBe('Kürbis,4,00 €');
    expect(await textOf([0xef, 0xbb, 0xbf, 0x61])).toBe('a');
  });

  test('UTF-16 of either order, by its mark', async () => {
    expect(await textOf(utf16le('Kürbis'))).toBe('Kürbis');
    expect(await textOf(utf16be('Kürbis'))).toBe('Kürbis');
  });

  // the code points are those of the WHATWG Encoding Standard's index windows-1252
  test('bytes that are no UTF-8 are Windows-1252', async () => {
    expect(await textOf([0x4b, 0xfc, 0x72, 0x62, 0x69, 0x73, 0x20, 0x80])).toBe('Kürbis €');
  });

  test('a picture, an empty file and one that is too large are refused by name', async () => {
    expect(await textOf([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13])).toBe('refused: prices.csv is not a text file.');
    expect(await textOf(' \n')).toBe('refused: prices.csv is empty.');
    const large = file('a');
    Object.defineProperty(large, 'size', { value: TEXT_LIMIT_B + 1 });
    expect(await readText(large)).toMatchObject({ ok: false, message: 'prices.csv is larger than 30 MB. Bring it in in parts.' });
  });

  test('a file that went away after it was chosen is told', async () => {
    const gone = file('a');
    gone.arrayBuffer = () => Promise.reject(new DOMException('gone', 'NotReadableError'));
    expect(await readText(gone)).toMatchObject({ ok: false, message: 'prices.csv could not be read. Choose it again.' });
  });
});
