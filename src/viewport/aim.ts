import { Matrix4, Vector3, type PerspectiveCamera } from 'three';
import type { BenchFacing } from './bench-contract.ts';
import { Projection, type ScreenPoint } from './edge-finder.ts';

/** A line of sight through the scene. */
export interface Sight {
  readonly origin: Vector3;
  /** Length 1. */
  readonly direction: Vector3;
}

/** How the scene is seen: from a place of the picture to the scene, and back. */
export class Aim {
  readonly projection: Projection;
  readonly #camera: PerspectiveCamera;
  readonly #size: { readonly width: number; readonly height: number };

  /** @param camera already aimed, its matrices up to date. */
  constructor(camera: PerspectiveCamera, width: number, height: number) {
    this.#camera = camera;
    this.#size = { width, height };
    const clip = new Matrix4().multiplyMatrices(camera.projectionMatrix, camera.matrixWorldInverse);
    this.projection = new Projection(clip, width, height);
  }

  get eye(): Vector3 {
    return this.#camera.position;
  }

  /** The picture's right and up at a place, square to the line of sight to it. @param point  model space; so is what is returned. */
  facing(point: readonly [number, number, number], sceneFromModel: Matrix4): BenchFacing {
    const modelFromScene = sceneFromModel.clone().invert();
    const towards = this.eye
      .clone()
      .applyMatrix4(modelFromScene)
      .sub(new Vector3(...point))
      .normalize();
    const above = new Vector3().setFromMatrixColumn(this.#camera.matrixWorld, 1).transformDirection(modelFromScene);
    const right = above.cross(towards).normalize();
    const up = towards.cross(right);
    return { right: [right.x, right.y, right.z], up: [up.x, up.y, up.z] };
  }

  /** What is looked along at a place of the picture. */
  sightAt({ x, y }: ScreenPoint): Sight {
    const direction = new Vector3((2 * x) / this.#size.width - 1, 1 - (2 * y) / this.#size.height, 0.5)
      .unproject(this.#camera)
      .sub(this.#camera.position)
      .normalize();
    return { origin: this.#camera.position.clone(), direction };
  }
}
