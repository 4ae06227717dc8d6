import { describe, expect, it } from 'vitest';
import type { ModelIs } from '../../src/model/shell-layer.ts';
import { ball } from './handbook/ball.ts';
import type { Solid } from './handbook/polygon-solids.ts';
import { runSample } from '../support/run-sample.ts';
import { torus } from '../hostile/shapes.ts';
import { block, inSheets, outcomeOf, together } from '../support/run-solid.ts';

/** Greatest thickness told by the findings of a code, mm, the least of them; null where there is none. */
async function limitOf(solid: Solid, modelIs: ModelIs, code: string, ...sheetsMm: readonly number[]) {
  const { findings } = await outcomeOf(solid, (part) => ({ ...inSheets(part, ...sheetsMm), modelIs }));
  const limits = findings.filter((finding) => finding.code === code).map(({ limit }) => limit ?? NaN);
  return limits.length === 0 ? null : Math.min(...limits);
}

const [FOLD, ROOM] = ['shell/folds-over', 'shell/no-room'];

describe('foam that folds over itself', () => {
  // A surface folds where its distance reaches a radius of curvature: any text on parallel surfaces (do Carmo, "Differential geometry of
  // curves and surfaces", 1976, 3-5, exercise 11). Facets with corners on the surface lie inside it by up to 1 - cos(half a side).
  it.each([8, 16, 32])('inside a ball of radius 20 in facets of %d rows', async (rows) => {
    const limit = await limitOf(ball(20, 4, rows / 2, rows), 'face', FOLD, 25);
    expect(limit).toBeLessThanOrEqual(20);
    expect(limit).toBeGreaterThanOrEqual(20 * Math.cos(Math.PI / rows) - 0.1);
    expect(await limitOf(ball(20, 4, rows / 2, rows), 'face', FOLD, (limit ?? 0) - 0.1)).toBeNull();
  });

  const ring = torus(32, 16, 60, 15);
  const insideRing = limitOf(ring, 'face', FOLD, 20);

  it('inside a torus of tube radius 15, and through its hole of radius 45 on the other side', async () => {
    const small = (await insideRing) ?? 0;
    expect(small).toBeLessThanOrEqual(15);
    expect(small).toBeGreaterThanOrEqual(15 * Math.cos(Math.PI / 16) - 0.25);
    const hole = (await limitOf(ring, 'back', FOLD, 50)) ?? 0;
    expect(Math.abs(hole / 45 - 1)).toBeLessThan(0.025);
    expect(await limitOf(ring, 'back', FOLD, 0.97 * hole)).toBeNull();
  });

  it('under an outer sheet, for the sheet that is told of alone', async () => {
    // The back of the inner sheet may lie 15 mm deep at most, and the outer one takes 6 of them.
    const limit = (await limitOf(ring, 'face', FOLD, 12, 6)) ?? 0;
    const alone = (await insideRing) ?? 0;
    expect(Math.abs(limit - (alone - 6))).toBeLessThan(0.11);
  });
});

describe('foam that runs into foam', () => {
  const WIDTH = 16;
  const slot = together(block([0, 0, 0], [100, 100, 100]), block([100 + WIDTH, 0, 0], [200, 100, 100]));
  it.each([
    ['back', WIDTH / 2],
    ['middle', WIDTH],
  ] as const)('in a slot 16 mm wide, open at both ends, where the sculpt is the %s', async (modelIs, room) => {
    expect(await limitOf(slot, modelIs, ROOM, room + 1)).toBe(room);
    expect(await limitOf(slot, modelIs, ROOM, room)).toBeNull();
  });

  it('does not in that slot where the foam lies inside', async () => {
    expect(await limitOf(slot, 'face', ROOM, 10)).toBeNull();
  });

  it.each(['face', 'middle', 'back'] as const)('from one shell to the next 8 mm inside it, the %s', async (modelIs) => {
    const shells = together(block([0, 0, 0], [100, 100, 100]), block([8, 8, 8], [92, 92, 92]));
    expect(await limitOf(shells, modelIs, ROOM, 9)).toBe(8);
    expect(await limitOf(shells, modelIs, ROOM, 8)).toBeNull();
    if (modelIs !== 'back') return;
    // Of two sheets it is the wall that has to fit, whichever lies outside.
    expect(await limitOf(shells, modelIs, ROOM, 6, 3)).toBe(8);
    expect(await limitOf(shells, modelIs, ROOM, 2, 6)).toBeNull();
  });

  it('from the outside and from the hollow of a thing 8 mm thick', async () => {
    const hollow = together(block([0, 0, 0], [100, 100, 100]), block([8, 8, 8], [92, 92, 92], true));
    expect(await limitOf(hollow, 'face', ROOM, 6)).toBe(4);
    expect(await limitOf(hollow, 'face', ROOM, 4)).toBeNull();
  });

  it('in a wedge-shaped gap, where half the gap is told at its narrow end', async () => {
    // Two plates whose upper faces lean towards each other by 2 a: the ball that touches both stands at their distance over 1 + cos 2a.
    const lean = Math.atan(0.1);
    const wall = (sign: 1 | -1): Solid => ({
      corners: [
        [sign * 10, 0, 0],
        [sign * 10, 100, 0],
        [sign * 20, 100, 100],
        [sign * 20, 0, 100],
      ],
      faces: [sign === 1 ? [0, 3, 2, 1] : [0, 1, 2, 3]],
      seams: [],
    });
    const limit = (await limitOf(together(wall(1), wall(-1)), 'back', ROOM, 15)) ?? 0;
    // At the lower edge the planes are 20 apart level; both move apart square to themselves.
    expect(limit).toBeGreaterThan(10 * Math.cos(lean) - 0.1);
    expect(limit).toBeLessThan(10 * Math.cos(lean) + 0.5);
  });

  it('beside the sculpt as it lies there, where the wall stands off it', async () => {
    const off = async (solid: Solid, modelIs: ModelIs, offMm: number, thicknessMm: number) => {
      const outcome = await outcomeOf(solid, (part) => ({ ...inSheets(part, thicknessMm), modelIs, offMm }));
      return outcome.findings.find(({ code }) => code === ROOM)?.limit ?? null;
    };
    // Both walls of the slot stand 2 mm off into it, which leaves 6 mm for each.
    expect(await off(slot, 'back', 2, 7)).toBe(WIDTH / 2 - 2);
    expect(await off(slot, 'back', 2, 6)).toBeNull();
    // Both shells have moved in alike.
    const shells = together(block([0, 0, 0], [100, 100, 100]), block([8, 8, 8], [92, 92, 92]));
    expect(await off(shells, 'face', -2, 9)).toBe(8);
    expect(await off(shells, 'face', -2, 8)).toBeNull();
  });

  it('between the lames of the sample shoulder plate, built 8.7 mm or more apart', async () => {
    const outcome = await runSample('shoulder-plate', (project) => ({
      ...project,
      parts: project.parts.map((part) => inSheets(part, 10)),
    }));
    const limit = outcome.findings.find(({ code }) => code === ROOM)?.limit ?? 0;
    expect(limit).toBeGreaterThanOrEqual(8.7);
    expect(limit).toBeLessThan(9);
  });

  it('says where', async () => {
    const { findings } = await outcomeOf(slot, (part) => ({ ...inSheets(part, 10), modelIs: 'back' }));
    const found = findings.find(({ code }) => code === ROOM);
    expect(found?.text).toContain('at most 8 mm');
    const [x] = found?.where.point ?? [NaN];
    expect([100, 116]).toContain(x);
    expect(found?.where.triangles).toHaveLength(4);
  });
});
