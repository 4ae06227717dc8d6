import { fail, ok, type Result } from '../../base/result.ts';
import { shareOfWork, type Work } from '../../base/work.ts';
import { MOST_ROOM_BYTES } from '../../geom/dense-room.ts';
import { factorBytes } from '../../geom/sparse-factor.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import type { FlatPiece, SolveReport } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';
import { canonicalFrame } from './canonical-frame.ts';
import { energyOf } from './dirichlet-energy.ts';
import { flatSystemWithPauses } from './flat-system.ts';
import { countFlips, hasFlip } from './flips.ts';
import { keepApart } from './keep-apart.ts';
import { measureStretch } from './measure-stretch.ts';
import type { FlattenOptions } from './flatten-options.ts';
import type { Look } from './newton.ts';
import { overlapsOf } from './overlaps-of.ts';
import { restShapes, type RestShapes } from './rest-shapes.ts';
import { settle } from './settle.ts';
import { startApart, startNear } from './start-shape.ts';
import { angleDefect, unfold } from './unfold.ts';

const TOO_LARGE = 'A piece of so many triangles is more than memory holds: part it, or thin out its mesh.';

/** Angle defect, radians in all, up to which it is worth trying to unfold a patch: it closes, or is a good start. */
const NEARLY_DEVELOPABLE = 0.5;
const TOO_LONG = 'A limb of this piece is too long and thin to lay flat: mark a seam along it.';
/** A patch whose sides all close to this share of its size is developable: nothing but rounding is left. */
const DEVELOPABLE_GAP = 1e-9;
/** A start of less energy than this is worth a look: 4 is an isometry, and this much a strain of 7 % all over in one direction. */
const NEAR_ENERGY = 4.02;

/**
 * Lays a patch flat at true scale without a flipped triangle. A developable patch is rolled out exactly; any other is brought to the
 * minimum of the symmetric Dirichlet energy from a start without a flip. Nothing is rescaled.
 * @param positions  neutral surface of the whole mesh, x y z per mesh vertex, mm.
 * @param look  called a few times on the way, each time with a shape that is valid and nearer to the last one, measured as it is.
 * @returns the flat piece, seen from the face side, centred on the origin and turned to a frame of its own that does not depend on the
 *          numbering. Fails with `flatten/not-flat-able` for a patch that has to be cut first, `flatten/no-area` for one without
 *          area, `flatten/too-large` for one of several million triangles.
 */
export async function flattenPatch(
  patch: Patch,
  positions: Float64Array,
  options: FlattenOptions,
  work: Work,
  look?: (flat: FlatPiece) => void,
): Promise<Result<FlatPiece>> {
  const where = { triangles: [patch.meshTriangles[0]] };
  if (patch.kind !== 'disc' && patch.kind !== 'windowed') {
    return fail(
      'flatten/not-flat-able',
      'A piece without an edge, or with a handle, cannot be laid flat: part it first.',
      where,
    );
  }
  const rest = restShapes(patch, positions, options.corners);
  if (!rest.empty.includes(0)) {
    return fail(
      'flatten/no-area',
      'A piece made only of faces without area cannot be cut: drop the empty faces.',
      where,
    );
  }
  const graph = graphOfTriangles(rest.vertexCount, patch.triangles);
  await work.pause(0);
  const rolled = angleDefect(rest, patch.loops) < NEARLY_DEVELOPABLE ? unfold(rest, graph) : null;
  const isRolled = rolled !== null && !hasFlip(patch.triangles, rolled.flat);
  const { keepApart: isApart = false, start, straightRuns = [] } = options;
  if (isRolled && rolled.gap <= DEVELOPABLE_GAP && straightRuns.length === 0) {
    const piece = finish(patch, rest, rolled.flat, { method: 'unfolded', steps: 0, converged: true });
    if (!isApart || piece.overlapCount === 0) return ok(piece);
  }
  const system = await flatSystemWithPauses(patch, rest, graph, () => work.pause(0));
  if (factorBytes(system.plan, 2) > MOST_ROOM_BYTES) return fail('flatten/too-large', TOO_LARGE, where);
  await work.pause(0.05);
  const known = { earlier: start, rolled: isRolled ? rolled.flat : undefined };
  const near = await startNear(patch, system, known, shareOfWork(work, 0.05, 0.2));
  if (near === null) return fail('flatten/no-start', TOO_LONG, where);
  const show: Look = (flat, steps) =>
    look?.(finish(patch, rest, flat, { method: 'minimised', steps, converged: false }));
  if (look !== undefined && energyOf(rest, near) < NEAR_ENERGY) show(near, 0);
  const free = { ...options, keepApart: false };
  let settled = await settle(patch, system, near, free, shareOfWork(work, 0.2, isApart ? 0.5 : 1), show);
  // Where the borders keep clear by themselves, the shape is the one sought: what keeps them apart costs nothing there.
  if (settled !== null && isApart && keepApart(patch, system).costOf(settled.flat) > 0) {
    const clear = await startApart(patch, system, [settled.flat, start], shareOfWork(work, 0.5, 0.6));
    settled = clear === null ? null : await settle(patch, system, clear, options, shareOfWork(work, 0.6, 1), show);
  }
  if (settled === null) return fail('flatten/no-start', TOO_LONG, where);
  const { flat, steps, converged } = settled;
  return ok(finish(patch, rest, flat, { method: 'minimised', steps, converged }));
}

function finish(patch: Patch, rest: RestShapes, flat: Float64Array, solve: SolveReport): FlatPiece {
  const uv = canonicalFrame(patch.triangles, flat);
  return {
    uv,
    ...measureStretch(rest, uv),
    energy: energyOf(rest, uv),
    flipped: countFlips(patch.triangles, uv),
    ...overlapsOf(patch, uv),
    solve,
  };
}
