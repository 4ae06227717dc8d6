import type { Stepwise } from '../../base/stepwise.ts';
import type { SurfaceTree } from '../../geom/bvh.ts';
import { add3, dot3, pointAt3, scale3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3, diagonalOf } from '../measure.ts';
import type { Mesh } from '../mesh.ts';
import { surfaceTreeOf } from '../surface-tree.ts';
import { candidateSteps } from './mirror-candidates.ts';
import { fitPlane } from './mirror-fit.ts';
import type { CornerCells } from './mirror-partners.ts';
import type { MirrorPlane } from './mirror-plane.ts';
import { settledOnPartners } from './mirror-settle.ts';
import { isAlong, mirrorOffsetSteps, shareWithin, type MirrorOffsets, type MirrorQuestion } from './mirror-share.ts';
import { samplesOf, type SurfaceSamples } from './surface-samples.ts';

/** Triangles judged to tell one plane from another. */
const JUDGED = 800;

/** Places that pull on a plane: in the first, rough rounds and in the last. */
const ROUGH_SAMPLES = 150;
const FINE_SAMPLES = 500;

/** How far off a place may lie and still pull, round by round, as shares of the diagonal. */
const ROUGH_REACHES = [0.1, 0.05, 0.03];
const FINE_REACHES = [0.02, 0.01, 0.005, 0.005];

/**
 * Share of the places that must lie within reach when a plane gets a closer look, as long as that reaches as far as serves in the end: far under
 * what has to lie there then, and far over what does where there is no mirror.
 */
const LEAST_IN_REACH = 0.7;

/** Planes that get a closer look. */
const KEPT = 10;

/** Shares closer than this are as good. */
const AS_GOOD = 0.005;

/** Cosine from which on a plane parts left from right: 8 degrees. */
const SIDEWAYS = 0.99;

/** A plane that was held against the surface. */
interface Judged {
  readonly plane: MirrorPlane;
  readonly offsets: MirrorOffsets;
  /** Share of the corners that have partners. */
  readonly paired: number;
}

/**
 * The plane in which the sculpt mirrors itself best.
 * @param cells  the corners in cells of the finest tolerance.
 * @param left   see `findMirrorSteps`.
 * @param levels shares of the diagonal within which it has to lie, ascending, each with the share of the area that has to.
 * @returns the plane and the first tolerance that serves; null where none does.
 */
export function* bestPlaneSteps(
  mesh: Mesh,
  cells: CornerCells,
  left: Vec3,
  levels: readonly { readonly tolerance: number; readonly least: number }[],
): Stepwise<{ readonly plane: MirrorPlane; readonly tolerance: number } | null> {
  const size = diagonalOf(mesh);
  const tolerance = levels[0].tolerance * size;
  const coarsest = levels[levels.length - 1].tolerance;
  const rough = samplesOf(mesh, ROUGH_SAMPLES);
  const fine = samplesOf(mesh, FINE_SAMPLES);
  const tree = surfaceTreeOf(mesh);
  yield;
  const drawn: Drawn[] = [];
  for (const start of yield* candidateSteps(mesh, left, rough)) {
    const own = yield* drawIn(mesh, tree, rough, start, size, ROUGH_REACHES, Infinity);
    if (own !== null) drawn.push(own);
    yield;
  }
  drawn.sort((a, b) => a.rms - b.rms);
  const judged: Judged[] = [];
  const question: MirrorQuestion = {
    near: tolerance,
    most: coarsest * size,
    stride: Math.max(1, Math.ceil(mesh.triangles.length / 3 / JUDGED)),
    isPaired: () => false,
    lostShare: 1 - Math.min(...levels.map(({ least }) => least)),
  };
  for (const { plane: start } of distinct(mesh, drawn, 10 * tolerance).slice(0, KEPT)) {
    const closer = yield* drawIn(mesh, tree, fine, start, size, FINE_REACHES, coarsest);
    yield;
    if (closer === null) continue;
    const { plane } = closer;
    const settled = yield* settledOnPartners(mesh.positions, cells, plane, tolerance);
    const candidate = settled?.plane ?? plane;
    const offsets = yield* mirrorOffsetSteps(mesh, candidate, question);
    const isGood = levels.some((level) => shareWithin(offsets, level.tolerance * size) >= level.least);
    if (!isGood || isAlong(mesh, candidate, tolerance)) continue;
    judged.push({ plane: candidate, offsets, paired: settled?.pairedShare ?? 0 });
  }
  for (const level of levels) {
    const reach = level.tolerance * size;
    const good = judged.filter(({ offsets }) => shareWithin(offsets, reach) >= level.least);
    if (good.length > 0) return { plane: preferred(mesh, good, left, reach), tolerance: level.tolerance };
  }
  return null;
}

/** @param judged one or more. */
function preferred(mesh: Mesh, judged: readonly Judged[], left: Vec3, reach: number): MirrorPlane {
  const shares = judged.map(({ offsets }) => shareWithin(offsets, reach));
  const most = Math.max(...shares);
  const good = judged.filter((_, i) => shares[i] >= most - AS_GOOD);
  const mostPaired = Math.max(...good.map(({ paired }) => paired));
  const isSideways = ({ plane }: Judged): number => (Math.abs(dot3(plane.normal, left)) >= SIDEWAYS ? 1 : 0);
  const ranked = good
    .filter(({ paired }) => paired >= mostPaired - AS_GOOD)
    .map((own) => ({ own, extent: extentAlong(mesh, own.plane.normal), sideways: isSideways(own) }))
    .sort((a, b) => b.sideways - a.sideways || b.extent - a.extent);
  return ranked[0].own.plane;
}

function extentAlong({ positions }: Mesh, direction: Vec3): number {
  let [low, high] = [Infinity, -Infinity];
  for (let v = 0; v < positions.length / 3; v += 1) {
    const x = dot3(direction, pointAt3(positions, v));
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  return high - low;
}

/** A plane after some rounds, and how far the places that pulled last lay off, mm. */
interface Drawn {
  readonly plane: MirrorPlane;
  readonly rms: number;
}

/** Null as soon as too few places lie within a reach of at least `heldFrom`, a share of the size. */
function* drawIn(
  mesh: Mesh,
  tree: SurfaceTree,
  samples: SurfaceSamples,
  plane: MirrorPlane,
  size: number,
  reaches: readonly number[],
  heldFrom: number,
): Stepwise<Drawn | null> {
  let now: Drawn = { plane, rms: Infinity };
  for (const reach of reaches) {
    yield;
    const { share, ...next } = fitPlane(mesh, tree, samples, now.plane, reach * size);
    if (reach >= heldFrom && share < LEAST_IN_REACH) return null;
    now = next;
  }
  return now;
}

/** Directions this near are one, cosine of about 0.8 degrees. */
const SAME_DIRECTION = 1 - 1e-4;

/** Planes that came to be the same are one, the first of them. */
function distinct(mesh: Mesh, planes: readonly Drawn[], tolerance: number): readonly Drawn[] {
  const { min, max } = boxOfPoints3(mesh.positions);
  const centre = scale3(add3(min, max), 0.5);
  const offCentre = ({ normal, at }: MirrorPlane): number => dot3(normal, centre) - at;
  const isSame = (a: MirrorPlane, b: MirrorPlane): boolean => {
    const turn = dot3(a.normal, b.normal);
    return Math.abs(turn) > SAME_DIRECTION && Math.abs(offCentre(a) - Math.sign(turn) * offCentre(b)) < tolerance;
  };
  return planes.filter(({ plane }, i) => !planes.slice(0, i).some((other) => isSame(plane, other.plane)));
}
