import type { Stretch } from '../../model/travel.ts';

/** What of `from` to `to` no stretch covers, in order; ends belong to it, and it may be a single place. */
export function restOf(fromMm: number, toMm: number, taken: readonly Stretch[]): readonly Stretch[] {
  const rest: Stretch[] = [];
  let at = fromMm;
  for (const { fromMm: from, toMm: to } of [...taken].sort((a, b) => a.fromMm - b.fromMm)) {
    if (from >= at && at <= toMm) rest.push({ fromMm: at, toMm: Math.min(from, toMm) });
    at = Math.max(at, to);
  }
  if (at <= toMm) rest.push({ fromMm: at, toMm });
  return rest;
}

/** Every place that lies between `least` and `most` behind one of the stretches. */
export const behind = (list: readonly Stretch[], least: number, most: number): readonly Stretch[] =>
  list.map(({ fromMm, toMm }) => ({ fromMm: fromMm + least, toMm: toMm + most }));

/** What two lists of stretches have in common, in order, each place once. */
export function common(a: readonly Stretch[], b: readonly Stretch[]): readonly Stretch[] {
  const met = a
    .flatMap((one) =>
      b.map((two) => ({ fromMm: Math.max(one.fromMm, two.fromMm), toMm: Math.min(one.toMm, two.toMm) })),
    )
    .filter(({ fromMm, toMm }) => fromMm <= toMm)
    .sort((one, two) => one.fromMm - two.fromMm);
  const joined: { fromMm: number; toMm: number }[] = [];
  for (const one of met) {
    const last = joined[joined.length - 1];
    if (last !== undefined && one.fromMm <= last.toMm) last.toMm = Math.max(last.toMm, one.toMm);
    else joined.push({ ...one });
  }
  return joined;
}

/** The place of the stretches nearest to one; null where there is none. */
export function nearestPlace(list: readonly Stretch[], mm: number): number | null {
  let best: number | null = null;
  for (const { fromMm, toMm } of list) {
    const place = Math.min(toMm, Math.max(fromMm, mm));
    if (best === null || Math.abs(place - mm) < Math.abs(best - mm)) best = place;
  }
  return best;
}
