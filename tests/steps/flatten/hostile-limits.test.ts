import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { orient2d } from '../../../src/geom/predicates.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { Patch } from '../../../src/model/patch.ts';
import { checkFlatPiece } from '../../../src/steps/flatten/check-flat-piece.ts';
import { flattenPatch } from '../../../src/steps/flatten/flatten-patch.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { meshOf, tubeMesh } from '../../support/meshes.ts';
import { evened, held, lay, plain } from './flat-outline.ts';
import { onePatch } from './flatten-support.ts';
import { fingerMesh, squeezedSheet } from './hostile-meshes.ts';
import { needleDisc } from './needle-disc.ts';

it('asks for a seam where a closed finger is 400 times as long as thick', async () => {
  const mesh = fingerMesh(8000, 60, 8);
  expectProblem(await flattenPatch(onePatch(mesh), mesh.positions, {}, QUIET_WORK), 'flatten/no-start');
});

/** Where laying flat once gave way: each comment tells how. */
describe('limits', () => {
  // The mean of one figure is rounded once more than the figure.
  it('a single triangle has a mean stretch no greater than its greatest', async () => {
    await lay(
      meshOf(
        [
          [5, 14, 16],
          [10, 10, 20],
          [15, 1, 19],
        ],
        [[0, 1, 2]],
      ),
      plain,
    );
  });

  // A needle thinner than a millionth is opened to it, and nothing is measured on it.
  it('needles too thin to see count for nothing in stretch and squash', async () => {
    const flat = (await lay(squeezedSheet(0), plain)).piece;
    for (const share of [1e-7, 1e-9, 1e-11]) {
      const { stretchPct, squashPct, energy } = (await lay(squeezedSheet(share), plain)).piece;
      expect(stretchPct.max).toBeCloseTo(flat.stretchPct.max, 3);
      expect(squashPct.max).toBeCloseTo(flat.squashPct.max, 3);
      expect(energy).toBeCloseTo(flat.energy, 5);
    }
  });

  // A held edge of a billionth of a mm as a spring of its own would be so stiff that nothing else could move.
  it('held edges of next to no length do not keep a piece from settling', async () => {
    for (const share of [1e-9, 1e-10, 1e-12, 1e-14]) {
      const { piece } = await lay(squeezedSheet(share), held);
      expect(piece.solve.converged, `${share}`).toBe(true);
      expect(piece.stretchPct.max, `${share}`).toBeLessThan(4.2);
    }
  });

  // A triangle opened from nothing is no bad spot.
  it('the worst is evened out among needles too', async () => {
    for (const seed of [1003, 1006, 1060, 1251, 1259]) {
      const { piece } = await lay(needleDisc(seededRandom(seed)), evened);
      expect(piece.solve.converged, `seed ${seed}`).toBe(true);
    }
  });

  // A tube without a slit, 20 mm thick: its net is crushed so far that the curvature cannot be factored.
  it('a tube much too long to lie flat is refused in words, or laid flat', async () => {
    for (const [sides, rings, step] of [
      [3, 25, 100],
      [6, 23, 400],
      [6, 31, 200],
    ]) {
      const mesh = tubeMesh(sides, 10, rings * step, rings);
      const result = await flattenPatch(onePatch(mesh), mesh.positions, {}, QUIET_WORK);
      if (!result.ok) expect(result.problem.code).toBe('flatten/no-start');
    }
  });

  // Such a start has no flip by exact arithmetic, but its energy overflows or nearly so.
  it('an earlier result with a triangle next to empty is not begun from', async () => {
    const mesh = spike();
    const patch = onePatch(mesh);
    for (let fortieth = 1; fortieth < 40; fortieth += 1) {
      const start = thinStart(patch, fortieth / 40);
      const piece = expectOk(await flattenPatch(patch, mesh.positions, { start }, QUIET_WORK));
      checkFlatPiece(patch, piece);
      expect(piece.solve.converged, `${fortieth}`).toBe(true);
    }
  });
});

/** Three triangles round a corner 9 mm high. */
const spike = (): Mesh =>
  meshOf(
    [
      [0, 0, 0],
      [10, 0, 0],
      [3, 7, 0],
      [4, 3, 9],
    ],
    [
      [0, 1, 3],
      [1, 2, 3],
      [2, 0, 3],
    ],
  );

/** {@link spike} laid flat, its middle as near to its second side as exact arithmetic allows without a flip. */
function thinStart(patch: Patch, along: number): Float64Array {
  const corners = [0, 0, 10, 0, 3, 7, 4, 3];
  const target = [10 - 7 * along, 7 * along];
  const at = (share: number): Float64Array => {
    const uv = new Float64Array(8);
    for (const [local, v] of patch.meshVertices.entries()) {
      for (const axis of [0, 1]) {
        const [from, to] = [corners[2 * v + axis], v === 3 ? target[axis] : corners[2 * v + axis]];
        uv[2 * local + axis] = from + share * (to - from);
      }
    }
    return uv;
  };
  const isFlipped = (uv: Float64Array): boolean =>
    [0, 3, 6].some((t) => {
      const [a, b, c] = [0, 1, 2].map((k) => 2 * patch.triangles[t + k]);
      return !(orient2d(uv[a], uv[a + 1], uv[b], uv[b + 1], uv[c], uv[c + 1]) > 0);
    });
  let [low, high] = [0, 2];
  for (let i = 0; i < 80; i += 1) {
    const middle = (low + high) / 2;
    if (isFlipped(at(middle))) high = middle;
    else low = middle;
  }
  return at(low);
}
