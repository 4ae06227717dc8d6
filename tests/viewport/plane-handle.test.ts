import { Box3, Matrix4, PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { Aim } from '../../src/viewport/aim.ts';
import type { BenchPlane } from '../../src/viewport/bench-contract.ts';
import { PlaneHandle } from '../../src/viewport/plane-handle.ts';
import { frameRound, scenePlane } from '../../src/viewport/plane-frame.ts';
import { movedPlane, PLANE_STEP } from '../../src/viewport/plane-moves.ts';

const BOX = new Box3(new Vector3(-100, 0, -60), new Vector3(100, 200, 60));
const LEVEL: BenchPlane = { point: [0, 80, 0], normal: [0, 1, 0] };
const IN_PLACE = new Matrix4();

/** The handle as it is seen from in front, above and to the right, in a picture of 800 by 600. */
function seenHandle(plane: BenchPlane, sceneFromModel = IN_PLACE): { handle: PlaneHandle; aim: Aim } {
  const camera = new PerspectiveCamera(30, 800 / 600, 1, 5000);
  camera.position.set(350, 420, 700);
  camera.lookAt(0, 100, 0);
  camera.updateMatrixWorld();
  const handle = new PlaneHandle();
  handle.set(plane, sceneFromModel, BOX);
  return { handle, aim: new Aim(camera, 800, 600) };
}

const on = (aim: Aim, point: Vector3): { x: number; y: number } => {
  const at = aim.projection.at(point.toArray(), 0);
  if (at === null) throw new Error('behind the eye');
  return at;
};

describe('a plane in hand', () => {
  it('stands in a frame round what it cuts', () => {
    const { centre, halfU, halfV } = frameRound(scenePlane(LEVEL, IN_PLACE), BOX);
    expect(centre.toArray()).toEqual([0, 80, 0]);
    // Half of 200 and of 120, and 8 mm or 8 per cent more.
    expect([halfU, halfV]).toEqual([108, 68]);
  });

  it('is moved along its normal by its arrow and by any side, as far as the pointer goes', () => {
    const { handle, aim } = seenHandle(LEVEL);
    const { centre, u, v, halfU, halfV } = handle.frame!;
    for (const [a, b] of [
      [1, -1],
      [-1, 0.5],
    ]) {
      const place = centre
        .clone()
        .addScaledVector(u, a * halfU)
        .addScaledVector(v, b * halfV);
      const grip = handle.gripAt(on(aim, place), aim.projection);
      expect(grip).toBe('shift');
      expect(handle.grab('shift', aim.sightAt(on(aim, handle.frame!.centre)))).toBe(true);
      // Pointing 25 mm farther along the normal moves it 25 mm: seen along lines of sight that pass the arrow's own normal.
      const arrow = centre.clone().addScaledVector(u, halfU).addScaledVector(v, -halfV);
      handle.letGo();
      handle.grab('shift', aim.sightAt(on(aim, arrow)));
      const moved = handle.dragTo(aim.sightAt(on(aim, arrow.clone().setY(arrow.y + 25))));
      expect(moved?.point[1]).toBeCloseTo(105, 6);
      expect(moved?.normal[1]).toBeCloseTo(1, 12);
      handle.letGo();
    }
  });

  it('is leaned by its knobs so that it holds what is pointed at', () => {
    for (const grip of ['turn-u', 'turn-v'] as const) {
      const { handle, aim } = seenHandle(LEVEL);
      const { centre, u, v, normal, halfU, halfV } = handle.frame!;
      const arm = grip === 'turn-v' ? u.clone().multiplyScalar(halfU) : v.clone().multiplyScalar(halfV);
      expect(handle.gripAt(on(aim, centre.clone().add(arm)), aim.projection)).toBe(grip);
      expect(handle.grab(grip, aim.sightAt(on(aim, centre.clone().add(arm))))).toBe(true);
      const goal = centre.clone().add(arm).addScaledVector(normal, 30);
      const moved = handle.dragTo(aim.sightAt(on(aim, goal)))!;
      const way = goal.clone().sub(new Vector3(...moved.point));
      expect(way.dot(new Vector3(...moved.normal))).toBeCloseTo(0, 6);
      expect(moved.normal[1]).toBeCloseTo(Math.cos(Math.atan2(30, arm.length())), 6);
    }
  });

  it('speaks of the model, however that stands on the bench', () => {
    const turned = new Matrix4().makeRotationX(-Math.PI / 2).setPosition(5, 40, -3);
    const { handle, aim } = seenHandle({ point: [0, 0, 40], normal: [0, 0, 1] }, turned);
    expect(handle.frame?.normal.y).toBeCloseTo(1, 12);
    const { centre, u, v, halfU, halfV } = handle.frame!;
    const arrow = centre.clone().addScaledVector(u, halfU).addScaledVector(v, -halfV);
    handle.grab('shift', aim.sightAt(on(aim, arrow)));
    const moved = handle.dragTo(aim.sightAt(on(aim, arrow.clone().setY(arrow.y - 12))));
    expect(moved?.point[2]).toBeCloseTo(28, 6);
    expect(moved?.normal[2]).toBeCloseTo(1, 9);
  });

  it('lets go of what is put away, and is not found there', () => {
    const { handle, aim } = seenHandle(LEVEL);
    const corner = handle.frame!.centre.clone().setX(108);
    handle.set(null, IN_PLACE, BOX);
    expect(handle.gripAt(on(aim, corner), aim.projection)).toBeNull();
    expect(handle.grab('shift', aim.sightAt({ x: 400, y: 300 }))).toBe(false);
    expect(handle.object.visible).toBe(false);
  });
});

describe('a plane moved by keys', () => {
  const LEANS = ['lean-left', 'lean-right', 'lean-up', 'lean-down'] as const;

  it('goes a step along its normal and leans by five degrees', () => {
    expect(movedPlane(LEVEL, 'forth').point).toEqual([0, 81, 0]);
    expect(movedPlane(LEVEL, 'back', PLANE_STEP.coarseMm).point).toEqual([0, 70, 0]);
    for (const move of LEANS) {
      const { normal, point } = movedPlane(movedPlane(LEVEL, move), move);
      expect(point).toEqual(LEVEL.point);
      expect(Math.hypot(...normal)).toBeCloseTo(1, 12);
      expect((Math.acos(normal[1]) * 180) / Math.PI).toBeCloseTo(10, 9);
    }
  });

  it('comes back by the opposite keys', () => {
    for (const normal of [
      [0, 1, 0],
      [0.6, 0, 0.8],
      [-0.8, 0.36, 0.48],
    ] as const) {
      const start: BenchPlane = { point: [3, 4, 5], normal };
      const there = movedPlane(movedPlane(movedPlane(start, 'lean-left'), 'lean-up'), 'forth', 7);
      const back = movedPlane(movedPlane(movedPlane(there, 'back', 7), 'lean-down'), 'lean-right');
      back.normal.forEach((x, i) => expect(x).toBeCloseTo(start.normal[i], 12));
      back.point.forEach((x, i) => expect(x).toBeCloseTo(start.point[i], 12));
    }
  });
});
