import type { SourceModel } from '../../model/source-model.ts';

/**
 * Polygons that have exactly the same corners as an earlier one, whichever way either runs.
 * @returns indices of the later ones, ascending.
 */
export function doubledFaces({ faceStarts, faceVertices }: Pick<SourceModel, 'faceStarts' | 'faceVertices'>): number[] {
  const faceCount = faceStarts.length - 1;
  const slots = new Int32Array(2 ** Math.ceil(Math.log2(2 * faceCount + 16))).fill(-1);
  const mask = slots.length - 1;
  const doubled: number[] = [];
  for (let f = 0; f < faceCount; f += 1) {
    let slot = hashOf(faceVertices, faceStarts[f], faceStarts[f + 1]) & mask;
    while (slots[slot] >= 0 && !haveSameCorners(faceStarts, faceVertices, slots[slot], f)) slot = (slot + 1) & mask;
    if (slots[slot] >= 0) doubled.push(f);
    else slots[slot] = f;
  }
  return doubled;
}

/** The same for every order of the corners. */
function hashOf(vertices: Uint32Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i += 1) {
    const mixed = Math.imul(vertices[i] + 1, 0x9e3779b1);
    sum = (sum + Math.imul(mixed ^ (mixed >>> 15), 0x85ebca6b)) | 0;
  }
  return (sum ^ (sum >>> 13)) >>> 0;
}

function haveSameCorners(starts: Uint32Array, vertices: Uint32Array, f: number, g: number): boolean {
  const count = starts[f + 1] - starts[f];
  if (starts[g + 1] - starts[g] !== count) return false;
  const corners = vertices.subarray(starts[f], starts[f + 1]);
  if (count <= 8) {
    for (let i = starts[g]; i < starts[g + 1]; i += 1) if (!corners.includes(vertices[i])) return false;
    return true;
  }
  const known = new Set(corners);
  for (let i = starts[g]; i < starts[g + 1]; i += 1) if (!known.has(vertices[i])) return false;
  return true;
}
