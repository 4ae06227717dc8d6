import { beforeAll, describe, expect, it, vi } from 'vitest';
import { findAnew, isMovable, moveStep, nudgeStep, orderWithStep, seamsOfStep } from '../../src/app/gluing-actions.ts';
import { GluingFeed } from '../../src/app/gluing-feed.ts';
import { GLUING_WORDS } from '../../src/app/gluing-words.ts';
import type { Workbench } from '../../src/app/workbench.ts';
import type { ShopView } from '../../src/worker/shop-api.ts';
import { WAIT_MS } from '../support/time-limits.ts';
import { makeWorkbench, openPartedTray, shown } from '../support/tray-workbench.ts';

let workbench: Workbench;

/** The work at the bench, of the last result. */
async function fetched(before = workbench.view.gluing.shop): Promise<ShopView> {
  await shown(workbench);
  return await vi.waitFor(() => {
    const { shop } = workbench.view.gluing;
    if (shop === null || shop === before) throw new Error('not yet');
    return shop;
  }, WAIT_MS);
}

const titles = (shop: ShopView): readonly string[] => shop.steps.map(({ title }) => title);

describe('the order of gluing of a tray', () => {
  let shop: ShopView;
  beforeAll(async () => {
    ({ workbench } = makeWorkbench());
    const feed = new GluingFeed(workbench);
    workbench.addEventListener('change', () => feed.follow());
    await openPartedTray(workbench);
    shop = await fetched(null);
    expect(shop.steps.length).toBeGreaterThan(3);
  });

  it('names every seam of the wall once, step by step', () => {
    const seams = shop.gluing.steps.flatMap((step) => seamsOfStep(shop, step));
    expect(seams).toEqual(shop.order);
    expect(new Set(shop.order.map(({ seam }) => seam)).size).toBe(shop.order.length);
    expect(shop.gluing.steps.every((step) => isMovable(shop, step))).toBe(true);
  });

  it('moves a step whole, and not to where it is', () => {
    const [first, second] = shop.gluing.steps;
    const moved = [...seamsOfStep(shop, second), ...seamsOfStep(shop, first)];
    expect(orderWithStep(shop, 2, 1)?.slice(0, moved.length)).toEqual(moved);
    expect(orderWithStep(shop, 1, 3)?.slice(0, moved.length)).toEqual(moved);
    expect(orderWithStep(shop, 2, 2)).toBeNull();
    expect(orderWithStep(shop, 2, 3)).toBeNull();
    expect(orderWithStep(shop, 1, shop.gluing.steps.length + 1)?.slice(-1)).toEqual(seamsOfStep(shop, first).slice(-1));
  });

  it('takes a move as one change, keeps the step chosen where it comes to stand, and can be found anew', async () => {
    const before = titles(shop);
    const seam = seamsOfStep(shop, shop.gluing.steps[1])[0].seam;
    await nudgeStep(workbench, 2, -1);
    const after = await fetched();
    expect(workbench.part?.gluing).toHaveLength(shop.order.length);
    expect(after.gluing.steps[0].runs[0].seam).toBe(seam);
    expect(workbench.view.choice).toEqual({ kind: 'step', step: 1 });
    workbench.undo();
    expect(titles(await fetched())).toEqual(before);
    workbench.redo();
    await fetched();
    findAnew(workbench);
    expect(titles(await fetched())).toEqual(before);
    expect(workbench.part?.gluing).toBeUndefined();
  });

  it('says where a step is first or last already', async () => {
    await nudgeStep(workbench, 1, -1);
    expect(workbench.spoken.trim()).toBe(GLUING_WORDS.spoken.first);
    await nudgeStep(workbench, workbench.view.gluing.shop!.gluing.steps.length, 1);
    expect(workbench.spoken.trim()).toBe(GLUING_WORDS.spoken.last);
  });

  it('moves nothing where it cannot be glued, and says why', async () => {
    const { workshop, part } = workbench;
    const { seam } = workbench.view.gluing.shop!.order[0];
    const text = 'Seam A comes too late in the order of gluing you chose; no hand. Until then it is told earlier.';
    const tryGluing = workshop.tryGluing.bind(workshop);
    workshop.tryGluing = () =>
      Promise.resolve([{ code: 'shop/order-shut', severity: 'warning', text, where: { seam } }]);
    await moveStep(workbench, 1, 3);
    workshop.tryGluing = tryGluing;
    expect(workbench.part).toBe(part);
    expect(workbench.view.gluing.refused?.seam).toBe(seam);
    expect(workbench.spoken).toContain('Seam A comes too late there; no hand.');
    expect(workbench.spoken).not.toContain('Until then');
  });
});
