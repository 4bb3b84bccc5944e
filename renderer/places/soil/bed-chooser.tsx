import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

/** Choose beds block by block. A block's box takes all its beds. */
export function BedChooser({
  chosen,
  onChange,
  fault,
}: {
  readonly chosen: readonly string[];
  readonly onChange: (ids: readonly string[]) => void;
  readonly fault?: string | undefined;
}) {
  const beds = useRead(api.beds.list, undefined);
  const rows = beds.state === 'ready' ? beds.data : [];
  const has = new Set(chosen);
  const set = (ids: readonly string[], on: boolean) => {
    const next = new Set(chosen);
    for (const id of ids) on ? next.add(id) : next.delete(id);
    onChange([...next]);
  };
  return (
    <fieldset className="bed-chooser">
      <legend>
        {say('Beds')} <span className="soft small">{say('{chosen} chosen', { chosen: chosen.length })}</span>
      </legend>
      {fault === undefined ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      {[...Map.groupBy(rows, (row) => row.block)].map(([block, members]) => {
        const ids = members.map((each) => each.bedId);
        const count = ids.filter((id) => has.has(id)).length;
        return (
          <div className="bed-block" key={block}>
            <label>
              <input
                type="checkbox"
                checked={count === ids.length}
                ref={(box) => {
                  if (box !== null) box.indeterminate = count > 0 && count < ids.length;
                }}
                onChange={(event) => set(ids, event.target.checked)}
              />
              {say('Block {block}', { block })}
            </label>
            <details open={rows.length <= 24}>
              <summary className="soft small">
                {say('{count} of {ids} beds of block {block}', { count, ids: ids.length, block })}
              </summary>
              <div className="bed-boxes">
                {members.map((each) => (
                  <label key={each.bedId}>
                    <input
                      type="checkbox"
                      checked={has.has(each.bedId)}
                      onChange={(event) => set([each.bedId], event.target.checked)}
                    />
                    {each.code}
                  </label>
                ))}
              </div>
            </details>
          </div>
        );
      })}
      {beds.state === 'ready' && rows.length === 0 ? (
        <p className="soft">{say('There is no bed yet. Build beds in Beds.')}</p>
      ) : null}
    </fieldset>
  );
}
