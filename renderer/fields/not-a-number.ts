import { ambiguousNumber, isAmbiguous } from '../../planner/units/parse-number.ts';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';

/** Why a text could not be read as a number in the reader's locale. */
export const notANumber = (text: string, locale: string): string =>
  isAmbiguous(text, locale) ? sayKnown(ambiguousNumber(text)) : say('"{text}" is not a number.', { text });
