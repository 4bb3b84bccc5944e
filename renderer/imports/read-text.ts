import { say } from '../words/say.ts';

/** Larger files go past what one message to the program may hold. */
export const TEXT_LIMIT_B = 30 * 1024 * 1024;

/** A file's text, or why it has none. */
export type FileText = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly message: string };

/**
 * The text of a file someone chose, in the encoding it was written in: UTF-16 by its byte order mark, UTF-8 where the
 * bytes are that, else Windows-1252, in which older spreadsheets save. A file with zero bytes in it is no text.
 */
export async function readText(file: File): Promise<FileText> {
  if (file.size > TEXT_LIMIT_B) return no(say('{name} is larger than 30 MB. Bring it in in parts.', { name: file.name }));
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await file.arrayBuffer());
  } catch {
    // the one reason a browser gives up here: the file was moved or changed after it was chosen
    return no(say('{name} could not be read. Choose it again.', { name: file.name }));
  }
  const text = new TextDecoder(encodingOf(bytes)).decode(bytes);
  if (text.includes('\0')) return no(say('{name} is not a text file.', { name: file.name }));
  if (text.trim() === '') return no(say('{name} is empty.', { name: file.name }));
  return { ok: true, text };
}

const no = (message: string): FileText => ({ ok: false, message });

function encodingOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}
