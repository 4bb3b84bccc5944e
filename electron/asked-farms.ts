import { extname, resolve } from 'node:path';

/**
 * The farm files among the words of a command line: a double click on one starts the program with its path (Windows, Linux), and a second
 * start hands its words to the first with the folder it was started in.
 */
export const farmsIn = (words: readonly string[], folder: string): readonly string[] =>
  words.filter((word) => !word.startsWith('-') && extname(word) === '.bedwright').map((word) => resolve(folder, word));
