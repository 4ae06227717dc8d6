import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { QUIET_WORK } from '../../../src/base/work.ts';
import { cutAlong } from '../../../src/mesh/lines/cut-along.ts';
import type { SurfacePoint } from '../../../src/model/seams.ts';
import type { SurfaceLine } from '../../../src/model/surface-line.ts';
import { readModel } from '../../../src/steps/read/read-model.ts';
import { meshFromModel } from '../../../src/steps/read/size.ts';
import { pathLineSteps } from '../../../src/steps/seams/path-line.ts';
import { facePolygons } from '../../../src/steps/seams/surface-points.ts';
import { cone, objOf, tube } from '../../reference/handbook/polygon-solids.ts';
import { expectCut } from '../../support/expect-cut.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { hostilePaths, type Sculpt } from '../../support/hostile-paths.ts';
import { block } from '../../support/run-solid.ts';

/** How many paths are drawn in all: enough for each of the ways below on each of the sculpts. */
const PATHS = Number(process.env.FOAMLOFT_HOSTILE_PATHS ?? 120);

async function sculptOf(bytes: Uint8Array): Promise<Sculpt> {
  const model = expectOk(await readModel(bytes, 'a.obj', QUIET_WORK));
  return { mesh: meshFromModel(model, 1), polygons: facePolygons(model) };
}

const sample = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../../samples/${name}.obj`, import.meta.url)));

const linesOf = (sculpt: Sculpt, paths: readonly (readonly SurfacePoint[])[]): readonly SurfaceLine[] =>
  paths.flatMap((points, i) => {
    const line = runAtOnce(pathLineSteps(sculpt.mesh, sculpt.polygons, { points }, i + 1));
    if (!line.ok) expect(line.problem.code).toMatch(/^seams\/(no-path|path-short|path-point)$/);
    return line.ok ? [line.value] : [];
  });

it('paths drawn any way there is leave the surface where it is, or say what is wrong', async () => {
  const sculpts = await Promise.all(
    [
      objOf(block([0, 0, 0], [30, 40, 50])),
      objOf(tube(9, 50, 30, () => 120)),
      objOf(cone(24, 60, 80)),
      sample('bracer'),
      sample('helm'),
    ].map(sculptOf),
  );
  const rand = seededRandom(7);
  for (let drawn = 0, round = 0; drawn < PATHS; round += 1) {
    const sculpt = sculpts[round % sculpts.length];
    const { name, paths } = hostilePaths(sculpt, Math.floor(round / sculpts.length), rand);
    drawn += paths.length;
    try {
      expectCut(sculpt.mesh, cutAlong(sculpt.mesh, linesOf(sculpt, paths)));
    } catch (error) {
      throw new Error(`round ${round}, ${name}: ${JSON.stringify(paths)}`, { cause: error });
    }
  }
});

it.each<[string, SurfacePoint]>([
  ['NaN', { face: 0, bary: [NaN, 0.5, 0.5, 0] }],
  ['more than all', { face: 0, bary: [Infinity, 0, 0, 0] }],
  ['no weights at all', { face: 0, bary: [] }],
  ['half a corner', { vertex: 1.5 }],
  ['a corner before the first', { vertex: -1 }],
])('a place of %s is told', async (_, point) => {
  const { mesh, polygons } = await sculptOf(objOf(block([0, 0, 0], [30, 40, 50])));
  const line = runAtOnce(pathLineSteps(mesh, polygons, { points: [{ vertex: 0 }, point] }, 3));
  expect(line.ok ? null : [line.problem.code, line.problem.text]).toEqual([
    'seams/path-point',
    expect.stringContaining('Point 2 of path 3'),
  ]);
});
