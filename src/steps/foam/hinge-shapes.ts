import type { Stepwise } from '../../base/stepwise.ts';
import { add3, cross3, dot3, length3, pointAt3, scale3, sub3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { nextHalfedge } from '../../mesh/topology.ts';
import type { SeamSide } from '../../model/seams.ts';
import type { ShellLayer } from '../../model/shell-layer.ts';
import { hingeDepth, isGrooved, panelFolds } from './hinge-surface.ts';
import type { PatchBend } from './part-bends.ts';
import { normalAt } from './piece-surface.ts';

/**
 * Where the corners of a piece's triangles stand that are not where the surface has them: in a grooved piece, whose panels are laid out flat on
 * their hinges, and in a flat one with corners that more panels share than meet in one point.
 */
export interface HingeShapes {
  /** x y z of the three corners of each triangle of the patch, mm: two panels that meet at a fold have its ends at places of their own. */
  readonly corners: Float64Array;
}

/** A corner of a panel goes no farther than this many times the farthest its lines go: sharp corners run out far. */
const LONGEST_MOVE = 8;

/** Lines of a panel that turn less than this at a corner are one line there, sine of about 0.6 degrees. */
const ONE_LINE_SINE = 0.01;

/** A surface this near a hinge lies on it, mm: what rounding leaves. */
const ON_HINGE_MM = 1e-9;

/** Triangles done in one stretch: a few milliseconds. */
const STRETCH = 4000;

/**
 * Panels of a grooved piece whose folds do not all go the same way (foam model 2). It is laid flat from the surface most of its hinges lie on
 * (`hingeSurface`), at depth `(1 - k) t` under the face; hinges of the other folds lie at another depth `d`. Every panel stays a plane, and its
 * border on such a fold stands beside the fold line of the surface, outward in either panel, by
 *
 *       ((1 - k) t - d) tan(fold / 2)                 never inward: the surface lies on the inside of the bend's hinge
 *
 * Edges of the piece stay on the surface, from which bevels are counted. The corner of a panel is where its lines meet.
 * @param shell    with its neutral surface where most hinges of the piece are.
 * @param hingeMm  what a groove leaves of the foam, > 0; foam no thicker than that is folded on its neutral surface.
 * @returns null where no corner moves: in a rolled piece, one whose folds all go the same way, and foam that thin.
 */
export function* hingeShapeSteps(bend: PatchBend, shell: ShellLayer, hingeMm: number): Stepwise<HingeShapes | null> {
  const { surface, panels } = bend;
  const { patch, across, foldRad } = surface;
  const { thicknessMm: t, neutralFraction: k, neutralPositions } = shell;
  if (bend.corners.length > 0) return flatShape(bend, shell);
  if (!isGrooved(bend, shell, hingeMm)) return null;
  const at = (v: number): Vec3 => pointAt3(neutralPositions, patch.meshVertices[v]);
  const { panelOf } = panels;
  const isFold = panelFolds(bend);
  const moves = new PanelMoves(patch.meshVertices.length);
  for (let h = 0; h < across.length; h += 1) {
    if (h % (3 * STRETCH) === 0) yield;
    const isBorder = across[h] < 0;
    if (!isBorder && !isFold(h)) continue;
    const tri = Math.floor(h / 3);
    const [v, w] = [patch.triangles[h], patch.triangles[nextHalfedge(h)]];
    const along = unit3(sub3(at(w), at(v)));
    const outward = unit3(cross3(along, normalAt(surface, tri)));
    const fold = isBorder ? 0 : foldRad[h];
    const depthMm = (1 - k) * t - hingeDepth(fold, t, hingeMm);
    const shift = Math.abs(depthMm) < ON_HINGE_MM ? 0 : depthMm * Math.tan(fold / 2);
    moves.add(panelOf[tri], v, outward, shift, length3(sub3(at(w), at(v))));
    moves.add(panelOf[tri], w, outward, shift, length3(sub3(at(w), at(v))));
  }
  if (!moves.isAny) return null;
  const corners = new Float64Array(3 * patch.triangles.length);
  for (let h = 0; h < patch.triangles.length; h += 1) {
    if (h % (3 * STRETCH) === 0) yield;
    const v = patch.triangles[h];
    const { x, y, z } = add3(at(v), moves.of(panelOf[Math.floor(h / 3)], v));
    corners.set([x, y, z], 3 * h);
  }
  return { corners };
}

/** A flat piece has its corners in its own plane, where its edges meet, also where the corner of the surface suits other panels as well. */
function flatShape(
  { surface, corners }: PatchBend,
  { neutralPositions, neutralFraction, ...shell }: ShellLayer,
): HingeShapes {
  const { triangles, meshVertices } = surface.patch;
  const neutralMm = shell.backMm + neutralFraction * shell.thicknessMm;
  const own = new Map(corners.map(({ vertex, place, share }) => [vertex, add3(place, scale3(share.mitre, neutralMm))]));
  const places = new Float64Array(3 * triangles.length);
  triangles.forEach((v, h) => {
    const { x, y, z } = own.get(v) ?? pointAt3(neutralPositions, meshVertices[v]);
    places.set([x, y, z], 3 * h);
  });
  return { corners: places };
}

/** A line of a panel's border at one of its corners: outward in the panel, how far it moves, and how long it is. */
interface Line {
  readonly outward: Vec3;
  readonly shift: number;
  readonly weight: number;
}

/** How the corners of panels move, by panel and vertex. */
class PanelMoves {
  readonly #lines = new Map<number, Line[]>();
  readonly #known = new Map<number, Vec3>();
  readonly #vertexCount: number;
  /** Whether any line moves at all. */
  isAny = false;

  constructor(vertexCount: number) {
    this.#vertexCount = vertexCount;
  }

  add(panel: number, v: number, outward: Vec3, shift: number, weight: number): void {
    const key = panel * this.#vertexCount + v;
    const lines = this.#lines.get(key);
    if (lines === undefined) this.#lines.set(key, [{ outward, shift, weight }]);
    else lines.push({ outward, shift, weight });
    this.isAny ||= shift !== 0;
  }

  of(panel: number, v: number): Vec3 {
    const key = panel * this.#vertexCount + v;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const move = cornerMove(this.#lines.get(key) ?? []);
    this.#known.set(key, move);
    return move;
  }
}

/**
 * The least move that brings a corner onto all its lines: where two meet, their crossing; along one, square to it. More than two, as where a
 * panel touches itself, are met by least squares.
 */
function cornerMove(lines: readonly Line[]): Vec3 {
  const still = vec3(0, 0, 0);
  const farthest = lines.reduce((most, { shift }) => Math.max(most, Math.abs(shift)), 0);
  if (farthest === 0) return still;
  // In the plane of the first line's outward arrow and what of the others stands square to it.
  const x = lines[0].outward;
  const across = lines.map(({ outward }) => sub3(outward, scale3(x, dot3(outward, x))));
  const widest = across.reduce((best, one) => (length3(one) > length3(best) ? one : best), still);
  const isOneLine = length3(widest) < ONE_LINE_SINE;
  const y = isOneLine ? still : unit3(widest);
  let [xx, xy, yy, bx, by] = [0, 0, 0, 0, 0];
  for (const { outward, shift, weight } of lines) {
    const [p, q] = [dot3(outward, x), dot3(outward, y)];
    xx += weight * p * p;
    xy += weight * p * q;
    yy += weight * q * q;
    bx += weight * p * shift;
    by += weight * q * shift;
  }
  if (isOneLine) return scale3(x, bx / xx);
  const det = xx * yy - xy * xy;
  const move = add3(scale3(x, (yy * bx - xy * by) / det), scale3(y, (xx * by - xy * bx) / det));
  const length = length3(move);
  return length > LONGEST_MOVE * farthest ? scale3(move, (LONGEST_MOVE * farthest) / length) : move;
}

/**
 * Ends of a border edge as the panel inside it has them, and the third corner of the triangle there, mm.
 * @param v,w  local vertices in the direction of the border's loop.
 */
export function borderEnds(
  { surface }: Pick<PatchBend, 'surface'>,
  { corners }: HingeShapes,
  v: number,
  w: number,
): readonly [Vec3, Vec3, Vec3] {
  const t = surface.borderTriangle(v, w);
  if (t < 0) throw new Error(`borderEnds: no border edge ${v}-${w}`);
  const { triangles } = surface.patch;
  const k = [0, 1, 2].find((corner) => triangles[3 * t + corner] === v && triangles[3 * t + ((corner + 1) % 3)] === w);
  if (k === undefined) throw new Error(`borderEnds: triangle ${t} does not have the edge ${v}-${w}`);
  const [from, to, tip] = [k, (k + 1) % 3, (k + 2) % 3].map((corner) => pointAt3(corners, 3 * t + corner));
  return [from, to, tip];
}

/**
 * The edges of one side of a seam on the panels of its piece, mm: of each edge x y z of its ends in the seam's direction, and of the third corner
 * of the triangle beside it.
 */
export function hingedEnds(
  bend: Pick<PatchBend, 'surface'>,
  shapes: HingeShapes,
  { localVertices }: SeamSide,
  which: 0 | 1,
): Float64Array {
  const ends = new Float64Array(9 * (localVertices.length - 1));
  for (let i = 0; i + 1 < localVertices.length; i += 1) {
    const [v, w] = [localVertices[i], localVertices[i + 1]];
    // The loop of the right side runs against the seam.
    const [from, to, tip] = which === 0 ? borderEnds(bend, shapes, v, w) : borderEnds(bend, shapes, w, v);
    const [start, end] = which === 0 ? [from, to] : [to, from];
    ends.set([start.x, start.y, start.z, end.x, end.y, end.z, tip.x, tip.y, tip.z], 9 * i);
  }
  return ends;
}
