import { add3, cross3, dot3, pointAt3, scale3, sub3, unit3, length3, type Vec3 } from '../../geom/vec.ts';
import type { HeldShell } from './shell-energy.ts';

/** What a piece does to the joint along a stretch of its border. */
export interface BorderLoad {
  readonly lengthMm: number;
  /** N per mm: across > 0 pulls away from the joint; along and out with the signs of the border's direction and of the face. */
  readonly across: number;
  readonly along: number;
  readonly out: number;
  /** N mm per mm, > 0 for a convex bend. */
  readonly moment: number;
  readonly middle: Vec3;
}

/** Loads of all border edges, found by their two vertices in either order. */
export type BorderLoads = (from: number, to: number) => BorderLoad;

/** Forces at vertices spread over half of the two border edges beside each. @param positions as held, x y z per vertex, mm. */
export function borderLoads(held: HeldShell, positions: Float64Array): BorderLoads {
  const { vertexCount, triangles, edgeVertices, edgeTriangles } = held.sheet;
  const share = new Float64Array(vertexCount);
  const edgeOf = new Map<number, number>();
  const at = (v: number): Vec3 => pointAt3(positions, v);
  for (let e = 0; e < edgeTriangles.length / 2; e += 1) {
    if (edgeTriangles[2 * e + 1] >= 0) continue;
    const [a, b] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    const length = length3(sub3(at(b), at(a)));
    share[a] += length / 2;
    share[b] += length / 2;
    edgeOf.set(a * vertexCount + b, e);
  }
  return (from, to) => {
    const e = edgeOf.get(from * vertexCount + to) ?? edgeOf.get(to * vertexCount + from);
    // A slit of one edge parts no corner from itself: the foam hangs together at both of its ends, and it opens nowhere.
    if (e === undefined)
      return {
        lengthMm: length3(sub3(at(to), at(from))),
        across: 0,
        along: 0,
        out: 0,
        moment: 0,
        middle: scale3(add3(at(from), at(to)), 0.5),
      };
    const [a, b] = [edgeVertices[2 * e], edgeVertices[2 * e + 1]];
    const [p, q, r] = [0, 1, 2].map((i) => at(triangles[3 * edgeTriangles[2 * e] + i]));
    const normal = unit3(cross3(sub3(q, p), sub3(r, p)));
    const span = sub3(at(b), at(a));
    const along = unit3(span);
    const density = (v: number): Vec3 => scale3(pointAt3(held.forces, v), 1 / share[v]);
    const force = scale3(add3(density(a), density(b)), 0.5);
    return {
      lengthMm: length3(span),
      across: -dot3(force, cross3(along, normal)),
      along: dot3(force, along),
      out: dot3(force, normal),
      moment: held.momentsN[e],
      middle: scale3(add3(at(a), at(b)), 0.5),
    };
  };
}
