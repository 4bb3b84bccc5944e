import type { Working } from '../../planner/working.ts';
import { useReader } from '../client/reader.tsx';
import { Icon } from '../look/icon.tsx';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';
import { useWorking } from './working-sheet.tsx';
import { figureText } from './working-text.ts';

/**
 * A headline figure that opens its working: `<Figure of={bed.weightWorking} />`, or with the working fetched when it is
 * asked for: `<Figure value={w} unit="kg" name="Wet weight" explain={() => …} />`.
 */
export function Figure(
  props:
    | { readonly of: Working; readonly digits?: number }
    | {
        readonly value: number | null;
        readonly unit: string;
        readonly name: string;
        readonly digits?: number;
        readonly explain: () => Working | Promise<Working | undefined> | undefined;
      },
) {
  const reader = useReader();
  const { show } = useWorking();
  const [text, name] =
    'of' in props
      ? [
          props.digits === undefined
            ? figureText(props.of.result, reader)
            : reader.print(props.of.result.value, props.of.result.unit, props.digits),
          sayKnown(props.of.title),
        ]
      : [props.unit === 'minor' ? reader.money(props.value) : reader.print(props.value, props.unit, props.digits), props.name];
  const open = async (): Promise<void> => {
    const working = 'of' in props ? props.of : await props.explain();
    if (working !== undefined) show(working);
  };
  return (
    <button
      type="button"
      className="figure"
      aria-label={say('{name}: {text}. Show the working', { name, text })}
      title={say('Show the working')}
      onClick={() => void open()}
    >
      {text}
      <Icon name="working" size={12} />
    </button>
  );
}
