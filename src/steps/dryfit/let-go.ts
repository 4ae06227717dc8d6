import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';

/** A flat piece whose fit is so near to none that any turn is as good, as of a sheet rolled up into a full tube. */
const LEAST_FIT = 1e-9;

/**
 * How far each vertex of a piece stands off its place, mm, when the piece is let go: bent cold and all elastic it springs flat, and is laid
 * back against its place by the turn and the move that bring its area nearest (least squares; Kabsch, "A solution for the best rotation to
 * relate two sets of vectors", 1976, here from a plane into space: H (H' H)^-1/2).
 *
 * An arc of the radius R over the angle a, its middle laid against the flat strip's: each end stands off by the length of
 * (R sin(a/2) - R a/2, R cos(a/2) - R sin(a/2) / (a/2)).
 * @param uv         the piece flat, x y per vertex, mm.
 * @param positions  the piece held, x y z per vertex, mm.
 */
export function standOff(triangles: Uint32Array, uv: Float64Array, positions: Float64Array): Float64Array {
  const weights = vertexAreas(triangles, uv);
  const total = weights.reduce((sum, w) => sum + w, 0);
  const at = (v: number): Vec3 => pointAt3(positions, v);
  const flat = (v: number): readonly [number, number] => [uv[2 * v], uv[2 * v + 1]];
  let [middle, u, w]: [Vec3, number, number] = [{ x: 0, y: 0, z: 0 }, 0, 0];
  for (let v = 0; v < weights.length; v += 1) {
    middle = add3(middle, scale3(at(v), weights[v] / total));
    u += (weights[v] / total) * flat(v)[0];
    w += (weights[v] / total) * flat(v)[1];
  }
  let [first, second]: [Vec3, Vec3] = [
    { x: 0, y: 0, z: 0 },
    { x: 0, y: 0, z: 0 },
  ];
  for (let v = 0; v < weights.length; v += 1) {
    const arm = scale3(sub3(at(v), middle), weights[v]);
    first = add3(first, scale3(arm, flat(v)[0] - u));
    second = add3(second, scale3(arm, flat(v)[1] - w));
  }
  const [alongU, alongV] = nearestAxes(first, second);
  return Float64Array.from(weights, (_, v) => {
    const [x, y] = flat(v);
    const there = add3(middle, add3(scale3(alongU, x - u), scale3(alongV, y - w)));
    return length3(sub3(at(v), there));
  });
}

/** The two unit vectors at right angles that are nearest to two given ones. */
function nearestAxes(p: Vec3, q: Vec3): readonly [Vec3, Vec3] {
  const [pp, pq, qq] = [dot3(p, p), dot3(p, q), dot3(q, q)];
  const det = Math.sqrt(Math.max(0, pp * qq - pq * pq));
  if (!(det > LEAST_FIT * (pp + qq))) return anyAxes(p, q);
  // (H'H)^1/2 of a matrix of two rows is (H'H + det) / trace, and its inverse follows.
  const trace = Math.sqrt(pp + qq + 2 * det);
  const [a, b, c] = [(pp + det) / trace, pq / trace, (qq + det) / trace];
  const size = a * c - b * b;
  return [sub3(scale3(p, c / size), scale3(q, b / size)), sub3(scale3(q, a / size), scale3(p, b / size))];
}

function anyAxes(p: Vec3, q: Vec3): readonly [Vec3, Vec3] {
  const longer = dot3(p, p) >= dot3(q, q) ? p : q;
  const first = length3(longer) > 0 ? unit3(longer) : { x: 1, y: 0, z: 0 };
  const aside = Math.abs(first.x) < 0.5 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 };
  const second = unit3(cross3(first, aside));
  return longer === p ? [first, second] : [second, first];
}

/** A third of the flat area round each vertex, mm². */
function vertexAreas(triangles: Uint32Array, uv: Float64Array): Float64Array {
  const areas = new Float64Array(uv.length / 2);
  for (let t = 0; t < triangles.length; t += 3) {
    const [p, q, r] = [triangles[t], triangles[t + 1], triangles[t + 2]];
    const [ax, ay] = [uv[2 * q] - uv[2 * p], uv[2 * q + 1] - uv[2 * p + 1]];
    const [bx, by] = [uv[2 * r] - uv[2 * p], uv[2 * r + 1] - uv[2 * p + 1]];
    const third = Math.abs(ax * by - ay * bx) / 6;
    for (const v of [p, q, r]) areas[v] += third;
  }
  return areas;
}
