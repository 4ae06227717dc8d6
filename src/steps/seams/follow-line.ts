import { edgeFolds, diagonalEdges } from '../../mesh/edge-fold.ts';
import { sub3, pointAt3, dot3, length3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { originOf, prevHalfedge, targetOf, topologyOf, type Topology } from '../../mesh/topology.ts';

/**
 * How unevenly an edge may split the surface round a corner and still go straight on there, as a share of the whole turn: 54 degrees of a flat
 * corner. At the corner of a box the two other edges split it 1 to 2, which is no going on.
 */
const UNEVEN_SHARE = 0.15;

/** An edge that leaves a corner, and how it splits what lies round the corner. */
interface WayOn {
  readonly edge: number;
  readonly to: number;
  /** Angle of the surface from the edge one comes along, as a share of all of it, 0 to 1; straight on is a half. */
  readonly share: number;
}

/** Walks on from one corner: which edge to take, or null to stop. */
type Choose = (ways: readonly WayOn[]) => WayOn | null;

/**
 * The line of edges that runs through an edge all the way round: at each corner straight on, by the angle of the surface on both sides
 * (Polthier and Schmies 1998); where four edges meet, the one opposite. It ends at an open edge, where nothing goes straight on, and where it
 * comes back to itself.
 * @returns edges of the topology from one end to the other; a closed line begins with `edge`.
 */
export function followRound(mesh: Mesh, edge: number): readonly number[] {
  const straightOn: Choose = (ways) => {
    if (ways.length === 3) return ways[1];
    return ways.reduce<WayOn | null>((best, way) => (unevenness(way) < unevennessOf(best) ? way : best), null);
  };
  return followBothWays(mesh, edge, straightOn);
}

/**
 * The ridge (or valley) that an edge is part of, as far as it goes on and stays sharper than an angle: at each corner along the sharpest edge
 * that turns the same way and goes on nearly straight.
 * @param leastRad turn between the outward normals, radians, > 0.
 * @returns edges of the topology from one end to the other; none where the edge itself is no sharper.
 */
export function followRidge(mesh: Mesh, edge: number, leastRad: number): readonly number[] {
  const folds = edgeFolds(mesh);
  const sign = Math.sign(folds[edge]);
  const sharpness = (e: number): number => sign * folds[e];
  if (!(sharpness(edge) > leastRad)) return [];
  const sharpest: Choose = (ways) =>
    ways
      .filter((way) => sharpness(way.edge) > leastRad && unevenness(way) < UNEVEN_SHARE)
      .reduce<WayOn | null>(
        (best, way) => (best === null || sharpness(way.edge) > sharpness(best.edge) ? way : best),
        null,
      );
  return followBothWays(mesh, edge, sharpest);
}

const unevenness = ({ share }: WayOn): number => Math.abs(share - 0.5);
const unevennessOf = (way: WayOn | null): number => (way === null ? UNEVEN_SHARE : unevenness(way));

function followBothWays(mesh: Mesh, edge: number, choose: Choose): readonly number[] {
  const { edgeVertices } = topologyOf(mesh);
  const [first, last] = [edgeVertices[2 * edge], edgeVertices[2 * edge + 1]];
  const seen = new Set([first, last]);
  const isDiagonal = diagonalEdges(mesh);
  const on = follow(mesh, isDiagonal, edge, last, first, seen, choose);
  if (on.isClosed) return [edge, ...on.edges];
  const back = follow(mesh, isDiagonal, edge, first, last, seen, choose);
  return [...back.edges.toReversed(), edge, ...on.edges];
}

/** @param start  the corner at which a closed line ends. */
function follow(
  mesh: Mesh,
  isDiagonal: Uint8Array,
  edge: number,
  from: number,
  start: number,
  seen: Set<number>,
  choose: Choose,
): { edges: number[]; isClosed: boolean } {
  const edges: number[] = [];
  for (let [at, via] = [from, edge]; ;) {
    const way = choose(waysOn(mesh, isDiagonal, at, via));
    if (way === null) return { edges, isClosed: false };
    if (seen.has(way.to)) {
      if (way.to !== start) return { edges, isClosed: false };
      return { edges: [...edges, way.edge], isClosed: true };
    }
    seen.add(way.to);
    edges.push(way.edge);
    [at, via] = [way.to, way.edge];
  }
}

/** Edges at an inner corner other than the one come along, in their order round it; none at a corner of an open edge. */
function waysOn(mesh: Mesh, isDiagonal: Uint8Array, at: number, via: number): readonly WayOn[] {
  const topology = topologyOf(mesh);
  const first = leavingAlong(mesh, topology, at, via);
  const ways: { edge: number; to: number; angle: number }[] = [];
  let angle = 0;
  let h = first;
  do {
    if (h < 0) return [];
    angle += angleAt(mesh, h);
    h = topology.twin[prevHalfedge(h)];
    if (h >= 0 && h !== first) {
      const edge = topology.edgeOfHalfedge[h];
      if (isDiagonal[edge] === 0) ways.push({ edge, to: targetOf(mesh.triangles, h), angle });
    }
  } while (h !== first);
  return ways.map((way) => ({ edge: way.edge, to: way.to, share: way.angle / angle }));
}

/** The half-edge that leaves a corner along an edge, or -1. */
function leavingAlong({ triangles }: Mesh, { halfedgeOfEdge, twin }: Topology, at: number, edge: number): number {
  const h = halfedgeOfEdge[edge];
  return originOf(triangles, h) === at ? h : twin[h];
}

/** Angle of a half-edge's triangle at the corner it leaves, radians. */
function angleAt({ positions, triangles }: Mesh, h: number): number {
  const p = pointAt3(positions, originOf(triangles, h));
  const u = sub3(pointAt3(positions, targetOf(triangles, h)), p);
  const v = sub3(pointAt3(positions, originOf(triangles, prevHalfedge(h))), p);
  const lengths = length3(u) * length3(v);
  return lengths === 0 ? 0 : Math.acos(Math.max(-1, Math.min(1, dot3(u, v) / lengths)));
}
