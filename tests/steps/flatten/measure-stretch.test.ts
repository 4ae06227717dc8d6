import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { measureStretch } from '../../../src/steps/flatten/measure-stretch.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { meshOf } from '../../support/meshes.ts';
import { flatten, onePatch, referencePatch } from './flatten-support.ts';

/** A square of 10 mm in two triangles, standing upright in space, and its flat shape enlarged by x and y and turned. */
function square(x: number, y: number, angle: number) {
  const mesh = meshOf(
    [
      [0, 0, 0],
      [10, 0, 0],
      [10, 0, 10],
      [0, 0, 10],
    ],
    [[0, 1, 2, 3]],
  );
  const patch = onePatch(mesh);
  const flat = new Float64Array(8);
  for (const [local, v] of patch.meshVertices.entries()) {
    const [px, py] = [x * mesh.positions[3 * v], y * mesh.positions[3 * v + 2]];
    flat[2 * local] = Math.cos(angle) * px - Math.sin(angle) * py;
    flat[2 * local + 1] = Math.sin(angle) * px + Math.cos(angle) * py;
  }
  return measureStretch(restShapes(patch, mesh.positions), flat);
}

describe('measureStretch', () => {
  it('tells what the foam must do: a flat square drawn 1 / 1.25 wide and 2 high is pulled 25 % along x and gathered to half along y', () => {
    const { major, minor, majorAngle, stretchPct, squashPct } = square(0.8, 2, 0);
    for (const t of [0, 1]) {
      expect(major[t]).toBeCloseTo(1.25, 14);
      expect(minor[t]).toBeCloseTo(0.5, 14);
      expect(majorAngle[t]).toBeCloseTo(0, 14);
    }
    expect(stretchPct.max).toBeCloseTo(25, 12);
    expect(squashPct.mean).toBeCloseTo(50, 12);
  });

  it.each([0.3, -0.7, 1.2, 3])('turns the direction with the flat shape, here by %f', (angle) => {
    const { major, majorAngle } = square(0.8, 2, angle);
    expect(major[0]).toBeCloseTo(1.25, 13);
    expect(Math.abs(Math.sin(majorAngle[0] - angle))).toBeLessThan(1e-12);
  });

  it('loses no digits where hardly anything stretches', () => {
    const { major, minor } = square(1 / (1 + 1e-9), 1, 0.4);
    expect(major[0] - 1).toBeCloseTo(1e-9, 14);
    expect(minor[0] - 1).toBeCloseTo(0, 14);
  });

  it('finds the figure that 99 % of the area do not exceed as sorting does', async () => {
    for (const name of ['mask-1k', 'spot-flank', 'mask-collapsed-1k']) {
      const mesh = referencePatch(name);
      const rest = restShapes(onePatch(mesh), mesh.positions);
      const piece = await flatten(mesh);
      const sorted = [...piece.major.keys()]
        .filter((t) => rest.empty[t] === 0)
        .sort((s, t) => piece.major[s] - piece.major[t]);
      const measured = sorted.reduce((sum, t) => sum + rest.area[t], 0);
      let covered = 0;
      const at99 = sorted.find((t) => (covered += rest.area[t]) >= 0.99 * measured);
      expect(piece.stretchPct.p99).toBeCloseTo(100 * (piece.major[at99 ?? -1] - 1), 10);
      const mean = sorted.reduce((sum, t) => sum + (100 * (piece.major[t] - 1) * rest.area[t]) / measured, 0);
      expect(piece.stretchPct.mean).toBeCloseTo(mean, 9);
    }
  });

  it('finds it also where one triangle is stretched beyond all others', async () => {
    const mesh = referencePatch('hemisphere-500');
    const patch = onePatch(mesh);
    const rest = restShapes(patch, mesh.positions);
    const { uv } = await flatten(mesh);
    const [a, b, c] = rest.corners;
    for (const axis of [0, 1])
      uv[2 * c + axis] = 0.499999 * (uv[2 * a + axis] + uv[2 * b + axis]) + 2e-6 * uv[2 * c + axis];
    const { major, stretchPct } = measureStretch(rest, uv);
    const sorted = [...major.keys()].sort((s, t) => major[s] - major[t]);
    expect(stretchPct.max).toBeGreaterThan(1e4);
    let covered = 0;
    const at99 = sorted.find((t) => (covered += rest.area[t]) >= 0.99 * rest.totalArea);
    expect(stretchPct.p99).toBeCloseTo(100 * (major[at99 ?? -1] - 1), 9);
  });

  it('measures nothing on a triangle without area', () => {
    const mesh = meshOf(
      [
        [0, 0, 0],
        [10, 0, 0],
        [5, 0, 0],
        [5, 8, 0],
      ],
      [
        [0, 1, 3],
        [1, 0, 2],
      ],
    );
    const patch = onePatch(mesh);
    const rand = seededRandom(2);
    const flat = Float64Array.from(
      [...patch.meshVertices].flatMap((v) => [
        mesh.positions[3 * v],
        mesh.positions[3 * v + 1] - (v === 2 ? 1 + rand() : 0),
      ]),
    );
    const { major, minor, squashPct } = measureStretch(restShapes(patch, mesh.positions), flat);
    expect([major[1], minor[1]]).toEqual([1, 1]);
    expect(squashPct.max).toBeCloseTo(0, 12);
  });
});
