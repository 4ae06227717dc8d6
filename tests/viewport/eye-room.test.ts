import { Box3, Sphere, Vector3 } from 'three';
import { beforeAll, describe, expect, it } from 'vitest';
import { forAll } from '../support/for-all.ts';
import { allowed, clearOf, isUnder, type EyeRoom } from '../../src/viewport/eye-room.ts';
import { looked } from '../../src/viewport/look-moves.ts';
import { eyeOf, framed, panned, turned, zoomed, type Orbit, type OrbitBounds } from '../../src/viewport/orbit.ts';
import { sampleBench, type SampleBench } from './sample-bench.ts';

const THICK = clearOf(6);

describe.each(['helm', 'bracer'])('the eye at the %s', (name) => {
  let bench: SampleBench;
  let bounds: OrbitBounds;
  let room: EyeRoom;

  beforeAll(async () => {
    bench = await sampleBench(name);
    await bench.pose(0);
    const { box, body } = bench.solid;
    const ball = box.getBoundingSphere(new Sphere());
    bounds = { box: box.clone().expandByScalar(ball.radius / 4), nearest: 30, farthest: 16 * ball.radius };
    room = { clearMm: THICK, at: (place, most) => body?.distanceTo(place, most) ?? most };
  });

  /** One of the ways the eye is moved: by a drag, a wheel or a pinch at a place of the foam, sideways, or by a key. */
  const moved = (orbit: Orbit, drawn: readonly number[]): Orbit => {
    const [which, at, one, other] = drawn;
    const { facePoints } = bench.solid.body!;
    const place = new Vector3().fromArray(facePoints, 3 * Math.floor((at * facePoints.length) / 3));
    const keys = ['turn-left', 'turn-right', 'up', 'down', 'nearer', 'farther'] as const;
    const ways = [
      () => turned(orbit, 3 * (one - 0.5), 3 * (other - 0.5)),
      () => zoomed(orbit, Math.exp(2 * (one - 0.7)), place, bounds),
      () => panned(orbit, 800 * (one - 0.5), 800 * (other - 0.5), 600),
      () => looked(orbit, keys[Math.floor(keys.length * one)]),
    ];
    return ways[Math.floor(ways.length * which)]();
  };

  it('is never in foam nor under the bench top, whatever is done', () =>
    forAll(
      (rand) => Array.from({ length: 40 }, () => [rand(), rand(), rand(), rand()]),
      (gestures) => {
        let orbit = framed([bench.solid.box], 0.3, 0.4, 1.5, 0.1);
        for (const drawn of gestures) {
          orbit = allowed(moved(orbit, drawn), bounds, room, isUnder(orbit));
          expect(eyeOf(orbit).y).toBeGreaterThan(0);
          // Nothing within foam is farther from its nearest skin than half the thickness.
          expect(room.at(eyeOf(orbit), THICK)).toBeGreaterThan(THICK / 2);
          expect(bounds.box.containsPoint(orbit.target)).toBe(true);
        }
      },
    ));
});

describe('the eye', () => {
  const bounds = { box: new Box3(new Vector3(-200, 0, -200), new Vector3(200, 300, 200)), nearest: 30, farthest: 4000 };
  const orbit: Orbit = { target: new Vector3(0, 100, 0), yaw: 0, pitch: 0.2, distance: 600 };
  /** A wall of foam 6 mm thick at z 300 to 306. */
  const wall: EyeRoom = { clearMm: 12, at: ({ z }, most) => Math.min(most, Math.abs(z - 300), Math.abs(z - 306)) };
  const none: EyeRoom = { clearMm: 12, at: (_, most) => most };

  it('stops just over the bench top, and may be under it where that was asked for', () => {
    const low = turned(orbit, 0, -1);
    expect(eyeOf(allowed(low, bounds, none, false)).y).toBeCloseTo(6, 6);
    expect(allowed(low, bounds, none, true)).toEqual(low);
  });

  it('is where it was sent, to frame what lies flat on the bench', () => {
    const flat = new Box3(new Vector3(-300, 0, 200), new Vector3(250, 6, 700));
    const wide = {
      box: new Box3(new Vector3(-600, -300, -500), new Vector3(600, 600, 900)),
      nearest: 30,
      farthest: 9000,
    };
    for (const [yaw, pitch, aspect] of [
      [0.34, 0.5, 1.2],
      [0.34, 0.44, 0.6],
      [2, 1.2, 2],
    ]) {
      const view = framed([flat], yaw, pitch, aspect, 0.06);
      expect(allowed(view, wide, none, false)).toEqual(view);
    }
  });

  it('stops before a wall it comes to, and is let through one it is past', () => {
    const before = { ...orbit, pitch: 0, distance: 310 };
    expect(eyeOf(allowed(before, bounds, wall, false)).z).toBeCloseTo(318, 6);
    expect(eyeOf(allowed({ ...before, distance: 295 }, bounds, wall, false)).z).toBeCloseTo(288, 6);
    expect(allowed(orbit, bounds, wall, false)).toEqual(orbit);
  });
});
