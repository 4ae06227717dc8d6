import type { PiecesView, SculptView } from '../model/bench-view.ts';
import type { Bench } from './bench-state.ts';
import { edgeIndexOf } from './edge-index.ts';

/** A panel ends where the surface folds sharper than this, degrees: where folds are drawn on a piece. */
const PANEL_FOLD_DEG = 20;

/** Triangles on both sides of each edge of the sculpt, -1 where there is none. */
const sidesKnown = new WeakMap<SculptView, Int32Array>();

function sidesOf(sculpt: SculptView): Int32Array {
  let sides = sidesKnown.get(sculpt);
  if (sides === undefined) {
    sides = new Int32Array(sculpt.edgeVertices.length).fill(-1);
    for (let t = 0; 3 * t < sculpt.triangles.length; t += 1) {
      for (const edge of edgesOf(sculpt, t)) {
        if (edge >= 0) sides[sides[2 * edge] < 0 ? 2 * edge : 2 * edge + 1] = t;
      }
    }
    sidesKnown.set(sculpt, sides);
  }
  return sides;
}

function edgesOf(sculpt: SculptView, t: number): number[] {
  const index = edgeIndexOf(sculpt);
  const [a, b, c] = sculpt.triangles.subarray(3 * t, 3 * t + 3);
  return [index.between(a, b), index.between(b, c), index.between(c, a)];
}

/**
 * The panels of a piece: triangles of the sculpt that hang together without a fold sharper than {@link PANEL_FOLD_DEG}, each ascending, in the
 * order of their first one. A piece that is smooth throughout is one panel.
 */
export function panelsOfPiece({ sculpt, pieces }: Bench, patch: number): readonly (readonly number[])[] {
  if (sculpt === null || pieces?.patches[patch] === undefined) return [];
  const known = panelsKnown.get(pieces) ?? new Map<number, readonly (readonly number[])[]>();
  panelsKnown.set(pieces, known);
  const panels = known.get(patch) ?? findPanels(sculpt, pieces, patch);
  known.set(patch, panels);
  return panels;
}

/** Panels of the pieces on show, found when they were first asked for. */
const panelsKnown = new WeakMap<PiecesView, Map<number, readonly (readonly number[])[]>>();

function findPanels(sculpt: SculptView, pieces: PiecesView, patch: number): readonly (readonly number[])[] {
  const own = pieces.patches[patch].meshTriangles;
  const sides = sidesOf(sculpt);
  const limit = (PANEL_FOLD_DEG * Math.PI) / 180;
  const seen = new Set<number>();
  const panels: number[][] = [];
  for (const first of own) {
    if (seen.has(first)) continue;
    const panel = [first];
    seen.add(first);
    for (const t of panel) {
      for (const edge of edgesOf(sculpt, t)) {
        const isThrough = sculpt.edgeIsDiagonal[edge] === 1 || Math.abs(sculpt.edgeFoldRad[edge]) <= limit;
        const other = sides[2 * edge] === t ? sides[2 * edge + 1] : sides[2 * edge];
        if (!isThrough || other < 0 || seen.has(other) || pieces.patchOfTriangle[other] !== patch) continue;
        seen.add(other);
        panel.push(other);
      }
    }
    panels.push(panel.sort((a, b) => a - b));
  }
  return panels;
}

/** Those of some triangles whose polygon has its middle within a distance of another triangle's middle, mm as the crow flies; that one always. */
export function trianglesWithin(sculpt: SculptView, triangles: readonly number[], from: number, mm: number): number[] {
  const centre = middleOf(sculpt, from);
  const away = (t: number): number => {
    const p = middleOf(sculpt, t);
    return Math.hypot(p[0] - centre[0], p[1] - centre[1], p[2] - centre[2]);
  };
  const faces = new Set(triangles.filter((t) => t === from || away(t) <= mm).map((t) => sculpt.faceOfTriangle[t]));
  return triangles.filter((t) => faces.has(sculpt.faceOfTriangle[t]));
}

/** Polygons of the file that triangles belong to, ascending. */
export function facesOf(sculpt: SculptView, triangles: Iterable<number>): number[] {
  const faces = new Set<number>();
  for (const t of triangles) faces.add(sculpt.faceOfTriangle[t]);
  return [...faces].sort((a, b) => a - b);
}

/** Area of triangles of the sculpt, mm². */
export function areaOf(sculpt: SculptView, triangles: Iterable<number>): number {
  let area = 0;
  for (const t of triangles) {
    const [a, b, c] = cornersOf(sculpt, t);
    const [u, v] = [b, c].map((p) => [p[0] - a[0], p[1] - a[1], p[2] - a[2]]);
    area += Math.hypot(u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]) / 2;
  }
  return area;
}

const cornersOf = ({ positions, triangles }: SculptView, t: number): number[][] =>
  [0, 1, 2].map((k) => {
    const v = 3 * triangles[3 * t + k];
    return [positions[v], positions[v + 1], positions[v + 2]];
  });

function middleOf(sculpt: SculptView, t: number): readonly [number, number, number] {
  const [a, b, c] = cornersOf(sculpt, t);
  return [(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3, (a[2] + b[2] + c[2]) / 3];
}
