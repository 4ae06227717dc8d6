import { edgeLengths } from '../../src/mesh/edge-fold.ts';
import type { MeshPoint } from '../../src/mesh/lines/mesh-line.ts';
import { LINE_JOIN_MM } from '../../src/mesh/lines/net-points.ts';
import { vertexCount, type Mesh } from '../../src/mesh/mesh.ts';
import { surfaceOf } from '../../src/mesh/surface.ts';
import { topologyOf } from '../../src/mesh/topology.ts';
import type { SurfacePoint } from '../../src/model/seams.ts';
import { surfacePointOf, type FacePolygons } from '../../src/steps/seams/surface-points.ts';
import { randomPoint } from './surface-points.ts';

export interface Sculpt {
  readonly mesh: Mesh;
  readonly polygons: FacePolygons;
}

/** Makes paths for one drawing. */
type Way = (sculpt: Sculpt, rand: () => number) => readonly (readonly MeshPoint[])[];

const pick = (count: number, rand: () => number): number => Math.floor(rand() * count);
const some = ({ mesh }: Sculpt, rand: () => number): MeshPoint => randomPoint(surfaceOf(mesh), rand);
const corner = (vertex: number): MeshPoint => ({ at: 'vertex', vertex });
const onEdge = (edge: number, share: number): MeshPoint => ({ at: 'edge', edge, share });

/** Corners along edges, each a neighbour of the one before. */
function edgeWalk({ mesh }: Sculpt, rand: () => number, steps: number): number[] {
  const { edgeCount, edgeVertices } = topologyOf(mesh);
  const walk = [edgeVertices[2 * pick(edgeCount, rand)]];
  for (let i = 0; i < steps; i += 1) {
    const here = walk[walk.length - 1];
    const next: number[] = [];
    for (let e = 0; e < edgeCount; e += 1)
      for (const k of [0, 1]) if (edgeVertices[2 * e + k] === here) next.push(edgeVertices[2 * e + 1 - k]);
    walk.push(next[pick(next.length, rand)]);
  }
  return walk;
}

/** An open edge where there is one, else any. */
function rimEdge({ mesh }: Sculpt, rand: () => number): number {
  const { edgeCount, halfedgeOfEdge, twin } = topologyOf(mesh);
  const rim = [...Array(edgeCount).keys()].filter((e) => twin[halfedgeOfEdge[e]] < 0);
  return rim.length > 0 ? rim[pick(rim.length, rand)] : pick(edgeCount, rand);
}

/** A place so many mm beside another one in its own triangle. */
function beside({ mesh }: Sculpt, rand: () => number, mm: number): readonly [MeshPoint, MeshPoint] {
  const triangle = pick(mesh.triangles.length / 3, rand);
  const edge = topologyOf(mesh).edgeOfHalfedge[3 * triangle];
  const share = mm / edgeLengths(mesh)[edge];
  const at = (b: number): MeshPoint => ({ at: 'triangle', triangle, bary: [0.7 - b, 0.1 + b, 0.2] });
  return [at(0.2), at(0.2 + share)];
}

const WAYS: Readonly<Record<string, Way>> = {
  'through corners': ({ mesh }, rand) => [Array.from({ length: 4 }, () => corner(pick(vertexCount(mesh), rand)))],
  'along edges': (sculpt, rand) => [edgeWalk(sculpt, rand, 5).map(corner)],
  'out over an open edge': (sculpt, rand) => [
    [some(sculpt, rand), onEdge(rimEdge(sculpt, rand), 0.1 + 0.8 * rand()), onEdge(rimEdge(sculpt, rand), 0.5)],
  ],
  'crossing itself': (sculpt, rand) => {
    const points = Array.from({ length: 6 }, () => some(sculpt, rand));
    return [[...points, points[2], points[0]]];
  },
  'doubling back': (sculpt, rand) => {
    const [p, q, r] = [some(sculpt, rand), some(sculpt, rand), some(sculpt, rand)];
    return [[p, q, p, r, q]];
  },
  'from another path': (sculpt, rand) => {
    const [edge, p] = [pick(topologyOf(sculpt.mesh).edgeCount, rand), some(sculpt, rand)];
    return [
      [p, onEdge(edge, 0.4), some(sculpt, rand)],
      [onEdge(edge, 0.4), some(sculpt, rand)],
    ];
  },
  'touching another path in a point': (sculpt, rand) => {
    const shared = some(sculpt, rand);
    const path = (): MeshPoint[] => [some(sculpt, rand), shared, some(sculpt, rand)];
    return [path(), path()];
  },
  closed: (sculpt, rand) => {
    const points = Array.from({ length: 3 }, () => some(sculpt, rand));
    return [[...points, points[0]]];
  },
  'shorter than what is one point': (sculpt, rand) => [beside(sculpt, rand, 0.9 * LINE_JOIN_MM * rand())],
  'hardly longer than that': (sculpt, rand) => [beside(sculpt, rand, (1 + rand()) * LINE_JOIN_MM)],
  'along another path, hardly beside it': (sculpt, rand) => {
    const [p, q] = beside(sculpt, rand, 3 * LINE_JOIN_MM * rand());
    const far = some(sculpt, rand);
    return [
      [p, far],
      [q, far],
    ];
  },
  'along a path that is there': (sculpt, rand) => {
    const points = Array.from({ length: 4 }, () => some(sculpt, rand));
    return [points, points.slice(1, 3), [...points].reverse()];
  },
  'a hair off corners and edges': ({ mesh }, rand) => [
    Array.from({ length: 4 }, (): MeshPoint => {
      const hair = 10 ** -(3 + 12 * rand());
      const triangle = pick(mesh.triangles.length / 3, rand);
      const bary = rand() < 0.5 ? ([1 - 2 * hair, hair, hair] as const) : ([0.5 - hair, 0.5, hair] as const);
      return { at: 'triangle', triangle, bary };
    }),
  ],
};

/**
 * One drawing of paths as no maker should draw them: by its number on the way it is made, from chance where it goes.
 * @returns what it is, and the points of its paths in the words of the file.
 */
export function hostilePaths(
  sculpt: Sculpt,
  number: number,
  rand: () => number,
): { readonly name: string; readonly paths: readonly (readonly SurfacePoint[])[] } {
  const all = Object.entries(WAYS);
  const [name, way] = all[number % all.length];
  const paths = way(sculpt, rand).map((points) => points.map((p) => surfacePointOf(sculpt.mesh, sculpt.polygons, p)));
  return { name, paths };
}
