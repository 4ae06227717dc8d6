import { fail, ok, type Result } from '../../base/result.ts';
import { shareOfWork, type Work } from '../../base/work.ts';
import { overlappingTriangles } from '../../geom/overlap.ts';
import { isSimpleArea } from '../../geom/ring-simple.ts';
import { graphOfTriangles } from '../../geom/sparse-graph.ts';
import type { FlatPiece, SolveReport } from '../../model/flat-piece.ts';
import type { Patch } from '../../model/patch.ts';
import { canonicalFrame } from './canonical-frame.ts';
import { circleStart } from './circle-start.ts';
import { energyOf } from './dirichlet-energy.ts';
import { flatSystem, type FlatSystem } from './flat-system.ts';
import { countFlips, hasFlip } from './flips.ts';
import { LocalGlobal } from './local-global.ts';
import { measureStretch } from './measure-stretch.ts';
import type { FlattenOptions } from './flatten-options.ts';
import { restShapes, type RestShapes } from './rest-shapes.ts';
import { settle } from './settle.ts';
import { angleDefect, unfold } from './unfold.ts';

/** Pairs of overlapping triangles listed at most; the piece is refused by the eye long before. */
const MOST_OVERLAPS = 1000;
/** Angle defect, radians in all, up to which it is worth trying to unfold a patch: it closes, or is a good start. */
const NEARLY_DEVELOPABLE = 0.5;
/** A patch whose sides all close to this share of its size is developable: nothing but rounding is left. */
const DEVELOPABLE_GAP = 1e-9;
/** Rounds of local-global before the energy with the flip barrier takes over. */
const LOCAL_GLOBAL_ROUNDS = 4;

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
  const where = { triangles: [patch.meshTriangles[0]] };
  if (patch.kind !== 'disc' && patch.kind !== 'windowed') {
    return fail(
      'flatten/not-flat-able',
      'A piece without an edge, or with a handle, cannot be laid flat: part it first.',
      where,
    );
  }
  const rest = restShapes(patch, positions);
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
  const system = flatSystem(patch, rest, graph);
  await work.pause(0.05);
  const candidates = { earlier: start, rolled: isRolled ? rolled.flat : undefined };
  const near = await (isApart
    ? shapeApart(patch, system, start, shareOfWork(work, 0.05, 0.2))
    : nearShape(patch, system, candidates, shareOfWork(work, 0.05, 0.2)));
  if (near === null) {
    return fail(
      'flatten/no-start',
      'A limb of this piece is too long and thin to lay flat: mark a seam along it.',
      where,
    );
  }
  const { flat, steps, converged } = await settle(system, near, options, shareOfWork(work, 0.2, 1));
  return ok(finish(patch, rest, flat, { method: 'minimised', steps, converged }));
}

/** A shape whose borders keep clear of each other: the earlier one if it is so, else the net on a circle. */
async function shapeApart(
  patch: Patch,
  system: FlatSystem,
  earlier: Float64Array | undefined,
  work: Work,
): Promise<Float64Array | null> {
  if (earlier !== undefined && isUsable(patch, system, earlier) && overlapsOf(patch, earlier).overlapCount === 0)
    return earlier;
  return circleStart(patch, system, work);
}

function isUsable(patch: Patch, { rest }: FlatSystem, earlier: Float64Array): boolean {
  return earlier.length === 2 * rest.vertexCount && !hasFlip(patch.triangles, earlier);
}

/** A shape without a flip from which to go down: the earlier one, else the best of unfolding or net after rounds of local-global. */
async function nearShape(
  patch: Patch,
  system: FlatSystem,
  { earlier, rolled }: { readonly earlier: Float64Array | undefined; readonly rolled: Float64Array | undefined },
  work: Work,
): Promise<Float64Array | null> {
  if (earlier !== undefined && isUsable(patch, system, earlier)) return earlier;
  const start = rolled ?? (await circleStart(patch, system, shareOfWork(work, 0, 0.5)));
  return start === null ? null : bestLocalGlobal(patch, system, start, shareOfWork(work, 0.5, 1));
}

/** Of all shapes on the way of local-global that have no flip, the one of least energy. */
async function bestLocalGlobal(
  patch: Patch,
  system: FlatSystem,
  start: Float64Array,
  work: Work,
): Promise<Float64Array> {
  const rounds = await LocalGlobal.of(system, work);
  let best = start;
  let least = energyOf(system.rest, start);
  let now = start;
  for (let round = 0; round < LOCAL_GLOBAL_ROUNDS; round += 1) {
    await work.pause(0.5 + round / LOCAL_GLOBAL_ROUNDS / 2);
    const next = new Float64Array(start.length);
    rounds.round(now, next);
    const energy = energyOf(system.rest, next);
    if (energy < least && !hasFlip(patch.triangles, next)) [best, least] = [next, energy];
    now = next;
  }
  return best;
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

/**
 * Without a flip, as many triangles cover a point as its border winds round it. So a border that is simple, the outer loop
 * counter-clockwise and windows clockwise, leaves nothing to look for.
 */
function overlapsOf(patch: Patch, uv: Float64Array): Pick<FlatPiece, 'overlaps' | 'overlapCount'> {
  const rings = patch.loops.map((loop) =>
    Float64Array.from(Array.from(loop).flatMap((v) => [uv[2 * v], uv[2 * v + 1]])),
  );
  if (isSimpleArea(rings)) return { overlaps: [], overlapCount: 0 };
  const { pairs, count } = overlappingTriangles(uv, patch.triangles, MOST_OVERLAPS);
  return { overlaps: pairs, overlapCount: count };
}
