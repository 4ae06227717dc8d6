import { edgeKey, onSculpt, type Command, type EdgePair } from './commands.ts';
import type { MirrorChoice } from './project.ts';

/** Says in which plane the sculpt mirrors itself, or that it does not; null: as it is found. */
export const setMirror = (mirror: MirrorChoice | null): Command =>
  onSculpt(
    mirror === null ? 'find the mirror' : mirror.by === 'off' ? 'put the mirror away' : 'set the mirror',
    (part) => {
      const { mirror: had, ...rest } = part;
      if (isSame(had, mirror ?? undefined)) return part;
      return mirror === null ? rest : { ...rest, mirror };
    },
  );

function isSame(a: MirrorChoice | undefined, b: MirrorChoice | undefined): boolean {
  if (a === undefined || b === undefined || a.by !== 'plane' || b.by !== 'plane') return a?.by === b?.by;
  return [0, 1, 2].every((i) => a.pointInFile[i] === b.pointInFile[i] && a.normal[i] === b.normal[i]);
}

/**
 * Edges and those opposite to them, each once: what a command that marks takes where the mirror is on.
 * @param pairs         edges in file numbers.
 * @param partnerOfFile for each number of the file that of the corner opposite, or -1.
 * @param isEdge        tells whether the sculpt has an edge between two corners: a surface that is cut into triangles otherwise on the other
 *                      side may have none.
 */
export function onBothSides(
  pairs: readonly EdgePair[],
  partnerOfFile: ArrayLike<number>,
  isEdge: (pair: EdgePair) => boolean,
): readonly EdgePair[] {
  const seen = new Set<string>();
  const opposite = pairs
    .map(([a, b]): EdgePair => [partnerOfFile[a] ?? -1, partnerOfFile[b] ?? -1])
    .filter((pair) => pair[0] >= 0 && pair[1] >= 0 && isEdge(pair));
  return [...pairs, ...opposite].filter((pair) => !seen.has(edgeKey(pair)) && seen.add(edgeKey(pair)));
}
