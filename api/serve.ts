/** The loopback host: the program for a browser on this computer. `node api/serve.ts [--farm FILE] [--port N] [--self-test]`. */
import { parseArgs } from 'node:util';
import { FarmFileError } from '../db/file/errors.ts';
import { startLoopback } from './http/loopback.ts';
import type { Break } from './program/fault-reports.ts';
import { exitCodeOf, printedResult, selfTest } from './program/self-test.ts';
import { openFirstFarm, placesOf, startProgram } from './program/start-program.ts';

const log = (line: string) => console.error(line);

function portOf(text: string | undefined): number {
  const port = text === undefined ? 0 : Number(text);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  console.error(`--port ${text}: a port is a whole number from 0 to 65535.`);
  process.exit(2);
}

const { values } = parseArgs({
  options: { farm: { type: 'string' }, port: { type: 'string' }, 'self-test': { type: 'boolean' } },
});
const places = placesOf(import.meta.url, process.env);
if (values['self-test'] === true) {
  const lines = await selfTest(places);
  console.log(printedResult(lines));
  process.exit(exitCodeOf(lines));
}
const program = startProgram(places, log);
const breakOff = (what: Break) => (error: unknown) => {
  // every change is in the farm's file already, and nobody knows what else is wrong
  console.error(error);
  program.reports.add(what, error);
  process.exit(1);
};
process.on('uncaughtException', breakOff('program'));
process.on('unhandledRejection', breakOff('promise'));
try {
  openFirstFarm(program, values.farm);
  const host = await startLoopback({ program, pages: places.pages, port: portOf(values.port) });
  console.log(`Bedwright is at ${host.address}`);
  process.send?.({ address: host.address, origin: host.origin });
  let ending = false;
  const end = async () => {
    if (ending) return;
    ending = true;
    await host.close();
    await program.closeAll();
    process.exit(0);
  };
  process.on('SIGINT', end);
  process.on('SIGTERM', end);
  process.on('disconnect', end);
} catch (error) {
  console.error(error instanceof FarmFileError || (error instanceof Error && error.cause !== undefined) ? error.message : error);
  await program.closeAll();
  process.exit(1);
}
