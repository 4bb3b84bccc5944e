import { say } from '../words/say.ts';

/** Columns of a file that mean nothing to the import. */
export function UnreadColumns({ names }: { readonly names: readonly string[] }) {
  if (names.length === 0) return null;
  return <p className="soft">{say('Columns not read: {unread}.', { unread: names.join(', ') })}</p>;
}
