// What was computed once is kept: every lot under the same profile asks for the same tables.

/** A function that keeps its latest results, up to a limit at which it begins anew. */
export function remembered<Value>(limit: number, make: (key: string) => Value): (key: string) => Value;
export function remembered<Key extends object, Value>(
  limit: number,
  make: (key: Key) => Value,
  name: (key: Key) => string,
): (key: Key) => Value;
export function remembered<Key, Value>(
  limit: number,
  make: (key: Key) => Value,
  name: (key: Key) => string = String,
): (key: Key) => Value {
  const kept = new Map<string, Value>();
  return key => {
    const as = name(key);
    const known = kept.get(as);
    if (known !== undefined) return known;
    if (kept.size >= limit) kept.clear();
    const made = make(key);
    kept.set(as, made);
    return made;
  };
}
