import { beforeAll, describe, expect, it } from 'vitest';
import { costOrder } from '../../src/app/cost-actions.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import type { SeamCost } from '../../src/model/seam-cost.ts';
import { addSeamEdges, setScale } from '../../src/project/commands.ts';
import { expectOk } from '../support/expect-ok.ts';
import { SHADE, shadeObj } from '../support/shade-obj.ts';
import { makeWorkbench, openObj, shown } from '../support/tray-workbench.ts';

const { sides, rings } = SHADE;
const ring = (at: number): [number, number][] =>
  Array.from({ length: sides }, (_, i) => [at * sides + i, at * sides + ((i + 1) % sides)]);
const upright = (side: number): [number, number][] =>
  Array.from({ length: rings }, (_, i) => [i * sides + side, (i + 1) * sides + side]);

describe('what it would cost to join each seam', () => {
  let workbench: Workbench;
  beforeAll(async () => {
    ({ workbench } = makeWorkbench());
    await openObj(workbench, 'lamp shade', shadeObj());
    workbench.run(setScale({ by: 'unit', unit: 'mm' }));
    // Two halves, one above the other, each slit from rim to rim.
    workbench.run(addSeamEdges([...ring(3), ...upright(0)]));
    await shown(workbench);
  });

  const costs = async (stopAfter = Infinity): Promise<SeamCost[]> => {
    const list: SeamCost[] = [];
    const asked = workbench.workshop.seamCosts(8, (cost) => {
      list.push(cost);
      if (list.length >= stopAfter) void workbench.workshop.stopCosting();
    });
    expectOk(await asked);
    return list;
  };

  it('is nothing for the seam between two halves that roll out together, and dear for what closes a tube', async () => {
    const list = costOrder(await costs());
    expect(list).toHaveLength(3);
    const [cheapest, ...others] = list;
    expect(new Set(cheapest.patches).size).toBe(2);
    expect(cheapest.isFeasible).toBe(true);
    expect(Math.max(cheapest.stretchPct ?? 1, cheapest.squashPct ?? 1)).toBeLessThan(1e-6);
    for (const { patches, isFeasible, badness } of others) {
      expect(patches[0]).toBe(patches[1]);
      expect([isFeasible, badness > 0]).toEqual([false, true]);
    }
  });

  it('foretells what joining does', async () => {
    const [cheapest] = costOrder(await costs());
    const chain = workbench.bench.seams?.chains.find(({ id }) => id === cheapest.seam);
    expect(chain?.vertices.length).toBe(sides + 1);
    workbench.undo();
    workbench.run(addSeamEdges(upright(0)));
    await shown(workbench);
    const [patch] = workbench.bench.pieces?.patches ?? [];
    expect(patch.stretchSpread?.p99).toBeCloseTo(cheapest.stretchPct ?? 1, 6);
    workbench.undo();
    workbench.run(addSeamEdges([...ring(3), ...upright(0)]));
    await shown(workbench);
  });

  it('can be called off', async () => {
    expect((await costs(1)).length).toBeLessThan(3);
  });
});
