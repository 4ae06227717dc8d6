import { fail, ok, type Result } from '../../base/result.ts';
import type { Work } from '../../base/work.ts';
import { dissectionOrder } from '../../geom/dissection-order.ts';
import { overlappingTriangles } from '../../geom/overlap.ts';
import { orientOf } from '../../geom/predicates.ts';
import { buildTopology, type Topology } from '../../mesh/topology.ts';
import type { FlatPiece, SolveReport } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';
import { canonicalFrame } from './canonical-frame.ts';
import { localGlobalSteps } from './local-global.ts';
import { measureStretch } from './measure-stretch.ts';
import { minimise } from './minimise.ts';
import { restShape, type RestShape } from './rest-shape.ts';
import { seamSprings } from './seam-springs.ts';
import { dirichletEnergy, hessianPattern } from './symmetric-dirichlet.ts';
import { tutteStart } from './tutte-start.ts';
import { unfold } from './unfold.ts';

export interface FlattenOptions {
  /** Flat coordinates of the same patch found earlier, x y per local vertex, mm: where to begin when only the surface changed a little. */
  readonly start?: Float64Array;
  /** Says of a border edge (two local vertices in the direction of its loop) whether it lies on a seam; without it none is held. */
  readonly isSeam?: (from: number, to: number) => boolean;
  /** Price of a wrong seam length against stretch inside the piece: see {@link seamSprings}; 0 is the plain minimum. */
  readonly seamPrice?: number;
}

/**
 * Price of seam length that a maker is served by. On the samples the sides of a seam differ by up to 5.0 mm at 0, 1.7 at 10, 0.25 at 100 and
 * 0.03 at 1000, while the greatest stretch of the helm goes from 1.9 to 3.9, 4.8 and 4.9 %; strongly domed pieces need the more.
 */
export const SEAM_PRICE = 300;

/** Pairs of overlapping triangles listed at most; the piece is refused by the eye long before. */
const MOST_OVERLAPS = 1000;

/**
 * Lays a patch flat at true scale without a flipped triangle. A developable patch is rolled out exactly; any other is brought to the
 * minimum of the symmetric Dirichlet energy from a start without a flip. Nothing is rescaled.
 * @param positions  neutral surface of the whole mesh, x y z per mesh vertex, mm.
 * @returns the flat piece, seen from the face side, centred on the origin and turned to a frame of its own that does not depend on the
 *          numbering. Fails with `flatten/not-flat-able` for a patch that has to be cut first, `flatten/no-area` for one without
 *          area.
 */
export async function flattenPatch(
  patch: Patch,
  positions: Float64Array,
  options: FlattenOptions,
  work: Work,
): Promise<Result<FlatPiece>> {
  if (patch.kind !== 'disc' && patch.kind !== 'windowed') {
    return fail(
      'flatten/not-flat-able',
      'A piece without an edge, or with a handle, cannot be laid flat: part it first.',
      {
        triangles: [patch.meshTriangles[0]],
      },
    );
  }
  const shape = restShape(patch, positions);
  if (shape.areas.every((area) => area === 0)) {
    return fail('flatten/no-area', 'A piece made only of faces without area cannot be cut: drop the empty faces.', {
      triangles: [patch.meshTriangles[0]],
    });
  }
  const topology = buildTopology(patch.triangles, shape.vertexCount);
  const rolled = unfold(shape, topology.twin);
  const isRolled = rolled !== null && isWithoutFlip(patch.triangles, rolled.flat);
  if (rolled !== null && rolled.exact && isRolled) {
    return ok(finish(shape, rolled.flat, { method: 'unfolded', steps: 0, converged: true }));
  }
  const order = dissectionOrder(shape.points, 3, topology.edgeVertices);
  await work.pause(0);
  const start = bestStart(patch, shape, topology, [options.start, isRolled ? rolled.flat : undefined]);
  await work.pause(0.05);
  const near = localGlobalSteps(shape, topology.edgeVertices, order, start);
  const pattern = hessianPattern(shape, topology.edgeVertices, topology.edgeOfHalfedge);
  const { isSeam = () => false, seamPrice = 0 } = options;
  const springs = seamSprings(patch, isSeam, seamPrice, shape.points, pattern, (v, w) => topology.edgeBetween(v, w));
  const { flat, steps, converged } = await minimise(shape, pattern, springs, order, near, work);
  return ok(finish(shape, flat, { method: 'minimised', steps, converged }));
}

/** The candidate of least energy that has no flip; Tutte's when there is none. */
function bestStart(
  patch: Patch,
  shape: RestShape,
  topology: Topology,
  candidates: readonly (Float64Array | undefined)[],
): Float64Array {
  let best: Float64Array | null = null;
  let least = Infinity;
  for (const candidate of candidates) {
    if (candidate?.length !== 2 * shape.vertexCount || !isWithoutFlip(patch.triangles, candidate)) continue;
    const energy = dirichletEnergy(shape, candidate);
    if (energy < least) [best, least] = [candidate, energy];
  }
  return best ?? atOwnScale(shape, tutteStart(patch, shape, topology.edgeVertices));
}

/** The start enlarged or reduced as a whole to where its energy is least: s² A + B / s² has its minimum at s⁴ = B / A. */
function atOwnScale(shape: RestShape, flat: Float64Array): Float64Array {
  const scaled = (s: number): Float64Array => flat.map((x) => s * x);
  const [e1, e2] = [dirichletEnergy(shape, flat), dirichletEnergy(shape, scaled(2))];
  if (e1 === Infinity || e2 === Infinity) throw new Error('flattenPatch: the start has a flipped triangle');
  const a = (e2 - e1 / 4) / 3.75;
  const s = Math.sqrt(Math.sqrt(Math.max(0, e1 - a) / a));
  const better = scaled(s);
  return dirichletEnergy(shape, better) < e1 ? better : flat;
}

function isWithoutFlip(triangles: Uint32Array, flat: Float64Array): boolean {
  return countFlipped(triangles, flat) === 0;
}

/** Triangles that do not run counter-clockwise, by exact orientation. */
function countFlipped(triangles: Uint32Array, flat: Float64Array): number {
  let flipped = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    if (!(orientOf(flat, triangles[t], triangles[t + 1], triangles[t + 2]) > 0)) flipped += 1;
  }
  return flipped;
}

function finish(shape: RestShape, flat: Float64Array, solve: SolveReport): FlatPiece {
  const uv = canonicalFrame(shape, flat);
  return {
    uv,
    ...measureStretch(shape, uv),
    energy: dirichletEnergy(shape, uv),
    flipped: countFlipped(shape.triangles, uv),
    overlaps: overlappingTriangles(uv, shape.triangles, MOST_OVERLAPS).pairs,
    solve,
  };
}
