import { protocol, session } from 'electron';
import { desktopDoor } from '../api/http/desktop-door.ts';
import type { Program } from '../api/program/program.ts';
import { isOurs, lockSession, SCHEME } from './lock-down.ts';

/** Puts the program's door behind its private scheme; whatever else asks under that scheme finds nothing. */
export function serve(program: Program): void {
  const door = desktopDoor(program, program.places.pages);
  lockSession(session.defaultSession);
  protocol.handle(SCHEME, (request) =>
    isOurs(request.url) ? door(request) : new Response('There is no such page.', { status: 404 }),
  );
}
