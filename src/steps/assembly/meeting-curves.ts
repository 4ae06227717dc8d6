import { add3, pointAt3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { SurfaceTree } from '../../geom/bvh.ts';
import { pointInTriangle, pointOnHalfedge, type Weights } from '../../mesh/lines/mesh-point.ts';
import type { MeshPoint } from '../../mesh/lines/mesh-line.ts';
import type { Surface } from '../../mesh/surface.ts';
import { nextHalfedge } from '../../mesh/topology.ts';
import type { SurfaceTrace } from '../../model/trace.ts';
import { TriangleMeeting, type Piercing } from './triangle-meeting.ts';

/** A surface where it stands, with the tree over its triangles. */
export interface StandingSurface {
  readonly surface: Surface;
  readonly tree: SurfaceTree;
}

/** One line in which two surfaces meet, as it lies on each: point i of one is point i of the other. */
export interface MeetingCurve {
  readonly onFirst: SurfaceTrace;
  readonly onSecond: SurfaceTrace;
}

export interface MeetingCurves {
  readonly curves: readonly MeetingCurve[];
  /** Pairs of triangles, of the first surface and of the second, that lie on each other in one plane. */
  readonly flatPairs: readonly (readonly [number, number])[];
  /** False where so many triangles lie in one place that not all were held against each other. */
  readonly isWhole: boolean;
}

/** Pairs of boxes compared at most: some ten seconds. Two sculpts of 100,000 triangles that run through each other have about a million. */
const MOST_PAIRS = 2e8;

/** A stretch with the numbers of its ends. */
interface Link {
  readonly from: number;
  readonly to: number;
  readonly t: number;
  readonly u: number;
  /** Weights of both ends on the corners of `t` and of `u`. */
  readonly ends: readonly [readonly [Weights, Weights], readonly [Weights, Weights]];
}

/**
 * All lines in which two surfaces run through each other: closed, or from open edge to open edge. Lines run in the direction normal of the first x
 * normal of the second. Surfaces that only touch count as if the second stood an endlessly small way further along x, y and z (see
 * {@link TriangleMeeting}): lines are whole then too, and faces that lie on each other are told in `flatPairs`.
 */
export function meetingCurves(first: StandingSurface, second: StandingSurface): MeetingCurves {
  const surfaces = [first.surface, second.surface] as const;
  const meeting = new TriangleMeeting(first.surface, second.surface);
  const nodes = new Map<number, number>();
  const places: Vec3[] = [];
  const named: (readonly [MeshPoint, MeshPoint])[] = [];
  const links: Link[] = [];
  const flatPairs: [number, number][] = [];
  const counts = [first.surface.triangles.length / 3, second.surface.triangles.length / 3];

  const nodeOf = ({ of, halfedge, share, weights }: Piercing, other: number): number => {
    const { positions, triangles, topology } = surfaces[of];
    const edge = topology.edgeOfHalfedge[halfedge];
    // Ends on edges of the first surface have even numbers, those on edges of the second odd ones.
    const key = 2 * (edge * counts[1 - of] + other) + of;
    let node = nodes.get(key);
    if (node === undefined) {
      node = places.length;
      nodes.set(key, node);
      const p = pointAt3(positions, triangles[halfedge]);
      const q = pointAt3(positions, triangles[nextHalfedge(halfedge)]);
      places.push(add3(p, scale3(sub3(q, p), share)));
      const onEdge = pointOnHalfedge(surfaces[of], halfedge, share);
      const inside = pointInTriangle(surfaces[1 - of], other, weights);
      named.push(of === 0 ? [onEdge, inside] : [inside, onEdge]);
    }
    return node;
  };
  const weightsOn = (surface: 0 | 1, { of, halfedge, share, weights }: Piercing): Weights => {
    if (of !== surface) return weights;
    const own: [number, number, number] = [0, 0, 0];
    own[halfedge % 3] = 1 - share;
    own[(halfedge + 1) % 3] = share;
    return own;
  };

  const isWhole = first.tree.pairsWith(
    second.tree,
    (t, u) => {
      const stretch = meeting.stretchOf(t, u);
      if (stretch !== null) {
        const { from, to } = stretch;
        links.push({
          from: nodeOf(from, from.of === 0 ? u : t),
          to: nodeOf(to, to.of === 0 ? u : t),
          t,
          u,
          ends: [
            [weightsOn(0, from), weightsOn(0, to)],
            [weightsOn(1, from), weightsOn(1, to)],
          ],
        });
      }
      if (meeting.isFlatOn(t, u)) flatPairs.push([t, u]);
    },
    MOST_PAIRS,
  );
  links.sort((a, b) => a.t - b.t || a.u - b.u);
  flatPairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const curves = chainsOf(links, places.length).map(({ chain, closed }): MeetingCurve => {
    const on = (surface: 0 | 1): SurfaceTrace => {
      const ids = closed ? chain.map(({ from }) => from) : [chain[0].from, ...chain.map(({ to }) => to)];
      return {
        closed,
        places: Float64Array.from(ids.flatMap((id) => [places[id].x, places[id].y, places[id].z])),
        triangles: Uint32Array.from(chain, (link) => (surface === 0 ? link.t : link.u)),
        ends: chain.map(({ ends }) => ends[surface]),
        points: ids.map((id) => named[id][surface]),
      };
    };
    return { onFirst: on(0), onSecond: on(1) };
  });
  return { curves, flatPairs, isWhole };
}

/** Joins stretches end to end, each once; where not just one ends and one begins, as at an edge of three triangles, lines end. */
function chainsOf(links: readonly Link[], nodeCount: number): { chain: Link[]; closed: boolean }[] {
  const next = new Int32Array(nodeCount).fill(-1);
  const leaving = new Uint32Array(nodeCount);
  const arriving = new Uint32Array(nodeCount);
  links.forEach(({ from, to }, i) => {
    next[from] = i;
    leaving[from] += 1;
    arriving[to] += 1;
  });
  const goesOn = (node: number): boolean => leaving[node] === 1 && arriving[node] === 1;
  const isUsed = new Uint8Array(links.length);
  const chains: { chain: Link[]; closed: boolean }[] = [];
  const follow = (start: number): void => {
    const chain: Link[] = [];
    let i = start;
    while (isUsed[i] === 0) {
      isUsed[i] = 1;
      chain.push(links[i]);
      if (!goesOn(links[i].to)) break;
      i = next[links[i].to];
    }
    chains.push({ chain, closed: chain[chain.length - 1].to === chain[0].from && goesOn(chain[0].from) });
  };
  links.forEach(({ from }, i) => {
    if (!goesOn(from)) follow(i);
  });
  links.forEach((_, i) => {
    if (isUsed[i] === 0) follow(i);
  });
  return chains;
}
