import type { FoamId } from '../base/ids.ts';
import type { GrainWish } from '../model/flatten-settings.ts';
import type { PieceSetting } from '../model/foam-settings.ts';
import { onSculpt, withPieceSetting, type Command } from './commands.ts';
import type { SculptPart } from './project.ts';

/**
 * Lays the grain of the sheet on a piece, or leaves it as it comes.
 * @param faces all polygons of the piece, so that a wish made at any of them is found again; the first one carries it. None: nothing changes.
 * @param mergeKey of changes that undo as one: those of a piece and its twin.
 */
export const setGrain = (faces: readonly number[], grain: GrainWish | null, mergeKey?: string): Command =>
  onSculpt('set the grain', (part) => withWish(part, faces, 'grain', grain), mergeKey);

/**
 * Cuts a piece from another foam than its sheet of the wall, or from the same again (null).
 * @param faces all polygons of the piece, as in {@link setGrain}.
 */
export const setPieceFoam = (faces: readonly number[], foam: FoamId | null): Command =>
  onSculpt('choose the foam of a piece', (part) => withWish(part, faces, 'foam', foam));

/** One wish for a piece in place of what was wished so before at any of its polygons; null: none. The same part where nothing changes. */
function withWish<K extends 'grain' | 'foam'>(
  part: SculptPart,
  faces: readonly number[],
  what: K,
  wish: NonNullable<PieceSetting[K]> | null,
): SculptPart {
  const own = new Set(faces);
  const had = part.pieceSettings.filter((setting) => own.has(setting.face) && setting[what] !== undefined);
  if (faces.length === 0 || (wish === null && had.length === 0)) return part;
  if (had.length === 1 && had[0][what] === wish) return part;
  const others = part.pieceSettings
    .map((setting) => {
      if (!had.includes(setting)) return setting;
      const { [what]: _, ...rest } = setting;
      return rest as PieceSetting;
    })
    .filter((setting) => Object.keys(setting).length > 1);
  const bare = { ...part, pieceSettings: others };
  return wish === null ? bare : withPieceSetting(bare, faces[0], { [what]: wish });
}
