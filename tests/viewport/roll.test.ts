import { describe, expect, it } from 'vitest';
import { QUIET_WORK } from '../../src/base/work.ts';
import { rollKeys, type RollKeys } from '../../src/viewport/roll-keys.ts';
import { halfedgesAcross, rollTree } from '../../src/viewport/roll-tree.ts';
import { coneShape, domeShape, gridShape, pipeShape, type RollShape } from './roll-shapes.ts';

async function rolled({ triangles, shape, flat }: RollShape): Promise<RollKeys> {
  const across = await halfedgesAcross(triangles, shape.length / 3, QUIET_WORK);
  const tree = await rollTree(triangles, shape, flat, across, QUIET_WORK);
  return rollKeys(triangles, shape, flat, tree, QUIET_WORK);
}

const lengthOf = (p: ArrayLike<number>, size: number, v: number, w: number): number =>
  Math.hypot(...Array.from({ length: size }, (_, k) => p[size * w + k] - p[size * v + k]));

/** The greatest difference of an edge from its length between shape and flat, as a share, over all steps and the ways between them. */
function worstEdge({ triangles, shape, flat }: RollShape, keys: RollKeys): number {
  let worst = 0;
  const last = keys.steps.length - 1;
  for (let half = 0; half <= 2 * last; half += 1) {
    const [a, b] = [keys.steps[Math.floor(half / 2)], keys.steps[Math.ceil(half / 2)]];
    const points = a.map((x, i) => (x + b[i]) / 2);
    const share = half / 2 / last;
    for (let h = 0; h < triangles.length; h += 1) {
      const [v, w] = [triangles[h], triangles[h % 3 === 2 ? h - 2 : h + 1]];
      const want = lengthOf(shape, 3, v, w) * (1 - share) + lengthOf(flat, 2, v, w) * share;
      worst = Math.max(worst, Math.abs(lengthOf(points, 3, v, w) / want - 1));
    }
  }
  return worst;
}

/** Half the greatest extent of a step across x. */
const widthOf = (points: Float32Array): number => {
  const xs = points.filter((_, i) => i % 3 === 0);
  return Math.max(...xs) - Math.min(...xs);
};

describe('a piece that rolls flat', () => {
  const pipe = pipeShape(5, 60, 120, 40, 3);

  it('begins as the finished shape', async () => {
    const keys = await rolled(pipe);
    const [first] = keys.steps;
    for (let v = 0; v < first.length; v += 3) {
      for (let k = 0; k < 3; k += 1) {
        // Columns of the turn times the point, plus the centre.
        const there =
          first[v] * keys.shapeFromRoll[k] +
          first[v + 1] * keys.shapeFromRoll[3 + k] +
          first[v + 2] * keys.shapeFromRoll[6 + k] +
          keys.shapeCentre[k];
        expect(there).toBeCloseTo(pipe.shape[v + k], 3);
      }
    }
  });

  it('ends as the flat piece', async () => {
    const keys = await rolled(pipe);
    const last = keys.steps[keys.steps.length - 1];
    for (let v = 0; v < last.length / 3; v += 1) {
      expect(last[3 * v] + keys.flatCentre[0]).toBeCloseTo(pipe.flat[2 * v], 3);
      expect(last[3 * v + 1] + keys.flatCentre[1]).toBeCloseTo(pipe.flat[2 * v + 1], 3);
      expect(last[3 * v + 2]).toBeCloseTo(0, 6);
    }
  });

  it('bends and does not stretch on the way: a strip round a pipe', async () => {
    expect(worstEdge(pipe, await rolled(pipe))).toBeLessThan(0.02);
  });

  it('opens steadily', async () => {
    const widths = (await rolled(pipe)).steps.map(widthOf);
    expect(widths[widths.length - 1]).toBeGreaterThan(2 * widths[0]);
    for (let i = 4; i < widths.length; i += 1) expect(widths[i]).toBeGreaterThan(widths[i - 1]);
  });

  it('bends and does not stretch: a cone', async () => {
    const cone = coneShape(2, 5.5, 60, 200, 32, 5);
    expect(worstEdge(cone, await rolled(cone))).toBeLessThan(0.04);
  });

  it('bends at its folds: two panels', async () => {
    const roof = gridShape(
      2,
      1,
      (u, v) => [Math.abs(u - 0.5) < 0.1 ? 0 : u < 0.5 ? -70 : 70, 100 * v, u === 0.5 ? 70 : 0],
      (u, v) => [2 * u * 70 * Math.SQRT2, 100 * v],
    );
    const keys = await rolled(roof);
    expect(worstEdge(roof, keys)).toBeLessThan(0.01);
    // Half way each panel still leans by half of its 45 degrees against the other.
    const middle = keys.steps[5];
    const normal = (t: number): number[] => {
      const [a, b, c] = [0, 1, 2].map((k) => 3 * roof.triangles[3 * t + k]);
      const u = [0, 1, 2].map((k) => middle[b + k] - middle[a + k]);
      const v = [0, 1, 2].map((k) => middle[c + k] - middle[a + k]);
      const n = [u[1] * v[2] - u[2] * v[1], u[2] * v[0] - u[0] * v[2], u[0] * v[1] - u[1] * v[0]];
      return n.map((x) => x / Math.hypot(...n));
    };
    const cos = normal(0).reduce((sum, x, k) => sum + x * normal(2)[k], 0);
    expect((Math.acos(cos) * 180) / Math.PI).toBeCloseTo(45, 3);
  });

  it('keeps its lengths as well as a dome can', async () => {
    const dome = domeShape(100, 0.7, 16);
    const keys = await rolled(dome);
    for (const step of keys.steps) for (const x of step) expect(Number.isFinite(x)).toBe(true);
    expect(worstEdge(dome, keys)).toBeLessThan(0.12);
  });
});

describe('the tree of hinges', () => {
  it('hangs every triangle on one that comes before it', async () => {
    const { triangles, shape, flat } = coneShape(2, 5.5, 60, 200, 12, 4);
    const across = await halfedgesAcross(triangles, shape.length / 3, QUIET_WORK);
    const tree = await rollTree(triangles, shape, flat, across, QUIET_WORK);
    expect([...tree.order].sort((a, b) => a - b)).toEqual(Array.from({ length: triangles.length / 3 }, (_, t) => t));
    const place = new Map([...tree.order].map((t, i) => [t, i]));
    for (const t of tree.order.slice(1)) {
      const on = Math.floor(tree.across[tree.hinge[t]] / 3);
      expect(place.get(on)).toBeLessThan(place.get(t) ?? -1);
    }
  });

  it('measures convex folds as positive', async () => {
    const { triangles, shape, flat } = pipeShape(3, 60, 100, 6, 1);
    const across = await halfedgesAcross(triangles, shape.length / 3, QUIET_WORK);
    const tree = await rollTree(triangles, shape, flat, across, QUIET_WORK);
    const sharp = [...tree.foldRad].filter((fold) => Math.abs(fold) > 1e-4);
    expect(sharp.length).toBe(5);
    for (const fold of sharp) expect(fold).toBeCloseTo(0.5, 5);
  });
});
