import { describe, expect, it } from 'vitest';
import { chainSweep } from '../../../src/geom/outline.ts';
import { terraced } from '../../../src/mesh/extruded.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { plainMesh } from '../../../src/mesh/plain-mesh.ts';
import { topologyOf } from '../../../src/mesh/topology.ts';
import { turnedMesh } from '../../../src/mesh/turned-mesh.ts';
import { checkPlainDraft } from '../../../src/model/plain-piece.ts';
import type { Stack, StackWish } from '../../../src/model/stack.ts';
import { solidInFrame } from '../../../src/steps/stack/frame.ts';
import { makeStack } from '../../../src/steps/stack/make-stack.ts';
import { stackWork } from '../../../src/steps/stack/stack-work.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { boxMesh } from '../../support/meshes.ts';

const UP = { x: 0, y: 0, z: 1 };
const stackOf = (mesh: Mesh, more: Partial<StackWish> = {}): Stack =>
  expectOk(makeStack(mesh, { axis: UP, rule: 'larger', sheetsMm: [10], seat: 'bottom', ...more }));
const codesOf = ({ findings }: Stack): readonly string[] => findings.map(({ code }) => code);
/** A prism over a polygon. */
const prism = (xy: number[], bottom: number, top: number): Mesh => {
  const mesh = terraced([{ regions: [{ outer: Float64Array.from(xy), holes: [] }], bottom, top }]);
  if (mesh === null) throw new Error('no prism');
  return mesh;
};
const box = (x: number, y: number, w: number, d: number, bottom: number, top: number): Mesh =>
  prism([x, y, x + w, y, x + w, y + d, x, y + d], bottom, top);
const together = (...meshes: readonly Mesh[]): Mesh => {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const mesh of meshes) {
    const first = positions.length / 3;
    positions.push(...mesh.positions);
    triangles.push(...[...mesh.triangles].map((v) => first + v));
  }
  return plainMesh(Float64Array.from(positions), Uint32Array.from(triangles));
};

describe('the work on a stack', () => {
  it('counts layers of a prism as one piece, and glues both faces of each joint', () => {
    const work = stackWork(stackOf(boxMesh(40, 30, 30)));
    expect(work.pieces.map(({ key, name, quantity }) => [key, name, quantity])).toEqual([
      ['layer-1', 'layers 1, 2, 3', 3],
    ]);
    expect(work.steps.map((step) => [step.work, step.pieces, step.glueMm2])).toEqual([
      ['stack', ['layer-1'], expect.closeTo(2400, 6)],
      ['stack', ['layer-1'], expect.closeTo(2400, 6)],
    ]);
    // Before sanding a box is the box.
    const form = work.form;
    if (form === null) throw new Error('no form');
    expect([...topologyOf(form).twin].every((h) => h >= 0)).toBe(true);
    expect(expectOk(solidInFrame(form, UP)).volumeMm3).toBeCloseTo(36_000, 6);
  });

  it('has exact holes, the line of the next layer, and what is sanded', () => {
    const cone = expectOk(
      turnedMesh([
        { lengthMm: 0, radiusMm: 60 },
        { lengthMm: 30, radiusMm: 45 },
      ]),
    );
    const stack = stackOf(cone, {
      dowels: { diameterMm: 6, clearanceMm: 0.4, marginMm: 4 },
      core: { diameterMm: 20, clearanceMm: 1, marginMm: 5, at: { x: 0, y: 0 } },
    });
    const { pieces, steps } = stackWork(stack, cone);
    expect(pieces.map(({ key }) => key)).toEqual(['layer-1', 'layer-2', 'layer-3']);
    for (const [i, draft] of pieces.entries()) {
      checkPlainDraft(draft);
      const swept = [...draft.outline, ...draft.holes.flat()].reduce(
        (sum, { segments }) => sum + chainSweep(segments),
        0,
      );
      expect(swept).toBeCloseTo(draft.areaMm2, 6);
      // Core and two dowels, in full circles.
      expect(draft.holes.map((hole) => hole.reduce((sum, { lengthMm }) => sum + lengthMm, 0))).toEqual([
        expect.closeTo(21 * Math.PI, 9),
        expect.closeTo(6.4 * Math.PI, 9),
        expect.closeTo(6.4 * Math.PI, 9),
      ]);
      expect(draft.lines.filter(({ role }) => role === 'placement')).toHaveLength(i < 2 ? 1 : 0);
      expect(draft.notes[0]).toBe(`Layer ${i + 1} of 3, 10 mm.`);
    }
    expect(steps.map(({ work }) => work)).toEqual(['insert', 'stack', 'stack', 'slide', 'sand']);
    // The second layer lies on the first with all of its own face, less core and dowels.
    const holes = Math.PI * (10.5 ** 2 + 2 * 3.2 ** 2);
    expect(steps[1].glueMm2).toBeCloseTo(2 * (Math.PI * 55 ** 2 - holes), 3);
    expect(steps.at(-1)?.cautions).toContain('dust');
    expect(steps.at(-1)?.text).toContain(
      `${(stack.layers.reduce((sum, { sand }) => sum + sand.volumeMm3, 0) / 1000).toFixed(1)} cm³`,
    );
  });
});

describe('weak places of a stack', () => {
  it('tells what no joint holds and what hangs', () => {
    const two = stackOf(together(box(0, 0, 40, 40, 0, 20), box(60, 0, 30, 30, 0, 20)));
    expect(codesOf(two)).toEqual(['stack/apart']);
    expect(two.findings[0].text).toContain('pieces 1b, 2b are glued to no other piece');
    // A hook: its tip comes down beside the post and is held from above alone.
    const hook = prism([0, 0, 30, 0, 30, 60, 80, 60, 80, 30, 100, 30, 100, 80, 0, 80], 0, 20);
    const upright = { ...hook, positions: hook.positions.map((_, i) => hook.positions[i - (i % 3) + ((i + 2) % 3)]) };
    const stack = stackOf(upright, { axis: { x: 0, y: 0, z: 1 } });
    expect(codesOf(stack)).toEqual(['stack/hangs']);
    expect(stackWork(stack).steps.filter(({ text }) => text.startsWith('Keep '))).toHaveLength(1);
  });

  it('tells pieces and webs under 5 mm', () => {
    expect(codesOf(stackOf(box(0, 0, 60, 4.5, 0, 10)))).toEqual(['stack/narrow']);
    expect(codesOf(stackOf(box(0, 0, 60, 5.5, 0, 10)))).toEqual([]);
    const bell = (web: number): Mesh =>
      prism(
        [
          0,
          0,
          30,
          0,
          30,
          15 - web / 2,
          50,
          15 - web / 2,
          50,
          0,
          80,
          0,
          80,
          30,
          50,
          30,
          50,
          15 + web / 2,
          30,
          15 + web / 2,
          30,
          30,
          0,
          30,
        ],
        0,
        10,
      );
    expect(codesOf(stackOf(bell(4.5)))).toEqual(['stack/web']);
    expect(codesOf(stackOf(bell(5.5)))).toEqual([]);
  });

  it('tells bodies that run through each other, by what is counted twice', () => {
    const stack = stackOf(together(box(0, 0, 40, 40, 0, 20), box(30, 0, 40, 40, 0, 20)));
    const twice = stack.findings.find(({ code }) => code === 'stack/overlap');
    expect(twice?.value).toBeCloseTo(10 * 40 * 20, 3);
    expect(stack.layers[0].outlineAreaMm2).toBeCloseTo(70 * 40, 6);
  });

  it('cuts a core out of the wall it comes through, and opens a hollow where asked', () => {
    const wish = { wallMm: 20, core: { diameterMm: 69, clearanceMm: 1, marginMm: 5 } };
    const shut = stackOf(boxMesh(100, 100, 60), wish);
    expect(codesOf(shut)).toEqual(['stack/not-hollow', 'stack/hollow-shut']);
    // A square of 60 and a circle of 70 round one middle: the circle stands out in four segments.
    const angle = 2 * Math.acos(30 / 35);
    const segments = 4 * (35 ** 2 / 2) * (angle - Math.sin(angle));
    expect(shut.layers[2].pieces[0].holes).toEqual([]);
    expect(Math.abs(shut.layers[2].pieces[0].areaMm2 - (10_000 - 3600 - segments))).toBeLessThan(4);
    const open = stackOf(boxMesh(100, 100, 60), { wallMm: 20, openAt: 'bottom' });
    expect(open.layers.map(({ pieces }) => pieces[0].openings.length)).toEqual([1, 1, 1, 1, 0, 0]);
    expect(codesOf(open)).toEqual(['stack/not-hollow', 'stack/hollow-shut']);
  });

  it('says where a surface is open', () => {
    const whole = boxMesh(40, 30, 20);
    const open = plainMesh(whole.positions, whole.triangles.slice(3));
    const problem = expectProblem(
      makeStack(open, { axis: UP, rule: 'larger', sheetsMm: [10], seat: 'bottom' }),
      'stack/open',
    );
    expect(problem.where.edges).toHaveLength(3);
    expect(problem.where.point).toHaveLength(3);
  });
});
