import type { PathJoin, SeamSetting } from '../model/seams.ts';
import type { SteepWay } from '../model/steep-join.ts';
import { edgeKey, onSculpt, type Command, type EdgePair } from './commands.ts';
import { joinedPaths } from './part-paths.ts';
import { edgesAndPaths } from './path-names.ts';

export const STEEP_WAYS: readonly SteepWay[] = ['split', 'fill', 'trim'];

/** What is said of a seam; on a path its sides are told by left and right. */
export type JoinWish = Omit<SeamSetting, 'edge'> & Pick<PathJoin, 'lapSide' | 'standSide'>;

/**
 * Says how the two sides of a seam meet. A plain butt seam is what every seam is, and needs no word.
 * @param pairs  all edges of the seam in file numbers, so that what was said at any of them before is found; the first one carries the new
 *               word. Paths among them (`pathName`) carry it themselves. None: nothing changes.
 */
export const setSeamJoin = (pairs: readonly EdgePair[], { lapSide, standSide, ...join }: JoinWish): Command =>
  onSculpt('change the seam', (before) => {
    const { edges: along, paths } = edgesAndPaths(pairs);
    const part = joinedPaths(before, paths, ofPath({ lapSide, standSide, ...join }));
    if (along.length === 0) return part;
    const own = new Set(along.map(edgeKey));
    const had = part.seamSettings.filter(({ edge }) => own.has(edgeKey(edge)));
    const kept = part.seamSettings.filter(({ edge }) => !own.has(edgeKey(edge)));
    const isPlain = join.kind === 'butt' && join.allowanceMm === 0 && join.steep === undefined;
    if (isPlain) return had.length === 0 ? part : { ...part, seamSettings: kept };
    const next: SeamSetting = { edge: had[0]?.edge ?? along[0], ...join };
    if (had.length === 1 && isSame(had[0], next)) return part;
    return { ...part, seamSettings: [...kept, next] };
  });

/** The same as a path carries it: without what it would be anyway, and without polygons. */
function ofPath({ kind, allowanceMm, lapUnder, steep, lapSide, standSide }: JoinWish): PathJoin {
  return {
    kind,
    ...(allowanceMm === 0 ? {} : { allowanceMm }),
    ...(lapSide === undefined ? {} : { lapSide }),
    ...(lapUnder === true ? { lapUnder } : {}),
    ...(standSide === undefined ? {} : { standSide }),
    ...(steep === undefined ? {} : { steep }),
  };
}

const isSame = (a: SeamSetting, b: SeamSetting): boolean =>
  a.kind === b.kind &&
  a.allowanceMm === b.allowanceMm &&
  a.lapFace === b.lapFace &&
  (a.lapUnder ?? false) === (b.lapUnder ?? false) &&
  a.standFace === b.standFace &&
  a.steep === b.steep;
