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
        {beds.length - stay.length} of {beds.length} beds follow this change
      </summary>
      <p className="small soft">Beds that do not follow keep the design as it was, under a name that says so.</p>
      <div className="row">
        <button type="button" className="button" onClick={() => onChange([])}>
          All follow
        </button>
        <button type="button" className="button" onClick={() => onChange(beds.map((bed) => bed.bedId))}>
          None follows
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
