import type { JobHandle } from '../client/use-job.ts';
import { say } from '../words/say.ts';
import { Button } from './button.tsx';

/** Start, progress and Stop of long work. */
export function JobBar<Result>({
  handle,
  label,
  onStart,
}: {
  readonly handle: JobHandle<Result>;
  readonly label: string;
  readonly onStart: () => void;
}) {
  const { job, stop } = handle;
  if (job.state !== 'running')
    return (
      <div className="row">
        <Button weight="main" onClick={onStart}>
          {label}
        </Button>
        {job.state === 'done' && job.stopped ? (
          <span className="small soft">{say('Stopped: this is what was done by then.')}</span>
        ) : null}
        {job.state === 'failed' ? <span className="failed small">{job.failure.message}</span> : null}
      </div>
    );
  return (
    <div className="row" role="status">
      <progress {...(job.share === null ? {} : { value: job.share })} max={1} aria-label={label} />
      <span className="small">{job.doing}</span>
      <Button onClick={stop}>{say('Stop')}</Button>
    </div>
  );
}
