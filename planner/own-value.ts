/** A value of a table under a name that a person wrote: never one that every object has (`constructor`, `__proto__`). */
export function ownValue<Value>(table: Readonly<Record<string, Value>>, name: string): Value | undefined {
  return Object.hasOwn(table, name) ? table[name] : undefined;
}
