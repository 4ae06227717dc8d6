import { composed4, IN_PLACE, move4, placed4, turnRound4, type Matrix4 } from '../geom/matrix4.ts';
import { vec3, type Vec3 } from '../geom/vec.ts';
import { boxOfPoints3, type Box3 } from '../mesh/measure.ts';

/** Where a part stands in the assembly, mm, and how far it is turned about its own upright, degrees counter-clockwise from above. */
export interface PartPlace {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly turnDeg: number;
}

const AXES = { x: vec3(1, 0, 0), y: vec3(0, 1, 0), z: vec3(0, 0, 1) } as const;

/** The place that a matrix says. One that is tipped or mirrored besides has its turn from where its x (else its y) has come to. */
export function placeOf(matrix: Matrix4): PartPlace {
  const isUpright = Math.hypot(matrix[0], matrix[1]) > 1e-9;
  const turn = isUpright ? Math.atan2(matrix[1], matrix[0]) : Math.atan2(-matrix[4], matrix[5]);
  return { x: matrix[12], y: matrix[13], z: matrix[14], turnDeg: (180 * turn) / Math.PI };
}

/** A matrix at another place; what it is tipped or mirrored besides stays. */
export function atPlace(matrix: Matrix4, place: Partial<PartPlace>): Matrix4 {
  const before = placeOf(matrix);
  const { x, y, z, turnDeg } = { ...before, ...place };
  const turned = turnDeg === before.turnDeg ? matrix : turnedBy(matrix, 'z', turnDeg - before.turnDeg);
  return [...turned.slice(0, 12), x, y, z, 1];
}

/** A matrix turned about an upright of the assembly through where the part stands. A quarter turn is exact. */
export function turnedBy(matrix: Matrix4, axis: keyof typeof AXES, angleDeg: number): Matrix4 {
  const turned = composed4(turnRound4(vec3(0, 0, 0), AXES[axis], angleDeg), matrix);
  return [...turned.slice(0, 12), ...matrix.slice(12)];
}

/** Free bench between a new part and what stands there, mm. */
const BESIDE_MM = 40;
/** What brings a part's own z to what is up. */
const UPRIGHT: Readonly<Record<'x' | 'y' | 'z', Matrix4>> = {
  x: turnRound4(vec3(0, 0, 0), AXES.y, 90),
  y: turnRound4(vec3(0, 0, 0), AXES.x, -90),
  z: IN_PLACE,
};

/**
 * Where a new part stands: upright beside all that is there, on the same ground.
 * @param standing  corners of what is there, packed x y z, mm.
 * @param own       box round the part in its own frame, mm; null where that is not known.
 */
export function placeBeside(standing: readonly ArrayLike<number>[], own: Box3 | null, up: 'x' | 'y' | 'z'): Matrix4 {
  const boxes = standing.filter((points) => points.length > 0).map(boxOfPoints3);
  if (boxes.length === 0) return UPRIGHT[up];
  const there = boxOfPoints3(boxes.flatMap(({ min, max }) => [min, max].flatMap(({ x, y, z }) => [x, y, z])));
  const turned = boxOfPoints3(cornersOf(own ?? A_POINT).flatMap((corner) => coordinates(placed4(UPRIGHT[up], corner))));
  const side = up === 'x' ? 'y' : 'x';
  const by = (axis: 'x' | 'y' | 'z'): number => {
    if (axis === side) return there.max[axis] + BESIDE_MM - turned.min[axis];
    if (axis === up) return there.min[axis] - turned.min[axis];
    return (there.min[axis] + there.max[axis] - turned.min[axis] - turned.max[axis]) / 2;
  };
  return composed4(move4(vec3(rounded(by('x')), rounded(by('y')), rounded(by('z')))), UPRIGHT[up]);
}

const A_POINT: Box3 = { min: vec3(0, 0, 0), max: vec3(0, 0, 0) };

const coordinates = ({ x, y, z }: Vec3): number[] => [x, y, z];

const cornersOf = ({ min, max }: Box3): Vec3[] =>
  [min.x, max.x].flatMap((x) => [min.y, max.y].flatMap((y) => [min.z, max.z].map((z) => vec3(x, y, z))));

/** To a tenth: a figure that is read. */
const rounded = (mm: number): number => Math.round(10 * mm) / 10;
