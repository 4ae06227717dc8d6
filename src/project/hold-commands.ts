import { edgeKey, onSculpt, withPieceSetting, type Command, type EdgePair } from './commands.ts';
import { lockedPaths } from './part-paths.ts';
import { edgesAndPaths } from './path-names.ts';
import type { SculptPart } from './project.ts';

/**
 * Holds seams where they are, whatever is proposed.
 * @param pairs edges in file numbers, and paths (`pathName`); those that are no seams are passed over.
 */
export const holdSeams = (pairs: readonly EdgePair[]): Command =>
  onSculpt('hold the seam', (before) => {
    const part = lockedPaths(before, edgesAndPaths(pairs).paths, true);
    const held = part.heldSeams ?? [];
    const known = new Set(held.map(edgeKey));
    const asked = new Set(pairs.map(edgeKey));
    const added = part.seams.edges.filter((pair) => asked.has(edgeKey(pair)) && !known.has(edgeKey(pair)));
    return added.length === 0 ? part : { ...part, heldSeams: [...held, ...added] };
  });

/** Lets seams go again. @param pairs edges in file numbers, and paths. */
export const letSeamsGo = (pairs: readonly EdgePair[]): Command =>
  onSculpt('let the seam go', (before) => {
    const part = lockedPaths(before, edgesAndPaths(pairs).paths, false);
    const gone = new Set(pairs.map(edgeKey));
    const { heldSeams = [], ...rest } = part;
    const held = heldSeams.filter((pair) => !gone.has(edgeKey(pair)));
    if (held.length === heldSeams.length) return part;
    return held.length === 0 ? rest : { ...rest, heldSeams: held };
  });

/** Keeps a piece as it is, whatever is proposed. @param faces all its polygons of the file; the first one carries the word. None: nothing changes. */
export const holdPiece = (faces: readonly number[]): Command =>
  onSculpt('hold the piece', (part) =>
    faces.length === 0 || isHeld(part, faces) ? part : withPieceSetting(part, faces[0], { held: true }),
  );

/** Lets a piece go again. @param faces all its polygons. */
export const letPieceGo = (faces: readonly number[]): Command =>
  onSculpt('let the piece go', (part) => {
    const own = new Set(faces);
    if (!isHeld(part, faces)) return part;
    const pieceSettings = part.pieceSettings
      .map((setting) => {
        if (!own.has(setting.face) || setting.held === undefined) return setting;
        const { held: _, ...rest } = setting;
        return rest;
      })
      .filter((setting) => Object.keys(setting).length > 1);
    return { ...part, pieceSettings };
  });

/** Whether the piece of these polygons is held. */
export function isHeld({ pieceSettings }: Pick<SculptPart, 'pieceSettings'>, faces: readonly number[]): boolean {
  const own = new Set(faces);
  return pieceSettings.some(({ face, held }) => held === true && own.has(face));
}
