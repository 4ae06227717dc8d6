import type { Solid } from './polygon-solids.ts';

/** A solid of regular faces with every edge a seam. */
export interface UniformSolid extends Solid {
  readonly name: string;
  /** Turns between the outward normals of faces that meet, as published, degrees, ascending. */
  readonly foldsDeg: readonly number[];
}

type Point = readonly [number, number, number];

const PHI = (1 + Math.sqrt(5)) / 2;
const DEG = 180 / Math.PI;

/** Folds from the dihedral angles of the solids as any table of solids gives them in closed form. */
const fold = (...dihedralsRad: number[]): readonly number[] =>
  dihedralsRad.map((angle) => 180 - angle * DEG).sort((a, b) => a - b);

const TETRA = Math.acos(1 / 3);
const OCTA = Math.acos(-1 / 3);
const DODECA = Math.acos(-1 / Math.sqrt(5));
const ICOSA = Math.acos(-Math.sqrt(5) / 3);
/** Hexagon and square of the truncated octahedron; triangle and octagon of the truncated cube. */
const OCTA_SIDE = Math.acos(-1 / Math.sqrt(3));
/** Hexagon or triangle beside a pentagon or decagon. */
const ICOSA_SIDE = Math.acos(-Math.sqrt((5 + 2 * Math.sqrt(5)) / 15));

/** All signs of some points, with their coordinates in every order that is a turn of the first. */
function even(points: readonly Point[]): readonly Point[] {
  return distinct(
    points.flatMap(([x, y, z]) =>
      signs([
        [x, y, z],
        [y, z, x],
        [z, x, y],
      ]),
    ),
  );
}

/** All signs and all orders. */
function all(points: readonly Point[]): readonly Point[] {
  return even(
    points.flatMap(([x, y, z]): Point[] => [
      [x, y, z],
      [x, z, y],
    ]),
  );
}

function signs(points: readonly Point[]): readonly Point[] {
  const both = [1, -1];
  return points.flatMap(([x, y, z]) =>
    both.flatMap((a) => both.flatMap((b) => both.map((c): Point => [a * x, b * y, c * z]))),
  );
}

const NEAR = 1e-9;

function distinct(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const p of points) if (!kept.some((q) => apart(p, q) < NEAR)) kept.push(p);
  return kept;
}

/** The convex solid of some corners whose edges are as long as the shortest distance between two of them. */
function solidOf(name: string, points: readonly Point[], foldsDeg: readonly number[]): UniformSolid {
  const shortest = Math.min(...points.slice(1).map((p) => apart(p, points[0])));
  const corners = points.map(([x, y, z]): Point => {
    const scale = 80 / shortest;
    return [scale * x, scale * y, scale * z];
  });
  const seams: [number, number][] = [];
  for (let i = 0; i < corners.length; i += 1) {
    for (let j = i + 1; j < corners.length; j += 1)
      if (Math.abs(apart(corners[i], corners[j]) - 80) < 1e-6) seams.push([i, j]);
  }
  return { name, corners, faces: facesOf(corners, seams), seams, foldsDeg };
}

/** Every plane through two edges at a corner that has all corners on one side. */
function facesOf(corners: readonly Point[], edges: readonly (readonly [number, number])[]): number[][] {
  const faces = new Map<string, number[]>();
  const ways = corners.map((_, v) => edges.flatMap(([i, j]) => (i === v ? [j] : j === v ? [i] : [])));
  for (const [v, next] of ways.entries()) {
    for (const a of next) {
      for (const b of next) {
        if (a === b) continue;
        const normal = cross(minus(corners[a], corners[v]), minus(corners[b], corners[v]));
        const heights = corners.map((p) => dot(minus(p, corners[v]), normal) / Math.hypot(...normal));
        if (heights.some((height) => height > 1e-6)) continue;
        const face = corners.map((_, i) => i).filter((i) => heights[i] > -1e-6);
        faces.set(face.join(' '), inOrder(face, corners, normal));
      }
    }
  }
  return [...faces.values()];
}

/** Corners of a face counter-clockwise about its outward normal. */
function inOrder(face: readonly number[], corners: readonly Point[], normal: Point): number[] {
  const middle = [0, 1, 2].map((k) => face.reduce((sum, i) => sum + corners[i][k], 0) / face.length);
  const [mx, my, mz] = middle;
  const arm = (i: number): Point => minus(corners[i], [mx, my, mz]);
  const first = arm(face[0]);
  const second = cross(normal, first);
  const angle = (i: number): number =>
    Math.atan2(dot(arm(i), second) / Math.hypot(...second), dot(arm(i), first) / Math.hypot(...first));
  return [...face].sort((i, j) => angle(i) - angle(j));
}

const minus = (p: Point, q: Point): Point => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
const apart = (p: Point, q: Point): number => Math.hypot(...minus(p, q));
const dot = (p: Point, q: Point): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross = (p: Point, q: Point): Point => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];

/** The five regular solids, edge 80 mm. */
export const PLATONIC: readonly UniformSolid[] = [
  solidOf(
    'tetrahedron',
    even([[1, 1, 1]]).filter(([x, y, z]) => x * y * z > 0),
    fold(TETRA),
  ),
  solidOf('cube', even([[1, 1, 1]]), fold(Math.PI / 2)),
  solidOf('octahedron', even([[1, 0, 0]]), fold(OCTA)),
  solidOf(
    'dodecahedron',
    even([
      [1, 1, 1],
      [0, 1 / PHI, PHI],
    ]),
    fold(DODECA),
  ),
  solidOf('icosahedron', even([[0, 1, PHI]]), fold(ICOSA)),
];

/** The solids of regular faces of two or three kinds with three of them at each corner, edge 80 mm. */
export const THREE_AT_A_CORNER: readonly UniformSolid[] = [
  solidOf(
    'truncated tetrahedron',
    all([[3, 1, 1]]).filter(([x, y, z]) => x * y * z > 0),
    fold(TETRA, Math.PI - TETRA),
  ),
  solidOf('truncated cube', all([[Math.SQRT2 - 1, 1, 1]]), fold(Math.PI / 2, OCTA_SIDE)),
  solidOf('truncated octahedron', all([[0, 1, 2]]), fold(OCTA, OCTA_SIDE)),
  solidOf(
    'truncated dodecahedron',
    even([
      [0, 1 / PHI, 2 + PHI],
      [1 / PHI, PHI, 2 * PHI],
      [PHI, 2, PHI + 1],
    ]),
    fold(DODECA, ICOSA_SIDE),
  ),
  solidOf(
    'truncated icosahedron',
    even([
      [0, 1, 3 * PHI],
      [1, 2 + PHI, 2 * PHI],
      [PHI, 2, 2 * PHI + 1],
    ]),
    fold(ICOSA, ICOSA_SIDE),
  ),
  solidOf(
    'truncated cuboctahedron',
    all([[1, 1 + Math.SQRT2, 1 + 2 * Math.SQRT2]]),
    fold(Math.acos(-Math.sqrt(6) / 3), OCTA_SIDE, (3 * Math.PI) / 4),
  ),
  solidOf(
    'truncated icosidodecahedron',
    even([
      [1 / PHI, 1 / PHI, 3 + PHI],
      [2 / PHI, PHI, 1 + 2 * PHI],
      [1 / PHI, PHI ** 2, 3 * PHI - 1],
      [2 * PHI - 1, 2, 2 + PHI],
      [PHI, 3, 2 * PHI],
    ]),
    fold(Math.acos(-(Math.sqrt(3) + Math.sqrt(15)) / 6), Math.acos(-Math.sqrt((5 + Math.sqrt(5)) / 10)), ICOSA_SIDE),
  ),
];

/** Square and triangle of a cuboctahedron. */
const CUBOCTA = Math.acos(-1 / Math.sqrt(3));

/** The root of t³ = t² + t + 1, and that of x³ - 2 x = the golden ratio. */
const [TRIBONACCI, SNUB] = [root((t) => t ** 3 - t ** 2 - t - 1, 1.8), root((x) => x ** 3 - 2 * x - PHI, 1.7)];

/** Newton's method with the slope from both sides: to rounding in a few steps. */
function root(of: (x: number) => number, near: number): number {
  let x = near;
  for (let i = 0; i < 30; i += 1) x -= (2e-6 * of(x)) / (of(x + 1e-6) - of(x - 1e-6));
  return x;
}

/**
 * Folds of a solid all of whose edges touch one sphere, as those of every solid here do: beside an edge the face of `p` corners leans
 * acos(r / midradius) from the way to the middle, r its own inner radius, cot(pi / p) / 2 for an edge of 1.
 */
function foldsByMidradius(midradius: number, ...pairs: readonly (readonly [number, number])[]): readonly number[] {
  const lean = (p: number): number => Math.acos(1 / (2 * Math.tan(Math.PI / p)) / midradius);
  return fold(...pairs.map(([p, q]) => lean(p) + lean(q)));
}

/** All signs with an odd number of minuses, in every order that is a turn of the first. */
const oddly = (points: readonly Point[]): readonly Point[] =>
  distinct(
    points.flatMap((point) =>
      even([point.map(Math.abs) as unknown as Point]).filter(
        (turned) => turned.filter((x) => x < 0).length % 2 === point.filter((x) => x < 0).length % 2,
      ),
    ),
  );

function snubCorners(): readonly Point[] {
  const [a, b] = [SNUB - 1 / SNUB, SNUB * PHI + PHI ** 2 + PHI / SNUB];
  return oddly([
    [2 * a, -2, 2 * b],
    [a + b / PHI + PHI, a * PHI - b - 1 / PHI, a / PHI + b * PHI - 1],
    [a + b / PHI - PHI, b - a * PHI - 1 / PHI, a / PHI + b * PHI + 1],
    [b * PHI - a / PHI + 1, a - b / PHI + PHI, a * PHI + b - 1 / PHI],
    [b * PHI - a / PHI - 1, b / PHI + PHI - a, a * PHI + b + 1 / PHI],
  ]);
}

/** The solids of regular faces of two or three kinds with four or five of them at each corner, edge 80 mm. Midradii as any table of solids gives them. */
export const MORE_AT_A_CORNER: readonly UniformSolid[] = [
  solidOf('cuboctahedron', all([[0, 1, 1]]), fold(CUBOCTA)),
  solidOf(
    'icosidodecahedron',
    even([
      [0, 0, 2 * PHI],
      [1, PHI, PHI ** 2],
    ]),
    fold(ICOSA_SIDE),
  ),
  solidOf('rhombicuboctahedron', all([[1, 1, 1 + Math.SQRT2]]), fold((3 * Math.PI) / 4, Math.acos(-Math.sqrt(6) / 3))),
  solidOf(
    'rhombicosidodecahedron',
    even([
      [1, 1, PHI ** 3],
      [PHI ** 2, PHI, 2 * PHI],
      [2 + PHI, 0, PHI ** 2],
    ]),
    fold(Math.acos(-(Math.sqrt(3) + Math.sqrt(15)) / 6), Math.acos(-Math.sqrt((5 + Math.sqrt(5)) / 10))),
  ),
  solidOf(
    'snub cube',
    [...oddly([[1, 1 / TRIBONACCI, TRIBONACCI]]), ...oddly([[-1 / TRIBONACCI, 1, TRIBONACCI]])],
    foldsByMidradius(1 / (2 * Math.sqrt(2 - TRIBONACCI)), [3, 3], [3, 4]),
  ),
  // The root of x³ + 2 x² = the square of the golden ratio stands in its midradius.
  solidOf(
    'snub dodecahedron',
    snubCorners(),
    foldsByMidradius(1 / (2 * Math.sqrt(1 - root((x) => x ** 3 + 2 * x ** 2 - PHI ** 2, 0.9))), [3, 3], [3, 5]),
  ),
];
