/** Faces of a file after exactly equal corners became one. */
export interface CleanFaces {
  /** Face `f` here has corners `corners[starts[f] .. starts[f + 1])`, all different. */
  readonly starts: Uint32Array;
  readonly corners: Uint32Array;
  /** Number in the file of each face here, ascending. */
  readonly numbers: Uint32Array;
  /** Faces that named one corner twice in a row and were read with one side fewer, by their number in the file. */
  readonly shortened: readonly number[];
  /** Faces that were left out, because fewer than three corners are left or the outline comes back to one. */
  readonly leftOut: readonly number[];
}

/**
 * Takes repeated corners out of faces. A corner named twice in a row only makes a side without length, and the face is as good without
 * it: some programs write triangles as four corners that way. A face that is left with fewer than three corners, or that comes back to a
 * corner later, bounds no disc and is left out.
 * @param pointOf the point each corner number stands for.
 */
export function cleanFaces(faceStarts: Uint32Array, faceCorners: Uint32Array, pointOf: Uint32Array | null): CleanFaces {
  const faceCount = faceStarts.length - 1;
  const starts = new Uint32Array(faceCount + 1);
  const corners = new Uint32Array(faceCorners.length);
  const numbers = new Uint32Array(faceCount);
  const shortened: number[] = [];
  const leftOut: number[] = [];
  let kept = 0;
  let at = 0;
  for (let f = 0; f < faceCount; f += 1) {
    const begin = at;
    for (let i = faceStarts[f]; i < faceStarts[f + 1]; i += 1) {
      const point = pointOf === null ? faceCorners[i] : pointOf[faceCorners[i]];
      if (at === begin || corners[at - 1] !== point) corners[at++] = point;
    }
    while (at - begin > 1 && corners[at - 1] === corners[begin]) at -= 1;
    if (at - begin < 3 || hasRepeat(corners, begin, at)) {
      at = begin;
      leftOut.push(f);
      continue;
    }
    if (at - begin < faceStarts[f + 1] - faceStarts[f]) shortened.push(f);
    numbers[kept] = f;
    kept += 1;
    starts[kept] = at;
  }
  return {
    starts: starts.slice(0, kept + 1),
    corners: corners.slice(0, at),
    numbers: numbers.slice(0, kept),
    shortened,
    leftOut,
  };
}

/** True when the row `corners[from .. to)`, in which no two neighbours are equal, holds a number twice. */
function hasRepeat(corners: Uint32Array, from: number, to: number): boolean {
  if (to - from === 3) return false;
  if (to - from > 16) return new Set(corners.subarray(from, to)).size < to - from;
  for (let i = from; i < to; i += 1) {
    for (let j = i + 2; j < to; j += 1) if (corners[i] === corners[j]) return true;
  }
  return false;
}
