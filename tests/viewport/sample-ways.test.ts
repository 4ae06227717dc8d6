import { Vector3 } from 'three';
import { beforeAll, describe, expect, it } from 'vitest';
import { distanceToSegment } from '../../src/geom/distance-to-segment.ts';
import { sampleBench, type SampleBench } from './sample-bench.ts';

/** Of the slider. */
const STEP = 0.002;
const VALUES = Array.from({ length: 40 }, (_, i) => (3 * i) / 40 + 0.01);

/** What a corner goes at most in one step, where it goes 1.5 m on three stops and rolls on the way, mm. */
const MOST_STEP = 8;
/** A fold of a grooved piece is straight on paper and has a corner in its foam, mm. */
const MOST_OFF = 0.5;

// The helm, and the two parts of the kit.
describe.each(['helm', 'maul-head', 'lantern'])('pieces of the %s', (name) => {
  let bench: SampleBench;

  beforeAll(async () => {
    bench = await sampleBench(name);
  });

  it('never jump, reach through the bench top or are turned inside out, wherever the slider is', async () => {
    const { body } = bench.solid;
    const { positions } = body!.skins;
    let [farthest, lowest] = [0, Infinity];
    for (const value of VALUES) {
      await bench.pose(value);
      const before = positions.slice();
      for (let i = 1; i < before.length; i += 3) lowest = Math.min(lowest, before[i]);
      expect(body!.patches.map((_, i) => outwardOf(bench, i) > 0)).not.toContain(false);
      await bench.pose(value + STEP);
      for (let i = 0; i < before.length; i += 3)
        farthest = Math.max(
          farthest,
          Math.hypot(positions[i] - before[i], positions[i + 1] - before[i + 1], positions[i + 2] - before[i + 2]),
        );
    }
    expect(lowest).toBeGreaterThan(-1e-3);
    expect(farthest).toBeLessThan(MOST_STEP);
  });

  it('come down where their templates are traced, the same way round', async () => {
    await bench.pose(3);
    const { body, pieces } = bench.solid;
    for (const [i, patch] of body!.patches.entries()) {
      const { piece: at } = patch.shape;
      const piece = pieces!.pieces[at];
      const template = pieces!.templates.find((one) => one.piece === piece.id)!;
      const cut = template.drawing.strokes
        .filter(({ role }) => role === 'cut')
        .map(({ points }) => {
          const ring: number[] = [];
          for (let k = 0; k < points.length; k += 2) {
            const { x, z } = new Vector3(points[k], points[k + 1], 0).applyMatrix4(bench.places.sceneFromDrawing[at]);
            ring.push(x, z);
          }
          return ring;
        });
      const off = bordersOf(bench, i, piece.tracedSide).map(([x, z]) =>
        Math.min(...cut.map((ring) => away(ring, x, z))),
      );
      expect(Math.max(...off)).toBeLessThan(MOST_OFF);
    }
  });
});

/** How far the face of a patch lies outside of its back, summed over its triangles, mm3. */
function outwardOf({ solid }: SampleBench, patch: number): number {
  const { positions } = solid.body!.skins;
  const half = positions.length / 2;
  const [a, b, c, d] = [new Vector3(), new Vector3(), new Vector3(), new Vector3()];
  let sum = 0;
  for (const t of solid.body!.patches[patch].shape.meshTriangles) {
    a.fromArray(positions, 9 * t);
    b.fromArray(positions, 9 * t + 3).sub(a);
    c.fromArray(positions, 9 * t + 6).sub(a);
    d.fromArray(positions, half + 9 * t);
    sum += b.cross(c).dot(a.sub(d));
  }
  return sum;
}

/** Corners on the rim of a patch, x and z of the scene. */
function bordersOf({ solid }: SampleBench, patch: number, side: 'face' | 'back'): [number, number][] {
  const { positions } = solid.body!.skins;
  const { shape, borders } = solid.body!.patches[patch];
  const half = positions.length / 2;
  return [...borders].map((h) => {
    const [t, k] = [shape.meshTriangles[Math.floor(h / 3)], h % 3];
    const at = side === 'face' ? 9 * t + 3 * k : half + 9 * t + 3 * [0, 2, 1][k];
    return [positions[at], positions[at + 2]];
  });
}

function away(ring: readonly number[], x: number, z: number): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    least = Math.min(least, distanceToSegment(x, z, ring[i], ring[i + 1], ring[j], ring[j + 1]));
  }
  return least;
}
