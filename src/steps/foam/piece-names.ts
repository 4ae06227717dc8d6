import { pieceId, type PieceId, type PartId, type LayerId } from '../../base/ids.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { PieceSetting } from '../../model/foam-settings.ts';
import type { Patch } from '../../model/patch.ts';

/** Longest name, characters: what a template can show beside the number. */
const LONGEST_NAME = 32;

/** Names that say nothing: modelling programs put them where nobody gave one. */
const EMPTY_NAME =
  /^(default|none|null|object|group|mesh|material|shape|polysurface|solid|part|piece|untitled)?[\s\d]*$/i;

/** Polygon of the lowest number in a patch: what its id and the maker's wishes are tied to. */
export const lowestFace = (mesh: Mesh, patch: Patch): number =>
  patch.meshTriangles.reduce((least, t) => Math.min(least, mesh.faceOfTriangle[t]), Infinity);

/**
 * Ids that survive a change of seams elsewhere: each is anchored to the lowest polygon of its piece. A piece cut in two leaves the old id to
 * the part that holds that polygon.
 */
export function pieceIds(part: PartId, layer: LayerId, mesh: Mesh, patches: readonly Patch[]): readonly PieceId[] {
  const uses = new Map<number, number>();
  return patches.map((patch) => {
    const face = lowestFace(mesh, patch);
    const use = (uses.get(face) ?? 0) + 1;
    uses.set(face, use);
    return pieceId(`${part}.${layer}.f${face}${use > 1 ? `.${use}` : ''}`);
  });
}

/** The wishes for each patch: fields of all settings whose polygon lies in it, the last one counting. A polygon in two patches speaks for the first. */
export function settingsOfPatches(
  mesh: Mesh,
  patches: readonly Patch[],
  settings: readonly PieceSetting[],
): readonly Partial<PieceSetting>[] {
  const wishes: Partial<PieceSetting>[] = patches.map(() => ({}));
  if (settings.length === 0) return wishes;
  const asked = new Set(settings.map(({ face }) => face));
  const patchOfFace = new Map<number, number>();
  patches.forEach((patch, i) => {
    for (const t of patch.meshTriangles) {
      const face = mesh.faceOfTriangle[t];
      if (asked.has(face) && !patchOfFace.has(face)) patchOfFace.set(face, i);
    }
  });
  for (const setting of settings) {
    const i = patchOfFace.get(setting.face);
    if (i !== undefined) wishes[i] = { ...wishes[i], ...setting };
  }
  return wishes;
}

/**
 * Names of pieces: the maker's own, else the file's name for the group that holds the whole piece, else "Piece 3". A group that holds
 * several pieces gives "Cheek 1", "Cheek 2"; one that holds them all tells none from another and is passed over. A part of a single piece
 * without a group lends it its own name.
 * @param numbers printed number of each patch's piece.
 * @param suffix  stands behind each name, as `, sheet 2`.
 */
export function pieceNames(
  mesh: Mesh,
  patches: readonly Patch[],
  wishes: readonly Partial<PieceSetting>[],
  numbers: readonly number[],
  partName: string,
  suffix = '',
): readonly string[] {
  const named = (name: string): string => shortened(name, suffix);
  const groups = patches.map((patch) => groupNameOf(mesh, patch));
  const total = new Map<string, number>();
  for (const name of groups) total.set(name, (total.get(name) ?? 0) + 1);
  const seen = new Map<string, number>();
  return patches.map((_, i) => {
    const own = wishes[i].name?.trim();
    if (own !== undefined && own !== '') return named(own);
    const name = groups[i];
    const count = total.get(name) ?? 0;
    if (name === '' && patches.length === 1 && tidyName(partName) !== '') return named(tidyName(partName));
    if (name === '' || (count === patches.length && count > 1)) return named(`Piece ${numbers[i]}`);
    const use = (seen.get(name) ?? 0) + 1;
    seen.set(name, use);
    return named(count > 1 ? `${name} ${use}` : name);
  });
}

/** The tidied name of the one group all polygons of the patch lie in, or ''. */
function groupNameOf(mesh: Mesh, patch: Patch): string {
  const group = mesh.groupOfFace[mesh.faceOfTriangle[patch.meshTriangles[0]]] ?? -1;
  const isOne = patch.meshTriangles.every((t) => mesh.groupOfFace[mesh.faceOfTriangle[t]] === group);
  return isOne && group >= 0 ? tidyName(mesh.groupNames[group]) : '';
}

/** `left_cheek-GUARD.001` → `Left cheek guard`; names that say nothing become ''. */
export function tidyName(name: string): string {
  const words = name
    .replace(/\.\d+$/, '')
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .replace(/[_\-./\\\s]+/g, ' ')
    .trim()
    .toLowerCase();
  return EMPTY_NAME.test(words) ? '' : words.charAt(0).toUpperCase() + words.slice(1);
}

function shortened(name: string, suffix: string): string {
  const longest = LONGEST_NAME - suffix.length;
  return `${name.length <= longest ? name : `${name.slice(0, longest - 1).trimEnd()}…`}${suffix}`;
}
