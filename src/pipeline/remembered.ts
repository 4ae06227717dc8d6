import type { Memo } from '../base/memo.ts';
import { runWithPauses, type Stepwise } from '../base/stepwise.ts';
import type { Work } from '../base/work.ts';

/** What was made before of the same, or made now. */
export function remembered<K extends unknown[], V>(memo: Memo<K, V>, key: K, make: () => V): V {
  return memo.get(key) ?? memo.set(key, make());
}

/** The same for what is made in stretches. */
export async function rememberedSteps<K extends unknown[], V>(
  memo: Memo<K, V>,
  key: K,
  make: () => Stepwise<V>,
  work: Work,
): Promise<V> {
  return memo.get(key) ?? memo.set(key, await runWithPauses(make(), () => work.pause(0.5)));
}

/** Lists one behind the other: the same object for the same lists, and one that stands alone as it is. */
export function joined<T>(memo: Memo<(readonly T[])[], readonly T[]>, lists: readonly (readonly T[])[]): readonly T[] {
  const some = lists.filter(({ length }) => length > 0);
  if (some.length === 1) return some[0];
  return remembered(memo, [...some], () => some.flat());
}
