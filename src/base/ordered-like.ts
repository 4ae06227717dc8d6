/**
 * A value of JSON with the fields of each object in the order in which another has them; fields that only the first has come after. Nothing but the
 * order is changed, and nothing is taken from the other.
 */
export function orderedLike<T>(value: T, like: unknown): T {
  if (Array.isArray(value))
    return (Array.isArray(like) ? value.map((one: unknown, i) => orderedLike(one, like[i])) : value) as T;
  if (!isFields(value) || !isFields(like)) return value;
  const first = Object.keys(like).filter((key) => Object.hasOwn(value, key));
  const known = new Set(first);
  const keys = [...first, ...Object.keys(value).filter((key) => !known.has(key))];
  return Object.fromEntries(keys.map((key) => [key, orderedLike(value[key], like[key])])) as T;
}

const isFields = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
