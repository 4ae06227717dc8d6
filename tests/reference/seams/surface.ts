/** A polygon surface as the seam chooser sees it: who lies beside whom, and how sharply. */
export interface Surface {
  readonly positions: readonly Point[];
  readonly faces: readonly (readonly number[])[];
  readonly edges: readonly Edge[];
  /** Numbers of the edges round each face, in the order of its corners. */
  readonly edgesOfFace: readonly (readonly number[])[];
  readonly centres: readonly Point[];
  readonly normals: readonly Point[];
  /** Angle missing at each corner to lie flat, radians; 0 on the rim and where no face is. */
  readonly defects: readonly number[];
  /** Length of the box's diagonal, units of the file. */
  readonly diagonal: number;
}

export type Point = readonly [number, number, number];

export interface Edge {
  readonly v: number;
  readonly w: number;
  /** The faces on it: two inside, one on the rim. */
  readonly faces: readonly number[];
  readonly length: number;
  /** Angle between the normals of its two faces, radians, without sign. */
  readonly fold: number;
}

/** Reads the `v` and `f` lines of an OBJ file whose corners are written once each. */
export function surfaceFromObj(text: string): Surface {
  const positions: Point[] = [];
  const faces: number[][] = [];
  for (const line of text.split(/\r?\n/)) {
    const [word, ...rest] = line.trim().split(/\s+/);
    if (word === 'v') positions.push([Number(rest[0]), Number(rest[1]), Number(rest[2])]);
    if (word === 'f') faces.push(rest.map((corner) => Number.parseInt(corner, 10) - 1));
  }
  const normals = faces.map((face) => newellNormal(face.map((v) => positions[v])));
  const centres = faces.map((face) => mean(face.map((v) => positions[v])));
  const { edges, edgesOfFace } = edgesOf(positions, faces, normals);
  const low = [0, 1, 2].map((k) => Math.min(...positions.map((p) => p[k])));
  const high = [0, 1, 2].map((k) => Math.max(...positions.map((p) => p[k])));
  const diagonal = Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
  const defects = defectsOf(positions, faces, edges);
  return { positions, faces, edges, edgesOfFace, centres, normals, defects, diagonal };
}

export const distance = (p: Point, q: Point): number => Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]);

function edgesOf(
  positions: readonly Point[],
  faces: readonly (readonly number[])[],
  normals: readonly Point[],
): { edges: Edge[]; edgesOfFace: number[][] } {
  const numbers = new Map<string, number>();
  const found: { v: number; w: number; faces: number[] }[] = [];
  const edgesOfFace = faces.map((face, f) =>
    face.map((a, k) => {
      const b = face[(k + 1) % face.length];
      const [v, w] = a < b ? [a, b] : [b, a];
      const key = `${v} ${w}`;
      const number = numbers.get(key) ?? found.length;
      if (number === found.length) {
        numbers.set(key, number);
        found.push({ v, w, faces: [] });
      }
      found[number].faces.push(f);
      return number;
    }),
  );
  const edges = found.map((edge) => ({
    ...edge,
    length: distance(positions[edge.v], positions[edge.w]),
    fold: edge.faces.length === 2 ? angleBetween(normals[edge.faces[0]], normals[edge.faces[1]]) : 0,
  }));
  return { edges, edgesOfFace };
}

function defectsOf(
  positions: readonly Point[],
  faces: readonly (readonly number[])[],
  edges: readonly Edge[],
): number[] {
  const defects = positions.map(() => 2 * Math.PI);
  const isUsed = new Uint8Array(positions.length);
  for (const face of faces) {
    for (const [k, v] of face.entries()) {
      const before = positions[face[(k + face.length - 1) % face.length]];
      const after = positions[face[(k + 1) % face.length]];
      defects[v] -= angleBetween(minus(before, positions[v]), minus(after, positions[v]));
      isUsed[v] = 1;
    }
  }
  for (const { v, w, faces: around } of edges) if (around.length !== 2) isUsed[v] = isUsed[w] = 0;
  return defects.map((defect, v) => (isUsed[v] === 1 ? defect : 0));
}

function newellNormal(points: readonly Point[]): Point {
  let [x, y, z] = [0, 0, 0];
  for (const [k, p] of points.entries()) {
    const q = points[(k + 1) % points.length];
    x += (p[1] - q[1]) * (p[2] + q[2]);
    y += (p[2] - q[2]) * (p[0] + q[0]);
    z += (p[0] - q[0]) * (p[1] + q[1]);
  }
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}

const mean = (points: readonly Point[]): Point =>
  [0, 1, 2].map((k) => points.reduce((sum, p) => sum + p[k], 0) / points.length) as unknown as Point;

const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];

function angleBetween(a: Point, b: Point): number {
  const cross = Math.hypot(a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]);
  return Math.atan2(cross, a[0] * b[0] + a[1] * b[1] + a[2] * b[2]);
}
