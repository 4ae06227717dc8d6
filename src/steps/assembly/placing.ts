import { fail, ok, type Result } from '../../base/result.ts';
import {
  composed4,
  handOf4,
  IN_PLACE,
  mirror4,
  move4,
  placedPoints4,
  turnRound4,
  turnUpTo4,
  type Matrix4,
} from '../../geom/matrix4.ts';
import { vec3, type Vec3 } from '../../geom/vec.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import type { Triple } from '../../model/girth.ts';
import type { CopyRule, Hand, Placing, Standing } from '../../model/placing.ts';

/** How far the columns of a turn may be from length 1 and from square: what numbers of six digits in a file can say. */
const RIGID = 1e-5;

/** Most copies of one part: more than anybody cuts, and than a screen can show. */
export const MOST_COPIES = 1000;

/** Farthest a part may stand from the zero of the prop, mm: 1 km. Beyond it, numbers lose the digits that cutting needs. */
const FARTHEST_MM = 1e6;

/**
 * Whether a matrix only turns, moves or mirrors.
 * @returns fails with `assembly/matrix` where it is none at all, `assembly/scaled` where it makes the part larger or smaller, `assembly/sheared`
 * where it bends square corners.
 */
export function checkMatrix(matrix: Matrix4): Result<{ readonly isMirrored: boolean }> {
  if (matrix.length !== 16 || !matrix.every((value) => Number.isFinite(value)))
    return fail('assembly/matrix', 'The place of the part is no list of 16 numbers: give it anew.');
  if ([3, 7, 11].some((i) => matrix[i] !== 0) || matrix[15] !== 1)
    return fail('assembly/matrix', 'The place of the part ends in another row than 0 0 0 1: give it anew.');
  if ([12, 13, 14].some((i) => Math.abs(matrix[i]) > FARTHEST_MM))
    return fail('assembly/far', 'The part stands more than a kilometre away: check the unit of its place.');
  const column = (k: number, l: number): number =>
    matrix[4 * k] * matrix[4 * l] + matrix[4 * k + 1] * matrix[4 * l + 1] + matrix[4 * k + 2] * matrix[4 * l + 2];
  if ([0, 1, 2].some((k) => !(Math.abs(column(k, k) - 1) <= 2 * RIGID)))
    return fail(
      'assembly/scaled',
      'The place of the part would change its size: set the size in the part itself, then place it.',
    );
  if ([column(0, 1), column(1, 2), column(2, 0)].some((value) => !(Math.abs(value) <= RIGID)))
    return fail('assembly/sheared', 'The place of the part would skew it: only turn, move or mirror it.');
  return ok({ isMirrored: handOf4(matrix) < 0 });
}

/**
 * Where all copies of a part stand, the part itself first.
 * @returns fails with `assembly/place` where a number is missing or a direction has no length, `assembly/copies` where there are too many or too few.
 */
export function standingsOf({
  at,
  facing,
  turnDeg = 0,
  copies = [],
  ownHand = 'left',
}: Placing): Result<readonly Standing[]> {
  const own = ownMatrix(at, facing, turnDeg);
  if (!own.ok) return own;
  let matrices: readonly Matrix4[] = [own.value];
  for (const rule of copies) {
    const moves = movesOf(rule);
    if (!moves.ok) return moves;
    if (matrices.length * moves.value.length > MOST_COPIES)
      return fail('assembly/copies', `That makes more than ${MOST_COPIES} copies of one part: ask for fewer.`);
    matrices = moves.value.flatMap((move) => matrices.map((matrix) => composed4(move, matrix)));
  }
  if (matrices.some((matrix) => !checkMatrix(matrix).ok))
    return fail(
      'assembly/far',
      'A copy would stand more than a kilometre away: check the distance from one to the next.',
    );
  const isPair = copies.some(({ kind }) => kind === 'mirror');
  return ok(
    matrices.map((matrix, i) => {
      const isMirrored = handOf4(matrix) < 0;
      return { number: i + 1, matrix, isMirrored, ...(isPair && { hand: isMirrored ? otherHand(ownHand) : ownHand }) };
    }),
  );
}

/** The words for how many to cut: `cut 8`, or `cut 4 left, 4 right`. */
export function cutWords(standings: readonly Standing[]): string {
  const count = (hand: Hand): number => standings.filter((one) => one.hand === hand).length;
  const [left, right] = [count('left'), count('right')];
  if (left + right === 0) return `cut ${standings.length}`;
  return `cut ${[left > 0 ? `${left} left` : '', right > 0 ? `${right} right` : ''].filter((word) => word !== '').join(', ')}`;
}

const otherHand = (hand: Hand): Hand => (hand === 'left' ? 'right' : 'left');

function ownMatrix(at: Triple, facing: Triple | undefined, turnDeg: number): Result<Matrix4> {
  const place = pointOf(at);
  if (place === null || !Number.isFinite(turnDeg))
    return fail('assembly/place', 'The place of the part lacks a number: give x, y, z and the turn.');
  const way = facing === undefined ? vec3(0, 0, 1) : directionOf(facing);
  if (way === null)
    return fail('assembly/place', 'The direction the part faces has no length: give one number that is not 0.');
  const turned = composed4(turnRound4(vec3(0, 0, 0), way, turnDeg), turnUpTo4(way));
  return ok(composed4(move4(place), turned));
}

/** The moves of a rule, the first of them none at all. */
function movesOf(rule: CopyRule): Result<readonly Matrix4[]> {
  if (rule.kind === 'once') return ok([IN_PLACE]);
  if (rule.kind === 'mirror') {
    const [point, normal] = [pointOf(rule.point), directionOf(rule.normal)];
    if (point === null || normal === null)
      return fail('assembly/place', 'The mirror lacks a point or a direction: give both.');
    return ok([IN_PLACE, mirror4(point, normal)]);
  }
  const { count } = rule;
  if (!Number.isInteger(count) || count < 1 || count > MOST_COPIES)
    return fail('assembly/copies', `Copies are counted from 1 to ${MOST_COPIES}: ${count} is none of these.`);
  const numbers = Array.from({ length: count }, (_, i) => i);
  if (rule.kind === 'line') {
    const step = pointOf(rule.stepMm);
    if (step === null || (count > 1 && directionOf(rule.stepMm) === null))
      return fail('assembly/place', 'The copies would all stand on one spot: give the way from one to the next.');
    return ok(numbers.map((i) => move4(vec3(i * step.x, i * step.y, i * step.z))));
  }
  const [point, axis] = [pointOf(rule.point), directionOf(rule.axis)];
  const stepDeg = rule.stepDeg ?? 360 / count;
  if (point === null || axis === null || !Number.isFinite(stepDeg) || (stepDeg === 0 && count > 1))
    return fail('assembly/place', 'The axis of the copies lacks a point, a direction or a turn: give all three.');
  return ok(numbers.map((i) => (i === 0 ? IN_PLACE : turnRound4(point, axis, (i * stepDeg) % 360))));
}

function pointOf(triple: Triple): Vec3 | null {
  const [x, y, z] = triple;
  return triple.length === 3 && triple.every((value) => Number.isFinite(value) && Math.abs(value) <= 1e12)
    ? vec3(x, y, z)
    : null;
}

/** A direction, or null where it has no length that can be told. */
function directionOf(triple: Triple): Vec3 | null {
  const point = pointOf(triple);
  return point !== null && Math.hypot(point.x, point.y, point.z) > 1e-9 ? point : null;
}

/** A mesh in its place; its faces look outward still where it is mirrored. */
export function placedMesh(mesh: Mesh, { matrix, isMirrored }: Pick<Standing, 'matrix' | 'isMirrored'>): Mesh {
  const positions = placedPoints4(matrix, mesh.positions);
  if (!isMirrored) return { ...mesh, positions };
  const triangles = mesh.triangles.slice();
  for (let t = 0; t < triangles.length; t += 3)
    [triangles[t + 1], triangles[t + 2]] = [triangles[t + 2], triangles[t + 1]];
  return { ...mesh, positions, triangles };
}
