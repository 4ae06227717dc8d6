import { runAtOnce, type Stepwise } from '../../base/stepwise.ts';
import { add3, dot3, scale3, vec3, type Vec3 } from '../../geom/vec.ts';
import { boxOfPoints3, diagonalOf } from '../measure.ts';
import type { Mesh } from '../mesh.ts';
import type { Plane } from '../surface.ts';
import { CornerCells, partnerSteps, vertexPartnerSteps, type Partners } from './mirror-partners.ts';
import { mirrorPlane, mirrorPlaneFrom, type MirrorPlane } from './mirror-plane.ts';
import { bestPlaneSteps } from './mirror-search.ts';
import { pairedCount, settledOnPartners } from './mirror-settle.ts';
import { isAlong, mirrorOffsetSteps, shareWithin } from './mirror-share.ts';

/** A plane in which the sculpt mirrors itself, and what lies opposite to what. */
export interface Mirror {
  readonly plane: MirrorPlane;
  /** Share of the area whose mirror image lies on the surface within the tolerance, 0 to 1. */
  readonly share: number;
  /** mm. */
  readonly toleranceMm: number;
  readonly partners: Partners;
  /** Share of the triangles that have a partner, 0 to 1: 1 where the surface is the same triangle by triangle. */
  readonly pairedShare: number;
}

/**
 * How near a mirror image has to lie to the surface, as a share of the sculpt's diagonal, and the share of the area that has to: a badge or a
 * broken horn on one side leaves it. What was modelled by mirroring agrees to the first; what was cut into triangles anew, or scanned, to the
 * second; forms that were meant to be even, and are but for their facets, to the last. Best shares found, per cent, at the three:
 *
 *     samples, mask-5k                       100 / 100 / 100
 *     wingnut, spot's control surface         91 to 92 / - / -
 *     mask-1k, scanned hammer                 85 / 98 / 100, 77 / 99.6 / 100
 *     spot cut into triangles anew            28 / 84 / 99
 *     goat's head, box with a room            8 / 38 / 84, 48 / 55 / 86
 *     greave with its flare, hand, knot       67 / 67 / 71, 1 / 8 / 37, 0 / 1 / 13
 */
export const MIRROR_LEVELS: readonly { readonly tolerance: number; readonly least: number }[] = [
  { tolerance: 1e-3, least: 0.9 },
  { tolerance: 3e-3, least: 0.9 },
  { tolerance: 1e-2, least: 0.95 },
];

/** Under this a plane that was named is no mirror of the sculpt. */
export const LEAST_MIRROR_SHARE = MIRROR_LEVELS[0].least;

/** Within this share of the diagonal a corner is another's mirror image: 0.4 mm on a helm, less than closes under contact glue. */
export const PARTNER_SHARE = MIRROR_LEVELS[0].tolerance;

/** A sculpt so much paired, corner by corner, needs no further search. */
const ALL_PAIRED = 0.999;

const known = new WeakMap<Mesh, Map<string, Mirror | null>>();

/** Most sculpts stand along y and look along z. */
const LEFT: Vec3 = vec3(1, 0, 0);

/** The mirror found in a sculpt, see {@link findMirrorSteps}. */
export const findMirror = (mesh: Mesh, left: Vec3 = LEFT): Mirror | null => runAtOnce(findMirrorSteps(mesh, left));

/**
 * Finds the plane of symmetry by itself; null where there is none. Found once for each mesh and kept as long as it lives.
 *
 * A sculpt that was modelled by mirroring shows it in its corners, across one of the file's axes: that is looked at first. Else every
 * direction is tried through the middle of the surface on a coarse field of distances (after the planar reflective symmetry transform of
 * Podolak et al. 2006, with the plane held at the middle), with the principal axes, and the best are drawn in by least squares. What comes
 * out is judged by the true distance of every corner's and every triangle's mirror image from the surface.
 * @param left direction that counts as sideways: of planes that are as good the one that parts left from right is taken, then that
 *             across which the sculpt is longest.
 */
export function* findMirrorSteps(mesh: Mesh, left: Vec3 = LEFT): Stepwise<Mirror | null> {
  return yield* rememberedSteps(mesh, `${left.x} ${left.y} ${left.z}`, () => searchSteps(mesh, left));
}

/**
 * The sculpt held against a plane the maker names: the plane stays as it is said.
 * @param plane normal of any length but 0.
 */
export function* mirrorInSteps(mesh: Mesh, plane: Plane): Stepwise<Mirror> {
  const named = mirrorPlaneFrom(plane);
  const { normal, at } = named;
  const mirror = yield* rememberedSteps(mesh, `in ${normal.x} ${normal.y} ${normal.z} ${at}`, () =>
    mirrorAtSteps(mesh, named, PARTNER_SHARE * diagonalOf(mesh)),
  );
  if (mirror === null) throw new Error('mirrorInSteps: a named plane has a mirror');
  return mirror;
}

/** Planes remembered for one mesh: a maker tries out a few. */
const KEPT = 8;

function* rememberedSteps(mesh: Mesh, key: string, make: () => Stepwise<Mirror | null>): Stepwise<Mirror | null> {
  const kept = known.get(mesh) ?? new Map<string, Mirror | null>();
  known.set(mesh, kept);
  let found = kept.get(key);
  if (found === undefined) {
    found = yield* make();
    if (kept.size >= KEPT) kept.clear();
    kept.set(key, found);
  }
  return found;
}

function* searchSteps(mesh: Mesh, left: Vec3): Stepwise<Mirror | null> {
  const size = diagonalOf(mesh);
  const tolerance = PARTNER_SHARE * size;
  if (!(tolerance > 0) || mesh.triangles.length === 0) return null;
  const cells = new CornerCells(mesh.positions, tolerance);
  yield;
  for (const plane of sidewaysPlanes(mesh, left)) {
    const settled = yield* settledOnPartners(mesh.positions, cells, plane, tolerance);
    if (settled === null || settled.pairedShare < ALL_PAIRED || isAlong(mesh, settled.plane, tolerance)) continue;
    return yield* mirrorAtSteps(mesh, settled.plane, tolerance, settled.ofVertex);
  }
  const best = yield* bestPlaneSteps(mesh, cells, left, MIRROR_LEVELS);
  return best === null ? null : yield* mirrorAtSteps(mesh, best.plane, best.tolerance * size);
}

/** Across the sideways direction: through the origin and through the middle of the box. */
function sidewaysPlanes(mesh: Mesh, left: Vec3): readonly MirrorPlane[] {
  const { min, max } = boxOfPoints3(mesh.positions);
  return [0, dot3(left, scale3(add3(min, max), 0.5))].map((at) => mirrorPlane(left, at));
}

function* mirrorAtSteps(
  mesh: Mesh,
  plane: MirrorPlane,
  toleranceMm: number,
  paired: Int32Array | null = null,
): Stepwise<Mirror> {
  const { positions } = mesh;
  const ofVertex =
    paired ?? (yield* vertexPartnerSteps(positions, new CornerCells(positions, toleranceMm), plane, toleranceMm));
  const partners = yield* partnerSteps(mesh, ofVertex);
  const offsets = yield* mirrorOffsetSteps(mesh, plane, {
    near: toleranceMm,
    most: toleranceMm,
    stride: 1,
    isPaired: (t) => partners.ofTriangle[t] >= 0,
    lostShare: 1,
  });
  const pairedShare = pairedCount(partners.ofTriangle) / partners.ofTriangle.length;
  return { plane, share: shareWithin(offsets, toleranceMm), toleranceMm, partners, pairedShare };
}
