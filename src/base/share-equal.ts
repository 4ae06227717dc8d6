/**
 * A JSON value with every part of it replaced by the one of another value at the same place that says the same, so that both share it in memory.
 * @param like  the value it is likely to equal in most of its parts.
 * @returns `like` itself where both say the same.
 */
export function sharedWith<T>(like: unknown, value: T): T {
  if (like === value || typeof like !== 'object' || typeof value !== 'object' || like === null || value === null)
    return value;
  if (Array.isArray(like) !== Array.isArray(value)) return value;
  const before = like as Readonly<Record<string, unknown>>;
  const keys = Object.keys(value);
  let isOwn = true;
  let isSame = keys.length === Object.keys(before).length;
  const shared = (Array.isArray(value) ? [] : {}) as Record<string, unknown>;
  for (const key of keys) {
    const part = (value as Readonly<Record<string, unknown>>)[key];
    shared[key] = Object.hasOwn(before, key) ? sharedWith(before[key], part) : part;
    isOwn &&= shared[key] === part;
    isSame &&= Object.hasOwn(before, key) && shared[key] === before[key];
  }
  return isSame ? (like as T) : isOwn ? value : (shared as T);
}
