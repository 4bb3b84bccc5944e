import { say } from '../../words/say.ts';

/** Which beds do not follow a changed design: they keep it as it was. */
export function StayFields(props: {
  readonly beds: readonly { readonly bedId: string; readonly code: string }[];
  readonly stay: readonly string[];
  readonly onChange: (stay: readonly string[]) => void;
}) {
  const { beds, stay, onChange } = props;
  if (beds.length === 0) return null;
  const staying = new Set(stay);
  const toggle = (bedId: string): void => onChange(staying.has(bedId) ? stay.filter((id) => id !== bedId) : [...stay, bedId]);
  return (
    <details className="panel">
      <summary>
        {say('{beds} of {beds2} beds follow this change', { beds: beds.length - stay.length, beds2: beds.length })}
      </summary>
      <p className="small soft">{say('Beds that do not follow keep the design as it was, under a name that says so.')}</p>
      <div className="row">
        <button type="button" className="button" onClick={() => onChange([])}>
          {say('All follow')}
        </button>
        <button type="button" className="button" onClick={() => onChange(beds.map((bed) => bed.bedId))}>
          {say('None follows')}
        </button>
      </div>
      <div className="row">
        {beds.map((bed) => (
          <label key={bed.bedId} className="small">
            <input type="checkbox" checked={!staying.has(bed.bedId)} onChange={() => toggle(bed.bedId)} /> {bed.code}
          </label>
        ))}
      </div>
    </details>
  );
}
