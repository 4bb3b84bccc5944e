const SHOWN = 40;

/** What is wrong with a file, a line each. Says nothing where nothing is. */
export function FaultList({ lead, faults }: { readonly lead: string; readonly faults: readonly string[] }) {
  if (faults.length === 0) return null;
  return (
    <div className="failed" role="alert">
      <p>{lead}</p>
      <ul>
        {[...new Set(faults)].slice(0, SHOWN).map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ul>
    </div>
  );
}
