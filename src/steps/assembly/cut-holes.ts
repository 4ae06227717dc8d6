import type { Finding } from '../../base/finding.ts';
import { formatNumber } from '../../base/format-length.ts';
import { buildTree } from '../../geom/bvh.ts';
import { cross3, deg, dot3, length3, pointAt3, scale3, sub3, unit3, type Vec3 } from '../../geom/vec.ts';
import type { Weights } from '../../mesh/lines/mesh-point.ts';
import type { Surface } from '../../mesh/surface.ts';
import type { CutHole, CutHoles } from '../../model/cut-trace.ts';
import type { SurfaceTrace } from '../../model/trace.ts';
import { meetingCurves, type MeetingCurve, type MeetingCurves } from './meeting-curves.ts';
import { isWithinOther } from './outer-lines.ts';
import { smoothNormal } from './smooth-normal.ts';

/** The surfaces of a shell that is cut: the same triangles at three depths. */
export interface ShellSurfaces {
  readonly face: Surface;
  readonly neutral: Surface;
  readonly back: Surface;
}

/** How the wall of the hole runs: on along the surface of the part, or straight along a direction. */
export type HoleWall = { readonly kind: 'surface' } | { readonly kind: 'along'; readonly direction: Vec3 };

/** What goes through, already as much larger as it is to have room. */
export interface Entering {
  readonly name: string;
  readonly surface: Surface;
  /** Its outward normal where that is known better than from its triangles. */
  readonly normalAt?: (place: Vec3) => Vec3;
  readonly wall: HoleWall;
}

/**
 * The holes to cut in a shell where another part goes through it. At each point of the face's line the wall stands square to the part's own normal m, so
 * that with n the face's normal  sin(bevel) = m . n.
 * @param limitDeg  steepest lean of the blade, degrees.
 */
export function cutHoles(shell: ShellSurfaces, entering: Entering, limitDeg: number): CutHoles {
  const part = { surface: entering.surface, tree: buildTree(entering.surface.positions, entering.surface.triangles) };
  const linesOn = (surface: Surface): MeetingCurves => {
    const met = meetingCurves({ surface, tree: buildTree(surface.positions, surface.triangles) }, part);
    const all = met.curves.map(({ onFirst }) => onFirst);
    return { ...met, curves: met.curves.filter(({ onFirst }) => !isWithinOther(surface, onFirst, all)) };
  };
  const [face, neutral, back] = [linesOn(shell.face), linesOn(shell.neutral), linesOn(shell.back)];
  const findings: Finding[] = [];
  const neutralLeft = neutral.curves.map(({ onFirst }) => onFirst);
  const backLeft = back.curves.map(({ onFirst }) => onFirst);
  const holes = face.curves.map((curve): CutHole => {
    const bevelDeg = bevelsOf(shell.face, curve, entering);
    return {
      face: curve.onFirst,
      neutral: takeNearest(neutralLeft, curve.onFirst),
      back: takeNearest(backLeft, curve.onFirst),
      bevelDeg,
      leastBevelDeg: bevelDeg.reduce((a, b) => Math.min(a, b), Infinity),
      greatestBevelDeg: bevelDeg.reduce((a, b) => Math.max(a, b), -Infinity),
      lengthMm: lengthOf(curve.onFirst),
    };
  });
  for (const hole of holes) findings.push(...findingsOf(hole, entering.name, limitDeg));
  if (backLeft.length > 0)
    findings.push({
      code: 'assembly/only-back',
      severity: 'warning',
      text: `${entering.name} touches the back of the foam without coming out at the face: take it back, or let the pocket into the foam by hand.`,
      where: { point: placeIn(backLeft[0]) },
    });
  if (face.flatPairs.length > 0)
    findings.push({
      code: 'assembly/faces-on-faces',
      severity: 'warning',
      text: `${entering.name} lies flush on the face in ${face.flatPairs.length} places: move it in or out a little, then the hole is clear.`,
      where: { triangles: [...new Set(face.flatPairs.map(([t]) => t))].slice(0, 2000) },
    });
  if (![face, neutral, back].every(({ isWhole }) => isWhole))
    findings.push({
      code: 'assembly/too-many',
      severity: 'error',
      text: `${entering.name} and the shell have too many triangles on one spot to hold all against each other: simplify one of them.`,
      where: {},
    });
  return { holes, findings };
}

function findingsOf(hole: CutHole, name: string, limitDeg: number): Finding[] {
  const findings: Finding[] = [];
  const worst = Math.max(hole.greatestBevelDeg, -hole.leastBevelDeg);
  if (worst > limitDeg) {
    const at = hole.bevelDeg.findIndex((bevel) => Math.abs(bevel) === worst);
    findings.push({
      code: 'assembly/too-steep',
      severity: 'warning',
      text: `The hole for ${name} leans ${formatNumber(worst)}° from square, more than the blade's ${formatNumber(limitDeg)}°: cut it square and sand, or let ${name} in less aslant.`,
      value: worst,
      limit: limitDeg,
      unit: '°',
      where: { point: placeIn(hole.face, at) },
    });
  }
  if (!hole.face.closed)
    findings.push({
      code: 'assembly/hole-at-rim',
      severity: 'note',
      text: `The hole for ${name} runs out at an open edge: it is a notch there.`,
      where: { point: placeIn(hole.face) },
    });
  if (hole.back === null)
    findings.push({
      code: 'assembly/not-through',
      severity: 'warning',
      text: `${name} enters the face but does not come out at the back: it ends in the foam, or its hole is closed there.`,
      where: { point: placeIn(hole.face) },
    });
  return findings;
}

function bevelsOf(
  face: Surface,
  { onFirst, onSecond }: MeetingCurve,
  { surface, normalAt, wall }: Entering,
): Float64Array {
  const count = onFirst.points.length;
  return Float64Array.from({ length: count }, (_, i) => {
    const place = pointAt3(onFirst.places, i);
    const [stretch, end] = i < onFirst.triangles.length ? [i, 0] : [i - 1, 1];
    const weightsOf = (trace: SurfaceTrace): Weights => trace.ends[stretch][end];
    const n = smoothNormal(face, onFirst.triangles[stretch], weightsOf(onFirst));
    let m = normalAt?.(place) ?? smoothNormal(surface, onSecond.triangles[stretch], weightsOf(onSecond));
    if (wall.kind === 'along') {
      // The wall holds the line and the direction; its normal is what of m is square to the direction, as far as the line is long enough to tell.
      const along = unit3(wall.direction);
      const before = pointAt3(onFirst.places, onFirst.closed ? (i + count - 1) % count : Math.max(0, i - 1));
      const after = pointAt3(onFirst.places, onFirst.closed ? (i + 1) % count : Math.min(count - 1, i + 1));
      const across = unit3(cross3(sub3(after, before), along));
      if (length3(across) > 0.5) m = scale3(across, dot3(across, m) < 0 ? -1 : 1);
    }
    return deg(Math.asin(Math.max(-1, Math.min(1, dot3(m, n)))));
  });
}

/** Takes the line out of a list whose middle is nearest to that of another; null where none is left or its kind is another. */
function takeNearest(list: SurfaceTrace[], trace: SurfaceTrace): SurfaceTrace | null {
  const middle = middleOf(trace);
  let best = -1;
  let least = Infinity;
  list.forEach((one, i) => {
    const distance = one.closed === trace.closed ? length3(sub3(middleOf(one), middle)) : Infinity;
    if (distance < least) [best, least] = [i, distance];
  });
  // A line farther away than this one is long belongs to another hole.
  if (best < 0 || least > lengthOf(trace)) return null;
  return list.splice(best, 1)[0];
}

function middleOf({ places }: SurfaceTrace): Vec3 {
  const sum = [0, 0, 0];
  for (let i = 0; i < places.length; i += 1) sum[i % 3] += places[i];
  return scale3({ x: sum[0], y: sum[1], z: sum[2] }, 3 / places.length);
}

function placeIn({ places }: SurfaceTrace, i = 0): [number, number, number] {
  return [places[3 * i], places[3 * i + 1], places[3 * i + 2]];
}

/** Length of a trace, mm. */
export function lengthOf({ places, closed }: SurfaceTrace): number {
  const count = places.length / 3;
  let sum = 0;
  for (let i = closed ? 0 : 1; i < count; i += 1)
    sum += length3(sub3(pointAt3(places, i), pointAt3(places, (i + count - 1) % count)));
  return sum;
}
