import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { graphOfTriangles } from '../../../src/geom/sparse-graph.ts';
import { graphOfPairs } from '../../../src/geom/sparse-graph.ts';
import { multiplyBlocks } from '../../../src/geom/sparse-multiply.ts';
import { planFactor } from '../../../src/geom/sparse-plan.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { circleStart } from '../../../src/steps/flatten/circle-start.ts';
import { energyOf } from '../../../src/steps/flatten/dirichlet-energy.ts';
import { findSlots, flatSystem, type FlatSystem } from '../../../src/steps/flatten/flat-system.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { countFlips } from '../../../src/steps/flatten/flips.ts';
import { isClearOfItself, keepApart } from '../../../src/steps/flatten/keep-apart.ts';
import { measureStretch } from '../../../src/steps/flatten/measure-stretch.ts';
import { minimiseApart } from '../../../src/steps/flatten/minimise-apart.ts';
import { overlapsOf } from '../../../src/steps/flatten/overlaps-of.ts';
import { restShapes } from '../../../src/steps/flatten/rest-shapes.ts';
import { saddleHookMesh, wideRampMesh } from '../../support/curled-meshes.ts';
import { meshOf } from '../../support/meshes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { flatten, onePatch, referencePatch } from './flatten-support.ts';
import { gridMesh } from './grid-mesh.ts';

type Seams = readonly (readonly [number, number])[];

function ready(mesh: Mesh, seams: Seams = []) {
  const patch = onePatch(mesh, seams);
  const rest = restShapes(patch, mesh.positions);
  const system = flatSystem(patch, rest, graphOfTriangles(rest.vertexCount, patch.triangles));
  return { patch, rest, system, term: keepApart(patch, system) };
}

/** Laid flat from the circle with borders kept apart and nothing else asked for. */
async function laidApart(mesh: Mesh, seams: Seams = []) {
  const { patch, rest, system, term } = ready(mesh, seams);
  const start = await circleStart(patch, system, QUIET_WORK);
  if (start === null) throw new Error('no start');
  const cost = { weights: rest.weight, squashPrice: 1, evenOut: null };
  const found = await minimiseApart(
    patch,
    system,
    (joined) => ({ system: joined, cost, terms: [] }),
    start,
    QUIET_WORK,
  );
  if (found === null) throw new Error('crushed');
  const { flat, converged } = found;
  return {
    converged,
    energy: energyOf(rest, flat),
    barrier: term.costOf(flat),
    flips: countFlips(patch.triangles, flat),
    overlaps: overlapsOf(patch, flat).overlapCount,
    stretch: measureStretch(rest, flat).stretchPct,
  };
}

/** The model's own x and y as a flat shape, moved by `move`. */
function fromAbove(mesh: Mesh, seams: Seams = [], move: (x: number, y: number) => [number, number] = (x, y) => [x, y]) {
  const { patch } = ready(mesh, seams);
  return Float64Array.from(
    Array.from(patch.meshVertices).flatMap((v) => move(mesh.positions[3 * v], mesh.positions[3 * v + 1])),
  );
}

/** A flat U of squares of 10 mm, its limbs 10 mm apart and `tall` squares high: x from 0 to 30 mm. */
function uMesh(tall = 3): Mesh {
  const columns = 4;
  const points = Array.from(
    { length: columns * (tall + 2) },
    (_, i) => [10 * (i % columns), 10 * Math.floor(i / columns), 0] as const,
  );
  const faces: number[][] = [];
  for (let row = 0; row <= tall; row += 1) {
    for (let column = 0; column < 3; column += 1) {
      const at = columns * row + column;
      if (row === 0 || column !== 1) faces.push([at, at + 1, at + columns + 1, at + columns]);
    }
  }
  return meshOf(points, faces);
}

/** A flat square of 80 mm with a slit from the middle to the middle of one side. */
const SLIT_SQUARE = 8;
function slitSquare(): { mesh: Mesh; seams: Seams } {
  const n = SLIT_SQUARE;
  const at = (i: number, j: number): number => (n + 1) * i + j;
  const points = Array.from(
    { length: (n + 1) * (n + 1) },
    (_, i) => [10 * Math.floor(i / (n + 1)), 10 * (i % (n + 1)), 0] as const,
  );
  const faces: number[][] = [];
  for (let i = 0; i < n; i += 1) {
    for (let j = 0; j < n; j += 1) faces.push([at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
  }
  return {
    mesh: meshOf(points, faces),
    seams: Array.from({ length: n / 2 }, (_, i) => [at(i, n / 2), at(i + 1, n / 2)]),
  };
}

/** The limbs of a U leaning towards each other by `lean` of what would make their tips meet, and a little unrest. */
function leaning(lean: number, seed: number): Float64Array {
  const rand = seededRandom(seed);
  return fromAbove(uMesh(), [], (x, y) => {
    const towards = y <= 10 ? 0 : (lean * 5 * (y - 10)) / 30;
    return [x + (x < 15 ? towards : -towards) + 0.2 * (rand() - 0.5), y + 0.2 * (rand() - 0.5)];
  });
}

describe('keepApart', () => {
  it('costs nothing on shapes that are clear of themselves', () => {
    const flatU = fromAbove(uMesh());
    expect(ready(uMesh()).term.costOf(flatU)).toBe(0);
    const strip = uMesh(12);
    expect(ready(strip).term.costOf(fromAbove(strip))).toBe(0);
  });

  it('costs more the nearer limbs come, and Infinity once they cross', () => {
    const { term } = ready(uMesh());
    const costs = [0.9, 0.95, 0.98, 0.99].map((lean) =>
      term.costOf(fromAbove(uMesh(), [], (x, y) => [y <= 10 ? x : x + ((x < 15 ? 1 : -1) * lean * (y - 10)) / 6, y])),
    );
    expect(costs[0]).toBe(0); // 1 mm apart
    expect(costs[1]).toBeGreaterThan(0);
    expect(costs[2]).toBeGreaterThan(costs[1]);
    expect(costs[3]).toBeGreaterThan(costs[2]);
    expect(term.costOf(leaning(1.2, 1))).toBe(Infinity);
  });

  it('has the gradient that differences of its cost have', () => {
    const { term, system } = ready(uMesh());
    for (let seed = 1; seed <= 5; seed += 1) {
      const flat = leaning(0.96, seed);
      const gradient = new Float64Array(flat.length);
      term.addDerivatives(flat, gradient, new Float64Array(4 * system.plan.entryRows.length), false);
      const most = Math.max(...gradient.map(Math.abs));
      expect(most).toBeGreaterThan(0);
      const h = 1e-6;
      for (let i = 0; i < flat.length; i += 1) {
        const rise = term.costOf(flat.with(i, flat[i] + h)) - term.costOf(flat.with(i, flat[i] - h));
        expect(Math.abs(gradient[i] - rise / (2 * h)) / most).toBeLessThan(1e-6);
      }
    }
  });

  it('has the curvature of its cost along the line between point and edge, and is stiffer where the plan does not join them', () => {
    const { term, system, patch, rest } = ready(uMesh());
    const everyPair = Array.from({ length: rest.vertexCount ** 2 }, (_, i) => [
      i % rest.vertexCount,
      Math.floor(i / rest.vertexCount),
    ]);
    const plan = planFactor(graphOfPairs(rest.vertexCount, everyPair.flat()));
    const joined: FlatSystem = { rest, plan, slots: findSlots(plan, rest.corners) };
    const full = keepApart(patch, joined);
    const flat = fromAbove(uMesh(), [], (x, y) => [y <= 10 ? x : x + ((x < 15 ? 1 : -1) * 0.96 * (y - 10)) / 6, y]);
    const curvature = (of: typeof term, { plan: over }: FlatSystem, way: Float64Array): number => {
      const values = new Float64Array(4 * over.entryRows.length);
      of.addDerivatives(flat, new Float64Array(flat.length), values, true);
      const product = new Float64Array(way.length);
      multiplyBlocks(over, values, way, product);
      return product.reduce((sum, value, i) => sum + value * way[i], 0);
    };
    // One limb straight towards the other: points and edges keep facing each other.
    const push = flat.map((_, i) => (i % 2 === 0 && flat[i] < 15 && flat[i + 1] > 10 ? 1 : 0));
    const at = (share: number): number => term.costOf(flat.map((x, i) => x + share * push[i]));
    const h = 1e-4;
    const bend = (at(h) - 2 * at(0) + at(-h)) / (h * h);
    expect(bend).toBeGreaterThan(0);
    // The limbs lean, so that the lines turn a little.
    expect(curvature(full, joined, push) / bend).toBeGreaterThan(0.9);
    expect(curvature(full, joined, push) / bend).toBeLessThan(1.1);
    const rand = seededRandom(7);
    for (let trial = 0; trial < 50; trial += 1) {
      const way = flat.map(() => rand() - 0.5);
      const truly = curvature(full, joined, way);
      expect(truly).toBeGreaterThanOrEqual(-1e-12);
      expect(curvature(term, system, way)).toBeGreaterThanOrEqual(truly - 1e-9);
    }
    // Both limbs together cost nothing, and the joined plan knows it.
    expect(
      curvature(
        full,
        joined,
        flat.map((_, i) => 1 - (i % 2)),
      ),
    ).toBeCloseTo(0, 12);
  });

  it('stops a step where a limb runs into the other, or would pass through it', () => {
    const { term } = ready(uMesh());
    const flat = fromAbove(uMesh());
    // The right limb's upper squares move left by 40 mm: they meet the left limb after 10.
    const step = flat.map((_, i) => (i % 2 === 0 && flat[i] > 15 && flat[i + 1] > 15 ? -40 : 0));
    expect(term.stepLimit?.(flat, step)).toBeLessThanOrEqual(0.25);
    // A flip comes first: the squares are 10 mm wide at their foot.
    const slow = flat.map((_, i) => (i % 2 === 0 && flat[i + 1] > 15 ? (flat[i] > 15 ? -6 : 6) : 0));
    expect(term.stepLimit?.(flat, slow)).toBeCloseTo(10 / 12, 12);
    expect(
      term.stepLimit?.(
        flat,
        slow.map((x) => -x),
      ),
    ).toBeGreaterThan(1);
  });

  it('lets the sides of a dart close to about a degree, touch at its end, and lie at the same place of the sculpt', () => {
    const { mesh, seams } = slitSquare();
    const { term } = ready(mesh, seams);
    const { patch } = ready(mesh, seams);
    // Open by `angle` about the end of the slit, the far side as it is.
    const opened = (angle: number): Float64Array => {
      const flat = fromAbove(mesh, seams);
      const bySide = new Map<number, number>();
      patch.triangles.forEach((v, h) => {
        const t = h - (h % 3);
        const middle = [0, 1, 2].reduce((sum, k) => sum + flat[2 * patch.triangles[t + k] + 1] / 3, 0);
        bySide.set(v, middle);
      });
      for (let v = 0; v < flat.length / 2; v += 1) {
        const [x, y] = [flat[2 * v] - 40, flat[2 * v + 1] - 40];
        if (x >= 0) continue;
        const turn =
          ((bySide.get(v) ?? 0) > 40 ? -1 : 1) *
          (angle / 2) *
          Math.max(0, 1 - Math.abs(Math.atan2(y, -x)) / (Math.PI / 2));
        flat[2 * v] = 40 + x * Math.cos(turn) - y * Math.sin(turn);
        flat[2 * v + 1] = 40 + x * Math.sin(turn) + y * Math.cos(turn);
      }
      return flat;
    };
    expect(term.costOf(opened(0.03))).toBe(0);
    expect(term.costOf(opened(0.004))).toBeGreaterThan(0);
  });

  it('takes a shape to begin from whose borders are clear, not one that crosses itself or whose dart is shut', () => {
    const { patch, system } = ready(uMesh());
    expect(isClearOfItself(patch, system, fromAbove(uMesh()))).toBe(true);
    expect(isClearOfItself(patch, system, leaning(0.93, 1))).toBe(true);
    expect(isClearOfItself(patch, system, leaning(1.2, 1))).toBe(false);
    const { mesh, seams } = slitSquare();
    const slit = ready(mesh, seams);
    expect(isClearOfItself(slit.patch, slit.system, fromAbove(mesh, seams))).toBe(false);
  });

  it('raises no alarm on borders full of needles and empty triangles', () => {
    const mesh = referencePatch('mask-collapsed-1k');
    const { term, rest } = ready(mesh);
    expect(rest.empty.includes(1)).toBe(true);
    return flatten(mesh).then(({ uv }) => expect(term.costOf(uv)).toBe(0));
  });

  it('raises no alarm on a limb narrower than a knife wants', () => {
    const strip = wideRampMesh(0.5, 40, 1, 40, 40.4);
    const { term } = ready(strip);
    return flatten(strip).then(({ uv }) => expect(term.costOf(uv)).toBe(0));
  });
});

describe('minimiseApart', () => {
  it('lays a ramp of more than a turn in a spiral, its stretch told as it is', async () => {
    const ramp = wideRampMesh(1.3, 60, 5);
    expect((await flatten(ramp)).overlaps.length).toBeGreaterThan(0);
    const { converged, energy, barrier, flips, overlaps, stretch } = await laidApart(ramp);
    expect({ converged, flips, overlaps }).toEqual({ converged: true, flips: 0, overlaps: 0 });
    expect(energy).toBeLessThan(4.0025);
    expect(barrier).toBeLessThan(1e-3);
    expect(stretch.max).toBeGreaterThan(1);
    expect(stretch.max).toBeLessThan(15);
  });

  it('keeps the limbs of a C on a saddle beside each other', async () => {
    const hook = saddleHookMesh();
    const plain = await flatten(hook);
    expect(plain.overlaps.length).toBeGreaterThan(0);
    const { converged, energy, flips, overlaps } = await laidApart(hook);
    expect({ converged, flips, overlaps }).toEqual({ converged: true, flips: 0, overlaps: 0 });
    expect(energy).toBeGreaterThan(plain.energy);
    expect(energy).toBeLessThan(plain.energy + 0.02);
  });

  it('leaves a slit in a plane all but closed', async () => {
    const { mesh, seams } = slitSquare();
    const { converged, energy, overlaps } = await laidApart(mesh, seams);
    expect({ converged, overlaps }).toEqual({ converged: true, overlaps: 0 });
    expect(energy).toBeLessThan(4.0005);
  });

  it('finds the plain minimum where no borders come near', async () => {
    const cap = referencePatch('hemisphere-500');
    const [plain, apart] = [await flatten(cap), await laidApart(cap)];
    expect(apart.energy).toBeCloseTo(plain.energy, 10);
  });
});

/** A dome of 80 mm with a slit of 40 mm across its middle: laid flat, the sides of the slit want to lie over each other. */
function slitDome(): { mesh: Mesh; seams: Seams } {
  const mesh = gridMesh(16, 16, (i, j) => {
    const [x, y] = [5 * (i - 8), 5 * (j - 8)];
    return [x, y, -0.006 * (x * x + y * y)];
  });
  const seams = Array.from({ length: 8 }, (_, i) => [17 * 8 + i + 4, 17 * 8 + i + 5] as const);
  return { mesh, seams };
}

it('keeps the sides of a slit inside a dome from lying over each other, though no edge crosses another there', async () => {
  const { mesh, seams } = slitDome();
  const { patch, system } = ready(mesh, seams);
  const lay = async (wish: boolean) =>
    expectOk(await flattenPatch(patch, mesh.positions, { keepApart: wish }, QUIET_WORK));
  const [plain, apart] = [await lay(false), await lay(true)];
  expect(plain.overlapCount).toBeGreaterThan(0);
  expect(isClearOfItself(patch, system, plain.uv)).toBe(false);
  expect(isClearOfItself(patch, system, apart.uv)).toBe(true);
  expect([apart.overlapCount, apart.flipped, apart.solve.converged]).toEqual([0, 0, true]);
});
