import { type ComponentType, type ReactNode, useEffect, useState } from 'react';

/** A part of the pages that comes with a file of its own; `ahead` reads that file before the part is shown. */
export type LaterPart<Props extends object> = ComponentType<Props> & { readonly ahead: () => void };

/** The file of a part: what is there of it already, and reading it. */
type Source<Props> = {
  readonly found: () => ComponentType<Props> | undefined;
  readonly read: () => Promise<ComponentType<Props>>;
};

/**
 * A part whose file is read when it is first shown, with `meanwhile` in its place until it is there. Every such part is made by this:
 * what React's own `lazy` and `Suspense` put in place of a fallback is held back until the fallback has stood for 300 ms, while a
 * file from this computer takes some ten.
 */
export function later<Props extends object>(
  load: () => Promise<ComponentType<Props>>,
  meanwhile: () => ReactNode,
): LaterPart<Props> {
  const source = sourceOf(load);
  return Object.assign((props: Props) => <Arriving source={source} meanwhile={meanwhile} props={props} />, {
    ahead: () => {
      // a fault is told when the part is shown, which reads the file anew
      if (source.found() === undefined) source.read().catch(() => undefined);
    },
  });
}

function sourceOf<Props>(load: () => Promise<ComponentType<Props>>): Source<Props> {
  let found: ComponentType<Props> | undefined;
  let reading: Promise<ComponentType<Props>> | undefined;
  const read = async (): Promise<ComponentType<Props>> => {
    try {
      found = await load();
      return found;
    } finally {
      // a file that could not be read is asked for anew when the part is next shown
      reading = undefined;
    }
  };
  return {
    found: () => found,
    read: () => {
      reading ??= read();
      return reading;
    },
  };
}

function Arriving<Props extends object>({
  source,
  meanwhile,
  props,
}: {
  readonly source: Source<Props>;
  readonly meanwhile: () => ReactNode;
  readonly props: Props;
}) {
  const [Part, setPart] = useState(source.found);
  useEffect(() => {
    if (Part !== undefined) return undefined;
    let gone = false;
    source.read().then(
      (part) => (gone ? undefined : setPart(() => part)),
      (fault: unknown) =>
        gone
          ? undefined
          : setPart(() => {
              // thrown while drawing, so that it is told where the faults of a page are
              throw fault;
            }),
    );
    return () => {
      gone = true;
    };
  }, [Part, source]);
  return Part === undefined ? meanwhile() : <Part {...props} />;
}
