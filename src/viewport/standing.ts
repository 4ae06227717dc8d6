import { Box3, Matrix4, Vector3 } from 'three';
import type { UpAxis } from './bench-contract.ts';

/** Size at which a sculpt without a known size is shown, longest side in mm of the scene. */
const UNKNOWN_SIZE = 300;

/**
 * Stands the sculpt on the bench: its up is up, its middle is over the origin, and it touches the bench, or hangs over it where other parts reach
 * farther down.
 * @param points  packed xyz of everything solid, model space.
 * @param isSized false while the file's numbers are not mm: it is then shown at a size that fits.
 * @param beside  packed xyz of what stands with it in the prop, model space.
 * @returns `box` is round the sculpt alone.
 */
export function standOnBench(
  points: readonly Float32Array[],
  up: UpAxis,
  isSized: boolean,
  beside: readonly Float32Array[] = [],
): { matrix: Matrix4; box: Box3 } {
  const turn = UP_TURNS[up]();
  const box = boxRound(points);
  if (box.isEmpty()) box.set(new Vector3(), new Vector3(1, 1, 1));
  box.applyMatrix4(turn);
  const size = box.getSize(new Vector3());
  const scale = isSized ? 1 : UNKNOWN_SIZE / Math.max(size.x, size.y, size.z, 1e-9);
  const middle = box.getCenter(new Vector3());
  const place = new Matrix4()
    .makeScale(scale, scale, scale)
    .multiply(new Matrix4().makeTranslation(-middle.x, -Math.min(box.min.y, lowestOf(beside, up)), -middle.z));
  return { matrix: place.clone().multiply(turn), box: box.applyMatrix4(place) };
}

/** How far down things reach when their up is up, model space; Infinity where there is none. */
export const lowestOf = (points: readonly Float32Array[], up: UpAxis): number =>
  boxRound(points).applyMatrix4(UP_TURNS[up]()).min.y;

function boxRound(points: readonly Float32Array[]): Box3 {
  const box = new Box3();
  const point = new Vector3();
  for (const list of points) {
    for (let i = 0; i < list.length; i += 3) box.expandByPoint(point.set(list[i], list[i + 1], list[i + 2]));
  }
  return box;
}

/** Files with z up have their front towards -y; with x up, towards +z. */
const UP_TURNS: Readonly<Record<UpAxis, () => Matrix4>> = {
  x: () => new Matrix4().makeRotationZ(Math.PI / 2),
  y: () => new Matrix4(),
  z: () => new Matrix4().makeRotationX(-Math.PI / 2),
};
