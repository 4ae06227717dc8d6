import { describe, expect, it } from 'vitest';
import { runAtOnce } from '../../../src/base/stepwise.ts';
import { applyRepairs } from '../../../src/steps/read/repair.ts';
import { faceAreaSteps } from '../../../src/steps/read/face-areas.ts';
import { orientSteps } from '../../../src/steps/read/orient-faces.ts';
import { sideLinkSteps } from '../../../src/steps/read/side-links.ts';
import type { SourceModel } from '../../../src/model/source-model.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { together } from '../../support/run-solid.ts';
import { cone, gutter, tube, type Solid } from '../../reference/handbook/polygon-solids.ts';
import { facesOf, modelOf, objOf } from './text-model.ts';

const inward = (solid: Solid): Solid => ({ ...solid, faces: solid.faces.map((face) => face.toReversed()) });
const read = ({ corners, faces }: Solid): Promise<SourceModel> =>
  modelOf(
    objOf(
      corners.map((corner) => [...corner]),
      faces.map((face) => [...face]),
    ),
  );

/** How many shells are found to look inward. */
async function inwardOf(solid: Solid): Promise<number> {
  const model = await read(solid);
  const links = runAtOnce(sideLinkSteps(model));
  return runAtOnce(orientSteps(model, links, runAtOnce(faceAreaSteps(model)))).insideOut.length;
}

const horn = cone(14, 40, 200);
const sleeve = tube(12, 45, 60, () => 200);

describe('open surfaces that look inward', () => {
  it.each([
    ['a horn', horn],
    ['a sleeve open at both ends', sleeve],
  ])('%s is found so, and right when it is turned', async (_, solid) => {
    expect(await inwardOf(solid)).toBe(0);
    expect(await inwardOf(inward(solid))).toBe(1);
    const turned = expectOk(applyRepairs(await read(inward(solid)), [{ kind: 'turn-faces' }]));
    const outward = await read(solid);
    const sorted = (model: SourceModel): string[] => facesOf(model).map((face) => [...face].sort().join(' '));
    expect(sorted(turned)).toEqual(sorted(outward));
    expect(await inwardOf({ ...solid, faces: facesOf(turned) })).toBe(0);
  });

  it('each by itself, wherever it lies', async () => {
    const moved = (solid: Solid): Solid => ({
      ...solid,
      corners: solid.corners.map(([x, y, z]) => [x + 1000, y - 3000, z + 500] as const),
    });
    expect(await inwardOf(together(moved(horn), inward(sleeve)))).toBe(1);
    expect(await inwardOf(together(moved(inward(horn)), inward(sleeve)))).toBe(2);
  });

  it('are left as they are where either side may be meant: a gutter, a short sleeve', async () => {
    for (const solid of [gutter(12, 60, 2, 200), tube(24, 60, 60, () => 60)]) {
      expect(await inwardOf(solid)).toBe(0);
      expect(await inwardOf(inward(solid))).toBe(0);
    }
  });
});
