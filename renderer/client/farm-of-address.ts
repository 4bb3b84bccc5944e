/** Which open farm this window shows; absent means the program's current one. */
export function farmOfAddress(search: string): string | undefined {
  return new URLSearchParams(search).get('farm') ?? undefined;
}
