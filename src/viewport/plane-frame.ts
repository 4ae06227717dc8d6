import { type Box3, type Matrix4, Vector3 } from 'three';
import type { BenchPlane } from './bench-contract.ts';
import { planeAxes, UPS } from './plane-moves.ts';

/** Frame round what a plane cuts, in the scene: its middle, its two axes and the direction square to it (length 1), and half its sizes, mm. */
export interface PlaneFrame {
  readonly centre: Vector3;
  readonly u: Vector3;
  readonly v: Vector3;
  readonly normal: Vector3;
  readonly halfU: number;
  readonly halfV: number;
}

/** Frame beyond what is cut, as a share of its size, and at least so many mm. */
const MARGIN_SHARE = 0.08;
const LEAST_MARGIN = 8;
/** The plane where it stands in the scene. */
export function scenePlane(plane: BenchPlane, sceneFromModel: Matrix4): { point: Vector3; normal: Vector3 } {
  return {
    point: new Vector3(...plane.point).applyMatrix4(sceneFromModel),
    normal: new Vector3(...plane.normal).transformDirection(sceneFromModel),
  };
}

/** The plane in the numbers of the model again. */
export function modelPlane(point: Vector3, normal: Vector3, sceneFromModel: Matrix4): BenchPlane {
  const back = sceneFromModel.clone().invert();
  const [p, n] = [point.clone().applyMatrix4(back), normal.clone().transformDirection(back)];
  return { point: [p.x, p.y, p.z], normal: [n.x, n.y, n.z] };
}

/**
 * The frame that stands round a box where a plane cuts it.
 * @param box  of what is cut, in the scene.
 */
export function frameRound(plane: { readonly point: Vector3; readonly normal: Vector3 }, box: Box3): PlaneFrame {
  const { normal } = plane;
  const axes = planeAxes(normal, UPS.y);
  const [u, v] = [new Vector3().copy(axes.u), new Vector3().copy(axes.v)];
  const middle = box.getCenter(new Vector3());
  const centre = middle.clone().addScaledVector(normal, plane.point.clone().sub(middle).dot(normal));
  const half = box.getSize(new Vector3()).multiplyScalar(0.5);
  const reach = (axis: Vector3): number => {
    const most = Math.abs(axis.x) * half.x + Math.abs(axis.y) * half.y + Math.abs(axis.z) * half.z;
    return most + Math.max(LEAST_MARGIN, MARGIN_SHARE * most);
  };
  return { centre, u, v, normal: normal.clone(), halfU: reach(u), halfV: reach(v) };
}
