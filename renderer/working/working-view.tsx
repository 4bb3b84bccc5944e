import type { Working } from '../../planner/working.ts';
import { useReader } from '../client/reader.tsx';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';
import { figureText, originText } from './working-text.ts';

/** The whole of a working: formula, symbols with value and origin, steps, result, sources; and the workings below it. */
export function WorkingView({ working, depth = 0 }: { readonly working: Working; readonly depth?: number }) {
  const reader = useReader();
  return (
    <div className="working">
      <p className="working-result">
        <span>{sayKnown(working.title)}</span>
        <strong>{figureText(working.result, reader)}</strong>
      </p>
      <pre className="working-formula">{working.formula}</pre>
      {working.symbols.length === 0 ? null : (
        <div className="working-scroll">
          <table className="working-symbols">
            <caption className="heard-only">{say('Symbols of {working}', { working: sayKnown(working.title) })}</caption>
            <thead>
              <tr>
                <th scope="col">{say('Symbol')}</th>
                <th scope="col">{say('What it is')}</th>
                <th scope="col">{say('Value')}</th>
                <th scope="col">{say('From')}</th>
              </tr>
            </thead>
            <tbody>
              {working.symbols.map((symbol) => (
                <tr key={`${symbol.symbol} ${symbol.name}`}>
                  <th scope="row">{symbol.symbol}</th>
                  <td>{sayKnown(symbol.name)}</td>
                  <td className="working-figure">{figureText(symbol.figure, reader)}</td>
                  <td className="small soft">{originText(symbol.origin)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {working.steps.length === 0 ? null : (
        <ol className="working-steps">
          {working.steps.map((step) => (
            <li key={`${step.text} ${step.figures}`}>
              <span>{sayKnown(step.text)}</span>
              <code>{step.figures}</code>
              <span className="working-figure">= {figureText(step.result, reader)}</span>
            </li>
          ))}
        </ol>
      )}
      {working.notes.map((note) => (
        <p key={note} className="small soft">
          {sayKnown(note)}
        </p>
      ))}
      {working.sources.length === 0 ? null : (
        <div className="small soft">
          <p>{say('Rests on')}</p>
          <ul>
            {working.sources.map((source) => (
              <li key={source}>{sayKnown(source)}</li>
            ))}
          </ul>
        </div>
      )}
      {(working.parts ?? []).map((part) => (
        <details key={part.title} className="working-part" open={depth === 0 && (working.parts ?? []).length === 1}>
          <summary>
            {sayKnown(part.title)} <span className="working-figure">{figureText(part.result, reader)}</span>
          </summary>
          <WorkingView working={part} depth={depth + 1} />
        </details>
      ))}
    </div>
  );
}
