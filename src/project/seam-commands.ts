import type { SeamSetting } from '../model/seams.ts';
import type { SteepWay } from '../model/steep-join.ts';
import { edgeKey, onSculpt, type Command, type EdgePair } from './commands.ts';

export const STEEP_WAYS: readonly SteepWay[] = ['split', 'fill', 'trim'];

/**
 * Says how the two sides of a seam meet. A plain butt seam is what every seam is, and needs no word.
 * @param along  all edges of the seam in file numbers, so that what was said at any of them before is found; the first one carries the new
 *               word. None: nothing changes.
 */
export const setSeamJoin = (along: readonly EdgePair[], join: Omit<SeamSetting, 'edge'>): Command =>
  onSculpt('change the seam', (part) => {
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

const isSame = (a: SeamSetting, b: SeamSetting): boolean =>
  a.kind === b.kind &&
  a.allowanceMm === b.allowanceMm &&
  a.lapFace === b.lapFace &&
  (a.lapUnder ?? false) === (b.lapUnder ?? false) &&
  a.standFace === b.standFace &&
  a.steep === b.steep;
