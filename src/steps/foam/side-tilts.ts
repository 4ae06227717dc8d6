import { dot3, length3, pointAt3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { SeamSide } from '../../model/seams.ts';
import type { Panels } from './panels.ts';
import { triangleBeside, type PieceSurface } from './piece-surface.ts';

/** Facets are followed over this many edges from the one beside the seam: two rows of quads, or two rings of triangles. */
const MOST_STEPS = 4;

/** Facets that turn less than this against each other are one plane, radians (6e-8 degrees): what is left of rounding. */
const ONE_PLANE_RAD = 1e-9;

/** Unknowns of the fit: two of the tilt at the seam, three of the bend. */
const UNKNOWNS = 5;

/** A border that turns by more than this goes round a corner: cosine of 45 degrees. */
const CORNER_COSINE = Math.SQRT1_2;

/** A facet this many sides of the one beside the seam (its longest counts) off along the seam weighs half as much as one straight across. */
const HALF_WEIGHT_ASIDE = 0.5;

/** No facet counts more than this many times the one beside the seam, so that a large far one does not outweigh the near ones. */
const LARGEST_WEIGHT = 2;

/**
 * How much a bend is doubted, against what the facets tell of it: keeps the fit solvable where they tell nothing of a bend in some direction,
 * and takes none there. A cone of 96 sides closes to 7e-8 mm with it, and to 7e-5 with a thousand
 * times as much.
 */
const BEND_DOUBT = 1e-11;

/** Bevels, room at corners and the dry fit ask for the same sides, in every thickness. */
const known = new WeakMap<PieceSurface, SideTilts>();

type SideTilts = Map<SeamSide, KnownTilts>;

interface KnownTilts {
  readonly mesh: Mesh;
  readonly panels: Panels;
  readonly which: 0 | 1;
  readonly tiltRad: Float64Array;
}

/**
 * How far the smooth surface behind the facets leans at a seam, against the facet beside it: for each mesh edge of the chain the turn about
 * the seam, radians, positive when the normal at the seam leans into the piece. On a convex smooth surface it is negative: half a facet's
 * turn. The fold of the surfaces is the fold of the facets plus the tilts of both sides (foam model 4).
 *
 * The facets round the one beside the seam edge are rolled out into its plane, edge by edge, and the turn at each edge is added up on the
 * way; so every facet has a place and a tilt `w` (the turn of its normal as a vector along the way it leans). On a surface that bends evenly
 * `w(m) = w0 + B m` with a symmetric `B`, and the chord over a facet's side `e` with middle `m` has just the slope of the surface at `m`:
 *
 *       y |      /facet\        w . e = w0 . e + m . B e      for every side of every facet
 *         |  ___/_______\__
 *         | F   beside      \   w0, B by least squares, weighted by area and nearness to the line straight across;
 *         +----seam edge---- x  w0 across the seam is the tilt sought: at the middle of the seam edge.
 *
 * Exact for flat panels and tubes however coarse and however triangulated. Elsewhere the error falls as the facets get smaller: of seams that
 * should be smooth, the fold left was at most 0.03 degrees on a sphere of 24 sides, and at the rim of a cone from R 80 to R 30 in 60 mm, three
 * rows high, 2.4 degrees at 24 sides and 0.9 at 48. Facets beyond a crease do not count: only those of the panel that touches the seam do.
 * A piece one row of facets wide tells nothing of a bend across it: there the facet is taken at its word and the tilt is 0.
 * @returns remembered, not to be written to.
 */
export function smoothTilts(
  mesh: Mesh,
  surface: PieceSurface,
  panels: Panels,
  side: SeamSide,
  which: 0 | 1,
): Float64Array {
  const ofSurface: SideTilts = known.get(surface) ?? new Map<SeamSide, KnownTilts>();
  known.set(surface, ofSurface);
  const before = ofSurface.get(side);
  if (before?.panels === panels && before.mesh === mesh && before.which === which) return before.tiltRad;
  const tiltRad = freshTilts(mesh, surface, panels, side, which);
  ofSurface.set(side, { mesh, panels, which, tiltRad });
  return tiltRad;
}

function freshTilts(mesh: Mesh, surface: PieceSurface, panels: Panels, side: SeamSide, which: 0 | 1): Float64Array {
  return Float64Array.from({ length: side.localVertices.length - 1 }, (_, i) => {
    const beside = triangleBeside(surface, side, which, i);
    if (beside < 0) return 0;
    const [v, w] = [side.localVertices[i], side.localVertices[i + 1]];
    return which === 0 ? tiltAt(mesh, surface, panels, beside, v, w) : tiltAt(mesh, surface, panels, beside, w, v);
  });
}

/** A triangle rolled into the plane: corners in the order of the patch, and the tilt of its normal. */
interface RolledFacet {
  readonly t: number;
  readonly corners: readonly (readonly [number, number])[];
  readonly tilt: readonly [number, number];
}

function tiltAt(mesh: Mesh, surface: PieceSurface, panels: Panels, beside: number, from: number, to: number): number {
  const facets = rollOut(mesh, surface, panels, beside, from, to);
  if (facets.every(({ tilt }) => tilt[0] === 0 && tilt[1] === 0)) return 0;
  if (!hasSecondRow(mesh, surface, facets, from, to)) return 0;
  const seamLength = length3(sub3(pointOf(mesh, surface, to), pointOf(mesh, surface, from)));
  const reach = facets.reduce((most, { corners }) => Math.max(most, ...corners.map(([x, y]) => Math.hypot(x, y))), 0);
  const m = new Float64Array(UNKNOWNS * UNKNOWNS);
  const rhs = new Float64Array(UNKNOWNS);
  const longest = sidesOf(facets[0].corners).reduce((a, b) => Math.max(a, b));
  for (const { t, corners, tilt } of facets) {
    const aside = (corners[0][0] + corners[1][0] + corners[2][0]) / 3 / (HALF_WEIGHT_ASIDE * longest);
    const weight = Math.min(surface.areas[t], LARGEST_WEIGHT * surface.areas[beside]) / (1 + aside ** 6);
    for (let k = 0; k < 3; k += 1) {
      const [ax, ay] = corners[k];
      const [bx, by] = corners[(k + 1) % 3];
      const length = Math.hypot(bx - ax, by - ay);
      if (length === 0) continue;
      const [ex, ey] = [(bx - ax) / length, (by - ay) / length];
      const [mx, my] = [(ax + bx) / (2 * reach), (ay + by) / (2 * reach)];
      const row = [ex, ey, mx * ex, mx * ey + my * ex, my * ey];
      const value = tilt[0] * ex + tilt[1] * ey;
      for (let i = 0; i < UNKNOWNS; i += 1) {
        rhs[i] += weight * row[i] * value;
        for (let j = 0; j < UNKNOWNS; j += 1) m[UNKNOWNS * i + j] += weight * row[i] * row[j];
      }
    }
  }
  const [across, along] = [(2 * surface.areas[beside]) / (seamLength * reach), seamLength / reach];
  const scales = [along * along, along * across, across * across];
  scales.forEach((scale, i) => (m[(UNKNOWNS + 1) * (i + 2)] += BEND_DOUBT * (m[0] + m[UNKNOWNS + 1]) * scale));
  // A smooth surface turns at its edge by less than from one facet to the next.
  const most = turnBeside(surface, panels, beside);
  return Math.max(-most, Math.min(most, solveCholesky(m, rhs)[1]));
}

/**
 * True when a facet lies behind the row along the seam: without one, as on a strip one facet wide, nothing tells how the surface bends
 * towards the seam, and the facet is taken at its word.
 */
function hasSecondRow(
  mesh: Mesh,
  surface: PieceSurface,
  facets: readonly RolledFacet[],
  from: number,
  to: number,
): boolean {
  const row = new Set([from, to]);
  followBorder(mesh, surface, to, from, surface.beforeOnBorder, row);
  followBorder(mesh, surface, from, to, surface.afterOnBorder, row);
  const { triangles } = surface.patch;
  return facets.some(
    ({ t }) => !row.has(triangles[3 * t]) && !row.has(triangles[3 * t + 1]) && !row.has(triangles[3 * t + 2]),
  );
}

/** Adds the vertices of the border that go on from an edge, as far as facets are followed and the border turns no corner. */
function followBorder(
  mesh: Mesh,
  surface: PieceSurface,
  start: number,
  end: number,
  next: Int32Array,
  row: Set<number>,
): void {
  let [last, at] = [start, end];
  for (let step = 0; step <= MOST_STEPS; step += 1) {
    const beyond = next[at];
    const way = sub3(pointOf(mesh, surface, at), pointOf(mesh, surface, last));
    const on = sub3(pointOf(mesh, surface, beyond), pointOf(mesh, surface, at));
    if (dot3(way, on) < CORNER_COSINE * length3(way) * length3(on)) return;
    row.add(beyond);
    [last, at] = [at, beyond];
  }
}

const sidesOf = (corners: readonly (readonly [number, number])[]): number[] =>
  corners.map(([x, y], k) => Math.hypot(corners[(k + 1) % 3][0] - x, corners[(k + 1) % 3][1] - y));

/** The sharpest turn inside the panel at a facet or at one that touches it, radians, >= 0. */
export function turnBeside(surface: PieceSurface, panels: Panels, t: number): number {
  if (t < 0) return 0;
  let turn = 0;
  for (const facet of [t, surface.across[3 * t], surface.across[3 * t + 1], surface.across[3 * t + 2]]) {
    for (let h = 3 * facet; facet >= 0 && h < 3 * facet + 3; h += 1) {
      const other = surface.across[h];
      if (other >= 0 && panels.panelOf[other] === panels.panelOf[t] && panels.panelOf[facet] === panels.panelOf[t]) {
        turn = Math.max(turn, Math.abs(surface.foldRad[h]));
      }
    }
  }
  return turn;
}

const pointOf = (mesh: Mesh, surface: PieceSurface, v: number): Vec3 =>
  pointAt3(mesh.positions, surface.patch.meshVertices[v]);

/** Rolls the panel out round a facet, nearest first, each facet hinged on the one it was reached from. */
function rollOut(
  mesh: Mesh,
  surface: PieceSurface,
  panels: Panels,
  beside: number,
  from: number,
  to: number,
): RolledFacet[] {
  const half = length3(sub3(pointOf(mesh, surface, to), pointOf(mesh, surface, from))) / 2;
  const first = hinged(mesh, surface, beside, from, to, [-half, 0], [half, 0], [0, 0]);
  if (first === null) return [];
  const facets = [first];
  const seen = new Set([beside]);
  for (let done = 0, step = 0; step < MOST_STEPS; step += 1) {
    for (const end = facets.length; done < end; done += 1) {
      const facet = facets[done];
      for (let k = 0; k < 3; k += 1) {
        const other = surface.across[3 * facet.t + k];
        if (other < 0 || seen.has(other) || panels.panelOf[other] !== panels.panelOf[beside]) continue;
        const next = hingedAcross(mesh, surface, facet, k, other);
        if (next === null) continue;
        seen.add(other);
        facets.push(next);
      }
    }
  }
  return facets;
}

function hingedAcross(
  mesh: Mesh,
  surface: PieceSurface,
  facet: RolledFacet,
  k: number,
  other: number,
): RolledFacet | null {
  const { triangles } = surface.patch;
  const [v, w] = [triangles[3 * facet.t + k], triangles[3 * facet.t + ((k + 1) % 3)]];
  const [p, q] = [facet.corners[k], facet.corners[(k + 1) % 3]];
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const fold = surface.foldRad[3 * facet.t + k];
  if (length === 0 || Math.abs(fold) > Math.PI / 2) return null;
  // A convex fold leans the next normal away from this facet, to the right of the edge as it runs round it.
  const turn = Math.abs(fold) < ONE_PLANE_RAD ? 0 : fold / length;
  const tilt = [facet.tilt[0] + turn * (q[1] - p[1]), facet.tilt[1] - turn * (q[0] - p[0])] as const;
  return hinged(mesh, surface, other, w, v, q, p, tilt);
}

/** Lays triangle `t` with its side from `v` to `w` at `p`, `q`; null for an empty one. */
function hinged(
  mesh: Mesh,
  surface: PieceSurface,
  t: number,
  v: number,
  w: number,
  p: readonly [number, number],
  q: readonly [number, number],
  tilt: readonly [number, number],
): RolledFacet | null {
  if (!(surface.areas[t] > 0)) return null;
  const corners = surface.patch.triangles.subarray(3 * t, 3 * t + 3);
  const k = [0, 1, 2].find((i) => corners[i] === v && corners[(i + 1) % 3] === w);
  if (k === undefined) return null;
  const [from, to, tip] = [v, w, corners[(k + 2) % 3]].map((i) => pointOf(mesh, surface, i));
  const side = sub3(to, from);
  const length = length3(side);
  const along = dot3(sub3(tip, from), side) / length;
  const height = (2 * surface.areas[t]) / length;
  const [dx, dy] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  const placed: [number, number][] = [];
  placed[k] = [p[0], p[1]];
  placed[(k + 1) % 3] = [q[0], q[1]];
  placed[(k + 2) % 3] = [p[0] + along * dx - height * dy, p[1] + along * dy + height * dx];
  return { t, corners: placed, tilt };
}

/** Solves the 5 x 5 system by Cholesky's factors. One facet alone has sides in more than one direction, so it is definite. */
function solveCholesky(m: Float64Array, rhs: Float64Array): Float64Array {
  const n = rhs.length;
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = m[n * i + j];
      for (let k = 0; k < j; k += 1) sum -= l[n * i + k] * l[n * j + k];
      l[n * i + j] = i === j ? Math.sqrt(Math.max(sum, Number.MIN_VALUE)) : sum / l[n * j + j];
    }
  }
  const x = rhs.slice();
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) x[i] -= l[n * i + k] * x[k];
    x[i] /= l[n * i + i];
  }
  for (let i = n - 1; i >= 0; i -= 1) {
    for (let k = i + 1; k < n; k += 1) x[i] -= l[n * k + i] * x[k];
    x[i] /= l[n * i + i];
  }
  return x;
}
