import type { Program } from '../program/program.ts';
import { workAhead } from '../program/work-ahead.ts';
import { createApp } from './app.ts';

/** What the desktop window's private scheme hands its requests to. */
export function desktopDoor(program: Program, pages: string): (request: Request) => Promise<Response> {
  const app = createApp({ program, pages, onAsked: workAhead(program).asked });
  return async (request) => app.fetch(request);
}
