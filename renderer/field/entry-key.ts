/**
 * A key that no other entry has. A phone reaches the computer over plain http on the farm's network, which browsers do not count as a
 * secure context: `crypto.randomUUID` is missing there, random bytes are not.
 */
export function entryKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
