import { cornerShares, type CornerShare } from '../../geom/corner-cone.ts';
import { cross3, dot3, pointAt3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import { foldBetween, triangleNormal } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { prevHalfedge, topologyOf, triangleOfHalfedge } from '../../mesh/topology.ts';
import type { Patch } from '../../model/patch.ts';
import { normalAt, type PieceSurface } from './piece-surface.ts';

/**
 * A corner of a flat piece at which more than three panels meet that no single inner point suits (foam model 1). Each panel then keeps its own
 * plane: its edges run straight on to where they meet each other, and it is trimmed where another panel than its two neighbours is in the way.
 */
export interface PanelCorner {
  readonly loop: number;
  /** Place on the loop. */
  readonly at: number;
  /** Local vertex of the patch. */
  readonly vertex: number;
  /** The sculpt's corner, mm. */
  readonly place: Vec3;
  /** From there. */
  readonly share: CornerShare;
  /** Along the edge that leaves the corner on the loop, and outward of it in the panel, length 1. */
  readonly along: Vec3;
  readonly outward: Vec3;
}

/** Panels whose normals turn by less than this are one, radians. */
const ONE_PANEL_RAD = 1e-6;

/** More panels than this round one corner are a modeller's cone and no corner of panels. */
const MOST_PANELS = 16;

/** Planes that miss a common point by less than this share of the move meet in one. */
const MEETS_SHARE = 1e-9;

/** The corners of a patch that are shared out between panels: none unless the whole patch is one plane. */
export function panelCorners(mesh: Mesh, surface: PieceSurface): readonly PanelCorner[] {
  if (surface.areas.length === 0 || !isOnePlane(surface)) return [];
  const { patch } = surface;
  const own = normalAt(surface, 0);
  return patch.loops.flatMap((loop, l) =>
    [...loop].flatMap((vertex, at) => {
      const share = shareAt(mesh, surface, vertex);
      if (share === null) return [];
      const [place, next] = [vertex, loop[(at + 1) % loop.length]].map((v) =>
        pointAt3(mesh.positions, patch.meshVertices[v]),
      );
      const along = unit3(sub3(next, place));
      return [{ loop: l, at, vertex, place, share, along, outward: cross3(along, own) }];
    }),
  );
}

/** Whether all of a patch lies in one plane. */
export function isOnePlane(surface: PieceSurface): boolean {
  const own = normalAt(surface, 0);
  for (let t = 1; t < surface.areas.length; t += 1) if (isTurned(own, normalAt(surface, t))) return false;
  return true;
}

const isTurned = (a: Vec3, b: Vec3): boolean => {
  const across = cross3(a, b);
  return !(dot3(a, b) > 0 && Math.hypot(across.x, across.y, across.z) < ONE_PANEL_RAD);
};

/** Tells of a vertex of the mesh whether it is such a corner of every patch that touches it. */
export function trimmedCorners(
  patches: readonly Patch[],
  bends: readonly { readonly corners: readonly PanelCorner[] }[],
): (vertex: number) => boolean {
  const shared = bends.map(({ corners }) => new Set(corners.map(({ vertex }) => vertex)));
  return (vertex) => {
    const touching = patches.flatMap(({ meshVertices }, i) => {
      const local = meshVertices.indexOf(vertex);
      return local < 0 ? [] : [shared[i].has(local)];
    });
    return touching.length > 0 && touching.every((isShared) => isShared);
  };
}

/** What the patch's panel has of a corner; null where there is nothing to share out. */
function shareAt(mesh: Mesh, { patch, starts, trianglesAt }: PieceSurface, v: number): CornerShare | null {
  const fan = trianglesAt.subarray(starts[v], starts[v + 1]);
  const ring = panelsRound(mesh, patch, fan[0], patch.meshVertices[v]);
  if (ring === null || ring.normals.length <= 3 || ring.normals.length > MOST_PANELS) return null;
  // The panel of the sculpt may go on in another patch, parted from this one in its plane.
  if (ring.ownTriangles !== fan.length) return null;
  const [first] = ring.folds;
  if (ring.folds.some((fold) => fold > 0 !== first > 0)) return null;
  const shares = cornerShares(ring.normals, first > 0);
  if (shares === null) return null;
  const [own] = shares;
  const isCommon = ring.normals.every((normal) => Math.abs(dot3(normal, own.mitre) - 1) < MEETS_SHARE);
  return isCommon ? null : own;
}

interface PanelRing {
  /** Of the panels in order, counter-clockwise from outside, that of the patch first. */
  readonly normals: readonly Vec3[];
  /** Turn from each panel to the next, radians, convex > 0. */
  readonly folds: readonly number[];
  /** Triangles of the first panel at the corner. */
  readonly ownTriangles: number;
}

/** The panels round a vertex of the sculpt; null at an open edge, and where a triangle is empty. */
function panelsRound(mesh: Mesh, patch: Patch, localTriangle: number, vertex: number): PanelRing | null {
  const { twin } = topologyOf(mesh);
  const triangle = patch.meshTriangles[localTriangle];
  const start = [0, 1, 2].map((k) => 3 * triangle + k).find((h) => mesh.triangles[h] === vertex);
  if (start === undefined) throw new Error(`panelsRound: triangle ${triangle} does not touch vertex ${vertex}`);
  const spokes: { readonly normal: Vec3; readonly along: Vec3 }[] = [];
  for (let h = start; ;) {
    const normal = triangleNormal(mesh.positions, mesh.triangles, triangleOfHalfedge(h));
    if (dot3(normal, normal) === 0) return null;
    // The edge between this triangle and the next one round arrives at the corner.
    const edge = prevHalfedge(h);
    const from = pointAt3(mesh.positions, mesh.triangles[edge]);
    spokes.push({ normal, along: sub3(pointAt3(mesh.positions, vertex), from) });
    h = twin[edge];
    if (h < 0) return null;
    if (h === start) break;
    if (spokes.length > mesh.triangles.length) throw new Error(`panelsRound: vertex ${vertex} has no end`);
  }
  return parted(spokes);
}

/** Triangles of one plane that lie side by side are one panel. */
function parted(spokes: readonly { readonly normal: Vec3; readonly along: Vec3 }[]): PanelRing | null {
  const count = spokes.length;
  const isEnd = spokes.map(({ normal }, i) => isTurned(normal, spokes[(i + 1) % count].normal));
  const ends = [...spokes.keys()].filter((i) => isEnd[i]);
  if (ends.length === 0) return null;
  const folds = ends.map((i) => foldBetween(spokes[i].normal, spokes[(i + 1) % count].normal, spokes[i].along));
  const last = ends[ends.length - 1];
  return {
    normals: ends.map((i) => spokes[i].normal),
    folds,
    // From behind the last end through the first triangle to the first end.
    ownTriangles: ends[0] + count - last,
  };
}
