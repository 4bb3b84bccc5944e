import highsModule, { type Highs, type InitOptions } from 'highs';

/** The package's types describe its other build, whose default export is a namespace; this is the one place that says so. */
const load = highsModule as unknown as (options?: InitOptions) => Promise<Highs>;

let loaded: Promise<Highs> | null = null;

/** The solver engine, loaded once a thread. */
export function loadHighs(): Promise<Highs> {
  loaded ??= load();
  return loaded;
}

/** Lets go of an engine that ran out of memory: it is dead from then on, and the next call loads a new one. */
export function dropHighs(): void {
  loaded = null;
}
