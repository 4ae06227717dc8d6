import { add3, cross3, dot3, length3, pointAt3, rad, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import { eigen3 } from '../../geom/symmetric-3x3.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { nextHalfedge, prevHalfedge, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { PieceSurface } from './piece-surface.ts';

/** How far a patch has turned at each of its places: it bends one way, about one axis, as part of a tube or a cone does. */
export interface KerfTurn {
  /** At each local vertex, radians, 0 where the patch begins to bend. */
  readonly turnRad: Float64Array;
  readonly wholeRad: number;
  /** Whether the face is on the outside of the bend. */
  readonly isConvex: boolean;
}

/** Why straight cuts cannot bend a patch. */
export type KerfFault = 'flat' | 'two ways' | 'both sides';

/** A patch that turns less than this is flat, degrees [J]. */
const LEAST_TURN_DEG = 5;

/** From corner to corner so much of the turn may be out of the circle of the bend, as a share of what is along it [J]. */
const MOST_ASIDE = 0.2;

/** Of its folds so much may go to the other side, as a share of all [J]. */
const MOST_BACK = 0.1;

/**
 * The turn of a patch that bends one way. Where it does, its normals lie on one circle of the sphere: a great one on a tube, a small one on a
 * cone (Gauss, Disquisitiones generales circa superficies curvas, 1828: a surface that is only bent has an image without area). The plane of that
 * circle is the one that normals lie nearest to by least squares, and the turn is the way along it.
 */
export function kerfTurn(mesh: Mesh, surface: PieceSurface): KerfTurn | KerfFault {
  const { triangles, meshVertices } = surface.patch;
  const normals = cornerNormals(mesh, surface);
  const axis = axisOf(surface);
  const edges = neighboursOf(triangles, meshVertices.length);
  const heights = normals.map((n) => Math.asin(Math.max(-1, Math.min(1, dot3(n, axis)))));
  const width = Math.cos(heights.reduce((sum, height) => sum + height, 0) / heights.length);
  const turns = turnsAbout(edges, normals, axis).map((turn) => width * turn);
  let [least, most] = [Infinity, -Infinity];
  for (const turn of turns) [least, most] = [Math.min(least, turn), Math.max(most, turn)];
  if (!(most - least >= rad(LEAST_TURN_DEG))) return 'flat';
  let [along, aside] = [0, 0];
  edges.forEach((list, v) => {
    for (const w of list) {
      along += Math.abs(turns[w] - turns[v]);
      aside += Math.abs(heights[w] - heights[v]);
    }
  });
  if (aside > MOST_ASIDE * along) return 'two ways';
  const [convex, concave] = foldSums(surface);
  if (Math.min(convex, concave) > MOST_BACK * (convex + concave)) return 'both sides';
  return { turnRad: turns.map((turn) => turn - least), wholeRad: most - least, isConvex: convex > concave };
}

/** In words for the maker, behind the name of the piece. */
export function kerfFaultText(fault: KerfFault): string {
  switch (fault) {
    case 'flat':
      return `turns less than ${LEAST_TURN_DEG} degrees in all: it needs no kerfs`;
    case 'two ways':
      return 'bends two ways, and straight cuts let it bend one way alone: part it into pieces that bend one way, or warm and form it';
    case 'both sides':
      return 'bends to both sides, and each kerf is cut from the inside of its bend: part it where the bend changes sides';
  }
}

/** Folds whose face is on the outside, and on the inside, each by how far it turns and how wide the facets beside it are. */
function foldSums({ across, foldRad, areas }: PieceSurface): readonly [number, number] {
  let [convex, concave] = [0, 0];
  for (let h = 0; h < across.length; h += 1) {
    const t = triangleOfHalfedge(h);
    if (across[h] <= t) continue;
    const share = Math.sqrt(areas[t] + areas[across[h]]) * foldRad[h];
    if (share > 0) convex += share;
    else concave -= share;
  }
  return [convex, concave];
}

/** Means of the facets' normals by their angles at the corner, so that it does not matter how a side is cut into triangles; length 1. */
function cornerNormals({ positions }: Mesh, { patch, normals }: PieceSurface): readonly Vec3[] {
  const sums = Array.from(patch.meshVertices, (): Vec3 => ({ x: 0, y: 0, z: 0 }));
  const at = (c: number): Vec3 => pointAt3(positions, patch.meshVertices[patch.triangles[c]]);
  for (let c = 0; c < patch.triangles.length; c += 1) {
    const [p, q, r] = [at(c), at(nextHalfedge(c)), at(prevHalfedge(c))];
    const [u, w] = [sub3(q, p), sub3(r, p)];
    const angle = Math.atan2(length3(cross3(u, w)), dot3(u, w));
    sums[patch.triangles[c]] = add3(sums[patch.triangles[c]], scale3(pointAt3(normals, triangleOfHalfedge(c)), angle));
  }
  return sums.map((sum) => (length3(sum) > 0 ? unit3(sum) : sum));
}

/** The direction along which the normals of the facets differ least from their mean, by area. */
function axisOf({ normals, areas }: PieceSurface): Vec3 {
  const mean = [0, 0, 0];
  let whole = 0;
  areas.forEach((area, t) => {
    whole += area;
    for (let k = 0; k < 3; k += 1) mean[k] += area * normals[3 * t + k];
  });
  const [mx, my, mz] = mean.map((sum) => sum / whole);
  const m = new Float64Array(6);
  areas.forEach((area, t) => {
    const [x, y, z] = [normals[3 * t] - mx, normals[3 * t + 1] - my, normals[3 * t + 2] - mz];
    [x * x, x * y, x * z, y * y, y * z, z * z].forEach((product, i) => (m[i] += area * product));
  });
  const [x, y, z] = eigen3(m).vectors[2];
  return { x, y, z };
}

/** The angle of each corner's normal round the axis, followed from corner to corner so that it may pass a whole turn. */
function turnsAbout(neighbours: readonly (readonly number[])[], normals: readonly Vec3[], axis: Vec3): Float64Array {
  const flat = normals.map((n) => sub3(n, scale3(axis, dot3(n, axis))));
  const turns = new Float64Array(normals.length);
  const known = new Uint8Array(normals.length);
  for (let start = 0; start < normals.length; start += 1) {
    if (known[start] === 1) continue;
    known[start] = 1;
    const queue = [start];
    for (let v = queue.pop(); v !== undefined; v = queue.pop()) {
      for (const w of neighbours[v]) {
        if (known[w] === 1) continue;
        known[w] = 1;
        const step = Math.atan2(dot3(cross3(flat[v], flat[w]), axis), dot3(flat[v], flat[w]));
        turns[w] = turns[v] + step;
        queue.push(w);
      }
    }
  }
  return turns;
}

function neighboursOf(triangles: ArrayLike<number>, count: number): readonly (readonly number[])[] {
  const found = Array.from({ length: count }, () => new Set<number>());
  for (let c = 0; c < triangles.length; c += 1) {
    const [v, w] = [triangles[c], triangles[nextHalfedge(c)]];
    found[v].add(w);
    found[w].add(v);
  }
  return found.map((set) => [...set]);
}
