import { Box3, PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { looked } from '../../src/viewport/look-moves.ts';
import {
  between,
  eyeOf,
  FIELD_OF_VIEW,
  framed,
  held,
  panned,
  turned,
  zoomed,
  type Orbit,
} from '../../src/viewport/orbit.ts';

const orbit: Orbit = { target: new Vector3(10, 20, 30), yaw: 0.4, pitch: 0.3, distance: 500 };
const bounds = { box: new Box3(new Vector3(-100, 0, -100), new Vector3(100, 200, 100)), nearest: 50, farthest: 2000 };

/** Where a camera at this view sees a point: x right, y up, -1 to 1. */
function seen(view: Orbit, point: Vector3, aspect = 1.5): Vector3 {
  const camera = new PerspectiveCamera((FIELD_OF_VIEW * 180) / Math.PI, aspect, 1, 10_000);
  camera.position.copy(eyeOf(view));
  camera.lookAt(view.target);
  camera.updateMatrixWorld();
  return point.clone().project(camera);
}

describe('the eye', () => {
  it('stands in front at yaw 0, to the right at a quarter turn, above at full pitch', () => {
    const at = (yaw: number, pitch: number): Vector3 => eyeOf({ target: new Vector3(), yaw, pitch, distance: 1 });
    expect(at(0, 0).distanceTo(new Vector3(0, 0, 1))).toBeLessThan(1e-12);
    expect(at(Math.PI / 2, 0).distanceTo(new Vector3(1, 0, 0))).toBeLessThan(1e-12);
    expect(at(1, Math.PI / 2).distanceTo(new Vector3(0, 1, 0))).toBeLessThan(1e-12);
  });

  it('keeps its distance and its target when turned, and stops at straight up and down', () => {
    const view = turned(orbit, 0.5, 10);
    expect(view.target).toEqual(orbit.target);
    expect(eyeOf(view).distanceTo(view.target)).toBeCloseTo(500, 9);
    expect(view.pitch).toBeLessThan(Math.PI / 2);
    expect(turned(orbit, 0, -10).pitch).toBeGreaterThan(-Math.PI / 2);
  });

  it('moves so that what it looks at follows the pointer', () => {
    const view = panned(orbit, 40, -25, 600);
    const at = seen(view, orbit.target);
    expect((at.x * 900) / 2).toBeCloseTo(40, 6);
    expect((-at.y * 600) / 2).toBeCloseTo(-25, 6);
  });

  it('comes nearer to a point that stays where it is in the picture', () => {
    const point = new Vector3(60, 40, 10);
    const before = seen(orbit, point);
    const view = zoomed(orbit, 0.5, point, bounds);
    expect(view.distance).toBe(250);
    const after = seen(view, point);
    expect(after.x).toBeCloseTo(before.x, 9);
    expect(after.y).toBeCloseTo(before.y, 9);
  });

  it('never leaves its bounds', () => {
    const lost = held({ ...orbit, target: new Vector3(1e6, -50, 3), distance: 1e9 }, bounds);
    expect(lost.target.toArray()).toEqual([100, 0, 3]);
    expect(lost.distance).toBe(2000);
    expect(zoomed(orbit, 1e-9, orbit.target, bounds).distance).toBe(50);
  });

  it('frames a box from any side: all corners inside, two opposite rims at the margin', () => {
    const box = new Box3(new Vector3(-300, 0, -150), new Vector3(300, 250, 700));
    for (const [yaw, pitch, aspect] of [
      [0, 0.1, 1.5],
      [0.5, 0.4, 1.5],
      [2.5, 0.9, 0.5],
      [1, -1.2, 3],
    ]) {
      const view = framed([box], yaw, pitch, aspect, 0.1);
      const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i) =>
        seen(view, new Vector3(i & 1 ? 300 : -300, i & 2 ? 250 : 0, i & 4 ? 700 : -150), aspect),
      );
      const across = corners.map(({ x }) => Math.abs(x));
      const along = corners.map(({ y }) => Math.abs(y));
      const most = Math.max(...across, ...along);
      expect(most).toBeLessThan(0.905);
      expect(most).toBeGreaterThan(0.85);
    }
  });

  it('travels the short way round', () => {
    const to = { ...orbit, yaw: orbit.yaw + 2 * Math.PI - 0.2, distance: 2000 };
    expect(between(orbit, to, 0.5).yaw).toBeCloseTo(orbit.yaw - 0.1, 9);
    expect(between(orbit, to, 0.5).distance).toBeCloseTo(1000, 9);
    expect(between(orbit, to, 1).yaw).toBe(to.yaw);
  });

  it('looks from six sides and moves by keys', () => {
    expect(looked(orbit, 'left').yaw).toBe(-Math.PI / 2);
    expect(looked(orbit, 'top').pitch).toBeCloseTo(Math.PI / 2, 2);
    expect(looked(orbit, 'bottom').pitch).toBeCloseTo(-Math.PI / 2, 2);
    expect(looked(orbit, 'turn-right').yaw).toBeGreaterThan(orbit.yaw);
    expect(looked(orbit, 'up').pitch).toBeGreaterThan(orbit.pitch);
    expect(looked(looked(orbit, 'nearer'), 'farther').distance).toBeCloseTo(500, 9);
  });
});
