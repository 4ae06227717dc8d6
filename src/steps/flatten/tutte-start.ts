import { dissectionOrder } from '../../geom/dissection-order.ts';
import { SparseLdl } from '../../geom/sparse-ldl.ts';
import type { Patch } from '../../model/patch.ts';
import type { RestShape } from './rest-shape.ts';

/**
 * A flat start without a flip, for any disc: the border on a circle by its length, every inner vertex in the mean of its neighbours
 * (Tutte, "How to draw a graph", 1963; Floater 1997 for convex borders). Holes are spanned by one extra vertex each, which is
 * then dropped.
 * @param edges pairs of local vertices, each edge once.
 * @returns x y per local vertex; the circle is as long as the border, mm.
 */
export function tutteStart(patch: Patch, shape: RestShape, edges: Uint32Array): Float64Array {
  const { vertexCount } = shape;
  const holes = patch.loops.slice(1);
  const spokes = holes.flatMap((loop, i) => [...loop].flatMap((v) => [v, vertexCount + i]));
  const count = vertexCount + holes.length;
  const pairs = Uint32Array.from([...edges, ...spokes]);
  const fixed = borderOnCircle(patch.loops[0], shape);
  const { rows, cols, values, x, y } = meanEquations(count, pairs, fixed);
  const system = new SparseLdl(count, rows, cols, dissectionOrder(withCentres(shape, holes), 3, pairs));
  if (!system.factor(values)) throw new Error('tutteStart: the graph of the patch falls apart');
  system.solve(x);
  system.solve(y);
  const flat = new Float64Array(2 * vertexCount);
  for (let v = 0; v < vertexCount; v += 1) {
    flat[2 * v] = x[v];
    flat[2 * v + 1] = y[v];
  }
  return flat;
}

/** Place on the circle for each vertex of the loop; least share of the circle for coincident ones, so that none share a place. */
function borderOnCircle(loop: Uint32Array, { points }: RestShape): Map<number, readonly [number, number]> {
  const lengths = Array.from(loop, (v, i) => {
    const w = loop[(i + 1) % loop.length];
    return Math.hypot(
      points[3 * w] - points[3 * v],
      points[3 * w + 1] - points[3 * v + 1],
      points[3 * w + 2] - points[3 * v + 2],
    );
  });
  const mean = lengths.reduce((sum, length) => sum + length, 0) / loop.length;
  const steps = lengths.map((length) => Math.max(length, 0.01 * mean));
  const total = steps.reduce((sum, step) => sum + step, 0);
  const radius = total / (2 * Math.PI);
  const places = new Map<number, readonly [number, number]>();
  let run = 0;
  for (const [i, v] of loop.entries()) {
    const angle = (2 * Math.PI * run) / total;
    places.set(v, [radius * Math.cos(angle), radius * Math.sin(angle)]);
    run += steps[i];
  }
  return places;
}

function meanEquations(count: number, pairs: Uint32Array, fixed: ReadonlyMap<number, readonly [number, number]>) {
  const edgeCount = pairs.length / 2;
  const rows = new Int32Array(count + edgeCount);
  const cols = new Int32Array(count + edgeCount);
  const values = new Float64Array(count + edgeCount);
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (let v = 0; v < count; v += 1) {
    rows[v] = v;
    cols[v] = v;
    const place = fixed.get(v);
    if (place === undefined) continue;
    values[v] = 1;
    [x[v], y[v]] = place;
  }
  for (let e = 0; e < edgeCount; e += 1) {
    const [a, b] = [pairs[2 * e], pairs[2 * e + 1]];
    rows[count + e] = a;
    cols[count + e] = b;
    const [placeA, placeB] = [fixed.get(a), fixed.get(b)];
    if (placeA === undefined) values[a] += 1;
    if (placeB === undefined) values[b] += 1;
    if (placeA === undefined && placeB === undefined) values[count + e] = -1;
    else if (placeA === undefined && placeB !== undefined) [x[a], y[a]] = [x[a] + placeB[0], y[a] + placeB[1]];
    else if (placeA !== undefined && placeB === undefined) [x[b], y[b]] = [x[b] + placeA[0], y[b] + placeA[1]];
  }
  return { rows, cols, values, x, y };
}

/** Points of the patch and the middle of each hole, for the order of elimination only. */
function withCentres({ points, vertexCount }: RestShape, holes: readonly Uint32Array[]): Float64Array {
  const all = new Float64Array(3 * (vertexCount + holes.length));
  all.set(points);
  for (const [i, loop] of holes.entries()) {
    for (const v of loop)
      for (let axis = 0; axis < 3; axis += 1) all[3 * (vertexCount + i) + axis] += points[3 * v + axis] / loop.length;
  }
  return all;
}
