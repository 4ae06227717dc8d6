import { dot3, length3, pointAt3, scale3, sub3, type Vec3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { SeamChain, SeamSide } from '../../model/seams.ts';
import type { Panels } from './panels.ts';
import { triangleBeside, type PieceSurface } from './piece-surface.ts';
import { smoothTilts, turnBeside } from './side-tilts.ts';

/** Bevel from square at both ends of each mesh edge of a chain, radians; positive: the back edge stands inside the face edge. */
export interface ChainBevels {
  readonly atStart: Float64Array;
  readonly atEnd: Float64Array;
}

/** One side of a seam with what is known of the piece it runs on. */
export interface BevelSide {
  readonly side: SeamSide;
  /** 0 to the left of the chain, 1 to the right. */
  readonly which: 0 | 1;
  readonly surface: PieceSurface;
  readonly panels: Panels;
  /** True for a rolled piece: its surface is smooth and not made of the facets that stand for it. */
  readonly isSmooth: boolean;
}

/** A chain that turns by less than this at a vertex is a smooth line there: cosine of 45 degrees. */
const SMOOTH_LINE_COSINE = Math.SQRT1_2;

/**
 * Where the folds left over after smoothing are, along the whole seam, under this share of the turns between the facets beside it, they cannot
 * be told from none: the surface runs on smoothly across the seam and its edges are square. Above the worst seen on smooth shapes of 24 sides.
 */
const TELLABLE_SHARE = 0.2;

/** A fold smaller than this is what rounding left, radians (6e-5 degrees). */
const NO_FOLD_RAD = 1e-6;

/** No bevel at all: open edges are square, and so are the cuts of a lap (foam model 4). */
export function squareBevels(chain: SeamChain): ChainBevels {
  const count = chain.vertices.length - 1;
  return { atStart: new Float64Array(count), atEnd: new Float64Array(count) };
}

/**
 * The bevels that bring two sides together on the bisecting plane of their fold: half the fold each, from square (foam model 4; the worked
 * cases of two panels at 120, 90 and 240 degrees give 30, 45 and -30). Both sides of a butt seam get the same bevel.
 *
 * The fold is that of the facets, and where a side is smooth that of the surface behind them ({@link smoothTilts}). It belongs to the middle
 * of each mesh edge. Along a smooth stretch, where the next edge lies on the same panels, it runs straight from middle to middle; at a corner
 * of the seam or of a panel it jumps.
 */
export function bevelsBetween(mesh: Mesh, chain: SeamChain, sides: readonly BevelSide[]): ChainBevels {
  const count = chain.vertices.length - 1;
  const edges = edgesOf(mesh, chain);
  const folds = foldsOf(mesh, chain, sides, edges);
  const { before, after } = smoothJoins(mesh, chain, sides.map(panelsBeside));
  const atStart = new Float64Array(count);
  const atEnd = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    const [last, next] = [before(i), after(i)];
    atStart[i] = towards(folds, edges, i, last, next) / 2;
    atEnd[i] = towards(folds, edges, i, next, last) / 2;
  }
  return { atStart, atEnd };
}

/**
 * The neighbour of each edge of a chain that it runs on into smoothly, before and after it; -1 at a corner of the seam or of a panel, and at the
 * chain's ends.
 * @param beside for each side the panel beside each edge.
 */
export function smoothJoins(
  mesh: Mesh,
  chain: SeamChain,
  beside: readonly Int32Array[],
): { readonly before: (edge: number) => number; readonly after: (edge: number) => number } {
  const edges = edgesOf(mesh, chain);
  const count = edges.length;
  const isSmooth = (i: number, j: number): boolean =>
    beside.every((panels) => panels[i] === panels[j]) && cosineBetween(edges[i], edges[j]) > SMOOTH_LINE_COSINE;
  const after = (i: number): number => {
    const j = i + 1 < count ? i + 1 : chain.closed ? 0 : -1;
    return j >= 0 && j !== i && isSmooth(i, j) ? j : -1;
  };
  const before = (i: number): number => {
    const j = i > 0 ? i - 1 : chain.closed ? count - 1 : -1;
    return j >= 0 && after(j) === i ? j : -1;
  };
  return { before, after };
}

const edgesOf = (mesh: Mesh, { vertices }: SeamChain): readonly Vec3[] =>
  Array.from({ length: vertices.length - 1 }, (_, i) =>
    sub3(pointAt3(mesh.positions, vertices[i + 1]), pointAt3(mesh.positions, vertices[i])),
  );

/** Folds at the middles of the chain's edges, smooth sides carried to the seam. */
function foldsOf(mesh: Mesh, chain: SeamChain, sides: readonly BevelSide[], edges: readonly Vec3[]): Float64Array {
  const folds = chain.foldRad.slice();
  const turns = new Float64Array(folds.length);
  for (const { side, which, surface, panels, isSmooth } of sides) {
    if (!isSmooth) continue;
    smoothTilts(mesh, surface, panels, side, which).forEach((tilt, i) => {
      folds[i] += tilt;
      turns[i] = Math.max(turns[i], turnBeside(surface, panels, triangleBeside(surface, side, which, i)));
    });
  }
  const square = (values: Float64Array): number =>
    values.reduce((sum, value, i) => sum + length3(edges[i]) * value * value, 0);
  if (square(folds) < TELLABLE_SHARE ** 2 * square(turns)) return folds.fill(0);
  return folds.map((fold) => (Math.abs(fold) < NO_FOLD_RAD ? 0 : withinHalfTurn(fold)));
}

/** The fold at the end of edge `i` that lies towards `near`, or, where the smooth stretch ends there, as it comes from `far`. */
function towards(folds: Float64Array, edges: readonly Vec3[], i: number, near: number, far: number): number {
  const along = near >= 0 ? near : far;
  if (along < 0) return folds[i];
  const [own, other] = [length3(edges[i]), length3(edges[along])];
  const step = (folds[along] - folds[i]) * (own / (own + other));
  return withinHalfTurn(near >= 0 ? folds[i] + step : folds[i] - step);
}

const withinHalfTurn = (fold: number): number => Math.min(Math.PI, Math.max(-Math.PI, fold));

/** Panel beside each edge of the side, -1 where there is none. */
export function panelsBeside({ side, which, surface, panels }: Omit<BevelSide, 'isSmooth'>): Int32Array {
  return Int32Array.from({ length: side.localVertices.length - 1 }, (_, i) => {
    const t = triangleBeside(surface, side, which, i);
    return t < 0 ? -1 : panels.panelOf[t];
  });
}

function cosineBetween(a: Vec3, b: Vec3): number {
  const scale = length3(a) * length3(b);
  return scale > 0 ? dot3(scale3(a, 1 / scale), b) : 1;
}
