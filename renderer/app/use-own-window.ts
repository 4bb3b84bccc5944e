import { useEffect } from 'react';
import { announce } from '../client/announce.ts';
import { client } from '../client/api.ts';
import { failureOf } from '../client/failure.ts';
import { useLook } from '../look/theme.ts';
import { languageSpoken } from '../words/language.ts';
import { inOwnWindow } from './commands.ts';

/** In the program's own window its frame, menus and dialogs follow the page's look and language. */
export function useOwnWindow(): void {
  const { theme } = useLook();
  useEffect(() => {
    if (!inOwnWindow()) return;
    client.program.followLook
      .mutate({ theme, language: languageSpoken().code })
      .catch((error: unknown) => announce(failureOf(error).message, 'now'));
  }, [theme]);
}
