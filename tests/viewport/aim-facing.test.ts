import { Matrix4, PerspectiveCamera, Vector3 } from 'three';
import { expect, it } from 'vitest';
import { Aim } from '../../src/viewport/aim.ts';
import { forAll } from '../support/for-all.ts';

it('a place is faced square to its line of sight, whichever way the model stands in the scene', () =>
  forAll(
    (rand) => Array.from({ length: 12 }, () => 2 * rand() - 1),
    (n) => {
      const camera = new PerspectiveCamera(40, 1.5, 1, 1000);
      camera.position.set(200 + 50 * n[0], 50 * n[1], 200 * n[2]);
      camera.lookAt(20 * n[3], 20 * n[4], 20 * n[5]);
      camera.updateMatrixWorld();
      const sceneFromModel = new Matrix4().makeRotationX(-Math.PI / 2).setPosition(10 * n[6], 5, 10 * n[7]);
      const point = [20 * n[8], 20 * n[9], 20 * n[10]] as const;
      const aim = new Aim(camera, 900, 600);
      const { right, up } = aim.facing(point, sceneFromModel);
      const inScene = (way: readonly number[]): Vector3 => new Vector3(...way).transformDirection(sceneFromModel);
      const sight = aim.eye
        .clone()
        .sub(new Vector3(...point).applyMatrix4(sceneFromModel))
        .normalize();
      const [r, u] = [inScene(right), inScene(up)];
      expect(r.clone().cross(u).distanceTo(sight)).toBeLessThan(1e-9);
      // Level in the picture: right has nothing of the camera's up.
      expect(Math.abs(r.dot(new Vector3().setFromMatrixColumn(camera.matrixWorld, 1)))).toBeLessThan(1e-9);
      expect(r.dot(new Vector3().setFromMatrixColumn(camera.matrixWorld, 0))).toBeGreaterThan(0);
    },
    { runs: 50 },
  ));
