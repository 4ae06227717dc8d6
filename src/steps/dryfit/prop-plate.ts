import type { Vec3 } from '../../geom/vec.ts';
import type { Patch } from '../../model/patch.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import type { Skin } from './cut-edge.ts';
import { seamVertex } from './fit-side.ts';
import { heightOf, placed, type BentSide } from './placed-edge.ts';

/** Skins of a piece put in its place, packed xyz per local vertex of its patch, mm, model space. */
export interface PlateSkins {
  readonly face: Float64Array;
  readonly back: Float64Array;
}

/**
 * A finished piece bent back on the sculpt as thick as it is. Inside it is the shell; along its seams its face and its back end where its cut
 * outlines do, so that what is cut too short or too long stands off its neighbour as far as the dry fit measures.
 * @param sides  the runs of the piece's seams, bent. Where it meets nothing, its edges are those of the shell.
 */
export function plateSkins(
  { meshVertices }: Patch,
  { facePositions, backPositions }: Pick<ShellLayer, 'facePositions' | 'backPositions'>,
  sides: readonly BentSide[],
): PlateSkins {
  const skins = { face: ofPatch(facePositions, meshVertices), back: ofPatch(backPositions, meshVertices) };
  for (const skin of ['face', 'back'] as const) {
    const ends = new Ends(meshVertices.length);
    for (const side of sides) addEnds(ends, side, skin);
    ends.put(skins[skin]);
  }
  return skins;
}

/** Both ends of every cut of a side; the cuts of two edges, or of two seams, end at one corner, of which each tells where it puts it. */
function addEnds(ends: Ends, bent: BentSide, skin: Skin): void {
  const height = heightOf(bent, skin);
  bent.cuts[skin].forEach(({ f0, o0, f1, o1 }, i) => {
    ends.add(seamVertex(bent.side, i, 0), placed(bent, i, { f: f0, out: o0 }, height).at);
    ends.add(seamVertex(bent.side, i, 1), placed(bent, i, { f: f1, out: o1 }, height).at);
  });
}

/** The mean of all places told for each vertex. */
class Ends {
  readonly #sums: Float64Array;
  readonly #counts: Uint16Array;

  constructor(vertices: number) {
    this.#sums = new Float64Array(3 * vertices);
    this.#counts = new Uint16Array(vertices);
  }

  add(vertex: number, { x, y, z }: Vec3): void {
    this.#sums[3 * vertex] += x;
    this.#sums[3 * vertex + 1] += y;
    this.#sums[3 * vertex + 2] += z;
    this.#counts[vertex] += 1;
  }

  put(points: Float64Array): void {
    this.#counts.forEach((count, v) => {
      if (count > 0) for (let k = 3 * v; k < 3 * v + 3; k += 1) points[k] = this.#sums[k] / count;
    });
  }
}

function ofPatch(positions: Float64Array, meshVertices: Uint32Array): Float64Array {
  const points = new Float64Array(3 * meshVertices.length);
  meshVertices.forEach((v, i) => points.set(positions.subarray(3 * v, 3 * v + 3), 3 * i));
  return points;
}
