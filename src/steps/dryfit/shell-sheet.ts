import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';

/** Triangles, or their sides, done in one stretch: a few milliseconds. */
const STRETCH = 4096;

/** A flat sheet of triangles at rest: all that its elastic energy needs and that does not change when it is bent. */
export interface ShellSheet {
  readonly vertexCount: number;
  /** Three vertices per triangle, counter-clockwise in the flat sheet. */
  readonly triangles: Uint32Array;
  /** mm² at rest, per triangle. */
  readonly areas: Float64Array;
  /** Per triangle the inverse of [p1 - p0, p2 - p0] as columns, row by row: 1/mm. */
  readonly inverses: Float64Array;
  /** Edge across from each corner of each triangle, three per triangle. */
  readonly triangleEdges: Uint32Array;
  /** Outward unit normal in the flat sheet of each of those edges, x y. */
  readonly normals: Float64Array;
  /** Length at rest of each of those edges, mm. */
  readonly lengths: Float64Array;
  /** Two vertices per edge, in the turn of its first triangle. */
  readonly edgeVertices: Uint32Array;
  /** Triangle left of the edge, then the one right of it or -1 at the border. */
  readonly edgeTriangles: Int32Array;
  /** Vertices of those two triangles across from the edge; -1 where there is none. */
  readonly edgeOpposite: Int32Array;
}

/**
 * @param triangles  three vertices per triangle; every edge has one or two triangles.
 * @param uv         x y per vertex, mm: the sheet at rest, every triangle counter-clockwise and not empty.
 */
export const shellSheet = (triangles: Uint32Array, uv: Float64Array): ShellSheet =>
  runAtOnce(shellSheetSteps(triangles, uv));

/** The same in stretches. */
export function* shellSheetSteps(triangles: Uint32Array, uv: Float64Array): Stepwise<ShellSheet> {
  const count = triangles.length / 3;
  const areas = new Float64Array(count);
  const inverses = new Float64Array(4 * count);
  const normals = new Float64Array(6 * count);
  const lengths = new Float64Array(3 * count);
  for (let t = 0; t < count; t += 1) {
    if (t % STRETCH === 0) yield;
    const [p, q, r] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    const [ax, ay] = [uv[2 * q] - uv[2 * p], uv[2 * q + 1] - uv[2 * p + 1]];
    const [bx, by] = [uv[2 * r] - uv[2 * p], uv[2 * r + 1] - uv[2 * p + 1]];
    const double = ax * by - ay * bx;
    areas[t] = double / 2;
    inverses.set([by / double, -bx / double, -ay / double, ax / double], 4 * t);
    for (let i = 0; i < 3; i += 1) {
      const from = triangles[3 * t + ((i + 1) % 3)];
      const to = triangles[3 * t + ((i + 2) % 3)];
      const [dx, dy] = [uv[2 * to] - uv[2 * from], uv[2 * to + 1] - uv[2 * from + 1]];
      const length = Math.hypot(dx, dy);
      lengths[3 * t + i] = length;
      normals[6 * t + 2 * i] = dy / length;
      normals[6 * t + 2 * i + 1] = -dx / length;
    }
  }
  return {
    vertexCount: uv.length / 2,
    triangles,
    areas,
    inverses,
    normals,
    lengths,
    ...(yield* edgeSteps(triangles, uv.length / 2)),
  };
}

type Edges = Pick<ShellSheet, 'triangleEdges' | 'edgeVertices' | 'edgeTriangles' | 'edgeOpposite'>;

function* edgeSteps(triangles: Uint32Array, vertexCount: number): Stepwise<Edges> {
  const known = new Map<number, number>();
  const triangleEdges = new Uint32Array(triangles.length);
  const vertices: number[] = [];
  const beside: number[] = [];
  const opposite: number[] = [];
  for (let h = 0; h < triangles.length; h += 1) {
    if (h % STRETCH === 0) yield;
    const first = h - (h % 3);
    const from = triangles[first + ((h + 1) % 3)];
    const to = triangles[first + ((h + 2) % 3)];
    const key = Math.min(from, to) * vertexCount + Math.max(from, to);
    const edge = known.get(key) ?? beside.length / 2;
    triangleEdges[h] = edge;
    if (2 * edge === beside.length) {
      known.set(key, edge);
      vertices.push(from, to);
      beside.push(first / 3, -1);
      opposite.push(triangles[h], -1);
    } else {
      beside[2 * edge + 1] = first / 3;
      opposite[2 * edge + 1] = triangles[h];
    }
  }
  return {
    triangleEdges,
    edgeVertices: Uint32Array.from(vertices),
    edgeTriangles: Int32Array.from(beside),
    edgeOpposite: Int32Array.from(opposite),
  };
}
