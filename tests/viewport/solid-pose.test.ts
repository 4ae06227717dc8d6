import { describe, expect, it } from 'vitest';
import { SolidPose } from '../../src/viewport/solid-pose.ts';
import { pipeShape } from './roll-shapes.ts';

const THICK = 10;
const pipe = pipeShape(2, 60, 120, 16, 3);
const count = pipe.shape.length / 3;

/** Skins over a surface round the y axis: outward and inward by half the thickness. */
function skin(points: Float32Array, by: number): Float32Array {
  return points.map((_, i) => {
    const v = i - (i % 3);
    const away = Math.hypot(points[v], points[v + 2]);
    return points[i] * (i % 3 === 1 ? 1 : (away + by) / away);
  });
}
const flat = new Float32Array(pipe.shape.length);
for (let v = 0; v < count; v += 1) flat.set([pipe.flat[2 * v], pipe.flat[2 * v + 1], 0], 3 * v);
const raised = (by: number): Float32Array => flat.map((x, i) => (i % 3 === 2 ? by : x));

const pose = new SolidPose(
  pipe.triangles,
  pipe.shape,
  skin(pipe.shape, THICK / 2),
  skin(pipe.shape, -THICK / 2),
  flat,
  raised(THICK / 2),
  raised(-THICK / 2),
);

describe('foam carried along a bending surface', () => {
  const face = new Float32Array(pipe.shape.length);
  const back = new Float32Array(pipe.shape.length);

  it('is exact on the finished shape and on the flat piece', () => {
    pose.pose(pipe.shape, 0, face, back);
    const want = skin(pipe.shape, THICK / 2);
    for (let i = 0; i < want.length; i += 1) expect(face[i]).toBeCloseTo(want[i], 3);
    pose.pose(flat, 1, face, back);
    for (let v = 0; v < count; v += 1) {
      expect(face[3 * v + 2]).toBeCloseTo(THICK / 2, 4);
      expect(back[3 * v + 2]).toBeCloseTo(-THICK / 2, 4);
      expect(back[3 * v]).toBeCloseTo(pipe.flat[2 * v], 3);
    }
  });

  it('keeps its thickness on the way', () => {
    const half = pipeShape(1, 120, 120, 16, 3);
    pose.pose(half.shape, 0.5, face, back);
    for (let v = 0; v < count; v += 1) {
      const thick = Math.hypot(...[0, 1, 2].map((k) => face[3 * v + k] - back[3 * v + k]));
      expect(thick).toBeCloseTo(THICK, 1);
      expect(Math.hypot(face[3 * v], face[3 * v + 2])).toBeGreaterThan(Math.hypot(back[3 * v], back[3 * v + 2]));
    }
  });
});
