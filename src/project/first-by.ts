/**
 * A check for lists whose entries differ in one key: whether an entry is the first of its list that has it. A list is gone through once, however
 * many entries ask, so that a long list from a file takes no longer than reading it.
 * @param keyOf  never changes for an entry.
 */
export function firstBy<T>(keyOf: (entry: T) => unknown): (entry: T, index: number, list: readonly T[]) => boolean {
  const known = new WeakMap<readonly T[], ReadonlyMap<unknown, number>>();
  return (entry, index, list) => {
    let places = known.get(list);
    if (places === undefined) {
      places = firstPlaces(list.map(keyOf));
      known.set(list, places);
    }
    return places.get(keyOf(entry)) === index;
  };
}

function firstPlaces(keys: readonly unknown[]): ReadonlyMap<unknown, number> {
  const places = new Map<unknown, number>();
  for (const [i, key] of keys.entries()) if (!places.has(key)) places.set(key, i);
  return places;
}

/** The first that has its id. */
export const firstById = firstBy(({ id }: { readonly id: string }) => id);

/** The first that has its name. */
export const firstByName = firstBy(({ name }: { readonly name: string }) => name);
