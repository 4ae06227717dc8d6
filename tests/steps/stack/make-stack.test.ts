import { describe, expect, it } from 'vitest';
import { buildTree } from '../../../src/geom/bvh.ts';
import { ringArea } from '../../../src/geom/ring.ts';
import { depthInside } from '../../../src/geom/widest-spot.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import type { Stack, StackRule, StackWish } from '../../../src/model/stack.ts';
import { shapeFrom } from '../../../src/pipeline/shapes.ts';
import { solidInFrame } from '../../../src/steps/stack/frame.ts';
import { makeStack } from '../../../src/steps/stack/make-stack.ts';
import { sectionAt } from '../../../src/steps/stack/slab.ts';
import { turnedMesh } from '../../../src/mesh/turned-mesh.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { boxMesh } from '../../support/meshes.ts';
import { readTestObj } from '../../support/read-test-obj.ts';
import { ballMesh } from '../../support/round-meshes.ts';

const UP = { x: 0, y: 0, z: 1 };
const stackOf = (mesh: Mesh, rule: StackRule, more: Partial<StackWish> = {}): Stack =>
  expectOk(makeStack(mesh, { axis: UP, rule, sheetsMm: [10], seat: 'middle', ...more }));
const sandOf = ({ layers }: Stack): number => layers.reduce((sum, { sand }) => sum + sand.volumeMm3, 0);
const figure = (shape: string, sizes: [string, string][], name: string): number | readonly number[] => {
  const made = expectOk(shapeFrom(shape, sizes));
  const found = made.measures.find((one) => one.name === name);
  if (found === undefined) throw new Error(`${shape} has no ${name}`);
  return found.value;
};

/** Small bodies in thin sheets: what is turned round has fewer sides the smaller it is, and the time grows with their square. */
const THIN = { sheetsMm: [1] } as const;

describe('a ball of sheets', () => {
  /** Corners of the half circle on every boundary of a layer, and `n` to each layer. */
  const turned = (n: number): Mesh =>
    expectOk(
      turnedMesh(
        Array.from({ length: 12 * n + 1 }, (_, i) => {
          const z = -6 + i / n;
          return { lengthMm: z, radiusMm: i === 0 || i === 12 * n ? 0 : Math.sqrt((6 - z) * (6 + z)) };
        }),
      ),
    );
  const closed = (4 / 3) * Math.PI * 6 ** 3;

  it.each(['larger', 'smaller', 'middle'] as const)('has the layers of the closed form, %s', (rule) => {
    const stack = stackOf(turned(2), rule, THIN);
    const sizes: [string, string][] = [
      ['radius', '6'],
      ['layer', '1'],
      ['rule', rule],
    ];
    const want = figure('sphere_layers', sizes, 'stacked_volume') as number;
    expect(Math.abs(stack.stackedMm3 - want)).toBeLessThan(1e-9 * want);
    const radii = figure('sphere_layers', sizes, 'layer_radii') as readonly number[];
    for (const [i, { outlineAreaMm2, areaBoundMm2 }] of stack.layers.entries()) {
      expect(Math.abs(outlineAreaMm2 - Math.PI * radii[i] ** 2)).toBeLessThanOrEqual(
        1e-9 * outlineAreaMm2 + areaBoundMm2,
      );
    }
  });

  it('leaves the closed form to sand, the nearer the finer its profile: order 2', () => {
    const off = [1, 2, 4].map((n) => {
      const stack = stackOf(turned(n), 'larger', THIN);
      expect(Math.abs(sandOf(stack) - (stack.stackedMm3 - stack.solidMm3))).toBeLessThan(1e-9 * closed);
      return sandOf(stack) - (stack.stackedMm3 - closed);
    });
    expect(off[2]).toBeGreaterThan(0);
    // A polyline in a half circle that is steep at its ends: order 1.5 to 2.
    for (const i of [0, 1]) expect(Math.log2(off[i] / off[i + 1])).toBeGreaterThan(1.4);
    expect(off[2]).toBeLessThan(0.01 * closed);
  });

  it('of triangles comes to the same with their square', () => {
    const sand = figure(
      'sphere_layers',
      [
        ['radius', '60'],
        ['layer', '10'],
        ['rule', 'larger'],
      ],
      'sanded_volume',
    ) as number;
    const stacks = [2, 3, 4].map((level) => stackOf(ballMesh(level, 60), 'larger'));
    const volume = stacks.map(({ solidMm3 }) => (4 / 3) * Math.PI * 60 ** 3 - solidMm3);
    for (const i of [0, 1]) expect(Math.log2(volume[i] / volume[i + 1])).toBeGreaterThan(1.9);
    const off = stacks.map((stack) => Math.abs(sandOf(stack) - sand));
    expect(off[1]).toBeLessThan(off[0]);
    expect(off[2]).toBeLessThan(off[1]);
    expect(off[2]).toBeLessThan(0.01 * sand);
  });

  it('is as deep to sand as the corner of its step is far from the surface', () => {
    const { layers } = stackOf(ballMesh(4, 60), 'larger');
    for (const { fromMm, toMm, outlineAreaMm2, sand } of layers) {
      const corner = Math.hypot(Math.sqrt(outlineAreaMm2 / Math.PI), Math.max(Math.abs(fromMm), Math.abs(toMm))) - 60;
      expect(sand.depthMm).toBeGreaterThan(corner - 0.2);
      expect(sand.depthMm).toBeLessThan(corner + 0.2);
    }
  });
});

describe('a cone of sheets', () => {
  const cone = expectOk(
    turnedMesh([
      { lengthMm: 0, radiusMm: 6 },
      { lengthMm: 10, radiusMm: 0 },
    ]),
  );
  const solidMm3 = Math.PI * 120;

  it.each(['larger', 'middle', 'smaller'] as const)('has the volumes of the closed form, %s', (rule) => {
    const stack = stackOf(cone, rule, THIN);
    const sizes: [string, string][] = [
      ['base_radius', '6'],
      ['height', '10'],
      ['layer', '1'],
      ['rule', rule],
    ];
    const want = figure('cone_layers', sizes, 'stacked_volume') as number;
    expect(Math.abs(stack.stackedMm3 - want)).toBeLessThan(1e-9 * want);
    expect(Math.abs(stack.solidMm3 - solidMm3)).toBeLessThan(1e-9 * solidMm3);
    const rest = stack.layers.reduce((sum, { sand, fill }) => sum + sand.volumeMm3 - fill.volumeMm3, 0);
    expect(rest).toBeCloseTo(want - solidMm3, 6);
  });

  it('has of the middle face outside and inside what two half steps have', () => {
    // Over a layer the radius runs evenly by r0 + a, r0 - a round the middle r0: outside pi (r0 a - a² / 3) h / 2 …
    const { layers } = stackOf(cone, 'middle', THIN);
    for (const { fromMm, sand, fill } of layers) {
      const [r0, a, h] = [0.6 * (9.5 - fromMm), 0.3, 1];
      expect(Math.abs(sand.volumeMm3 - Math.PI * (r0 * a - a ** 2 / 3) * (h / 2))).toBeLessThan(5e-4);
      expect(Math.abs(fill.volumeMm3 - Math.PI * (r0 * a + a ** 2 / 3) * (h / 2))).toBeLessThan(2e-4);
      expect(sand.boundMm3).toBeGreaterThan(0);
    }
  });

  it('lies in two pieces of sheet where both together come right', () => {
    const { layers, heightMm, stackedMm } = stackOf(cone, 'larger', {
      sheetsMm: [1, 0.6],
      axis: { x: 0, y: 0, z: -1 },
    });
    expect([heightMm, stackedMm, layers.length]).toEqual([10, 10, 10]);
    expect(layers[0].outlineAreaMm2).toBeCloseTo(Math.PI * 0.36, 6);
  });
});

describe('a head of sheets', () => {
  const head = readTestObj(new URL('../../reference/meshes/goathead.obj', import.meta.url));
  const mesh = { ...head, positions: head.positions.map((x) => 15 * x) };
  const axis = { x: 0, y: 1, z: 0 };
  const stack = stackOf(mesh, 'larger', {
    axis,
    sheetsMm: [10, 6],
    dowels: { diameterMm: 6, clearanceMm: 0.4, marginMm: 4 },
    core: { diameterMm: 20, clearanceMm: 0.5, marginMm: 6 },
    wallMm: 20,
  });
  const solid = expectOk(solidInFrame(mesh, axis));
  const tree = buildTree(solid.surface.positions, solid.surface.triangles);

  it('loses nothing of the solid, to 1e-9', () => {
    const sum = stack.layers.reduce((all, { solidMm3 }) => all + solidMm3, 0);
    expect(Math.abs(sum - solid.volumeMm3)).toBeLessThan(1e-9 * sum);
    expect(stack.beyondMm3).toBeLessThan(1e-9 * sum);
    for (const { outlineAreaMm2, thicknessMm, solidMm3, areaBoundMm2 } of stack.layers) {
      expect(outlineAreaMm2 * thicknessMm + areaBoundMm2 * thicknessMm).toBeGreaterThanOrEqual(solidMm3);
      expect(areaBoundMm2).toBeLessThan(2e-6 * outlineAreaMm2);
    }
    // Every corner of the model lies in the outline of its layer.
    const { positions } = solid.surface;
    for (let v = 0; v < positions.length; v += 51) {
      const [x, y, z] = positions.subarray(v, v + 3);
      const layer = stack.layers.find(({ fromMm, toMm }) => z >= fromMm && z <= toMm);
      const rings = (layer?.pieces ?? []).map(({ outer }) => outer);
      expect(Math.max(...rings.map((ring) => depthInside([ring], x, y)))).toBeGreaterThan(-1e-6);
    }
  });

  it('has a wall in its hollows, and holes that stay in foam', () => {
    const hollow = stack.layers.flatMap(({ pieces, fromMm, toMm }) =>
      pieces.flatMap(({ openings }) => openings.map((ring) => ({ ring, fromMm, toMm }))),
    );
    expect(hollow.length).toBeGreaterThan(4);
    for (const { ring, fromMm, toMm } of hollow) {
      for (let i = 0; i < ring.length; i += 8)
        for (const z of [fromMm, toMm])
          expect(tree.nearest({ x: ring[i], y: ring[i + 1], z })?.distance).toBeGreaterThan(20 - 1e-3);
    }
    expect(stack.dowels.length).toBeGreaterThanOrEqual(4);
    for (const { x, y, fromLayer, toLayer } of stack.dowels) {
      const holed = stack.layers.slice(fromLayer - 1, toLayer);
      for (const { pieces, fromMm, toMm } of holed) {
        const own = pieces.filter(({ holes }) => holes.some((hole) => hole.x === x && hole.y === y));
        expect(own).toHaveLength(1);
        expect(depthInside([own[0].outer, ...own[0].openings], x, y)).toBeGreaterThan(3.2 + 4 - 1e-3);
        // The finished surface stays a margin off, in the section at either face.
        for (const section of [sectionAt(solid, fromMm, 'over'), sectionAt(solid, toMm, 'under')])
          expect(depthInside(section, x, y)).toBeGreaterThan(3.2 + 4 - 1e-3);
        for (const hole of own[0].holes.filter((one) => one.x !== x || one.y !== y))
          expect(Math.hypot(hole.x - x, hole.y - y)).toBeGreaterThan(hole.radiusMm + 3.2 + 4 - 1e-3);
      }
    }
  });

  it('says where there is no room', () => {
    const codes = stack.findings.map(({ code }) => code);
    expect(codes).toEqual([
      'stack/no-dowel-room',
      'stack/not-hollow',
      'stack/hollow-shut',
      'stack/no-core-room',
      'stack/height',
      'stack/hangs',
      'stack/narrow',
    ]);
    expect(stack.layers.at(-1)?.pieces.map(({ name }) => name)).toEqual(['25a', '25b']);
  });

  it('shows the same foam in its side view', () => {
    const [view] = stack.sideViews;
    expect(view.solid.length).toBeGreaterThan(0);
    const outer = view.solid.map((ring) => Math.abs(ringArea(ring))).reduce((a, b) => a + b, 0);
    const steps = view.steps.reduce((sum, { left, right, from, to }) => sum + (right - left) * (to - from), 0);
    expect(steps).toBeGreaterThan(0.5 * outer);
    expect(steps).toBeLessThan(1.4 * outer);
  });
});

describe('a box of sheets', () => {
  it('has nothing to sand or fill, whichever the face, and a placing line where the next layer is smaller alone', () => {
    for (const rule of ['larger', 'middle', 'smaller'] as const) {
      const { layers } = stackOf(boxMesh(40, 30, 20), rule);
      for (const { sand, fill, outlineAreaMm2, pieces } of layers) {
        expect([sand.volumeMm3, fill.volumeMm3, outlineAreaMm2]).toEqual([
          expect.closeTo(0, 9),
          expect.closeTo(0, 9),
          1200,
        ]);
        expect(Math.max(sand.depthMm, fill.depthMm)).toBeLessThan(1e-9);
        expect(pieces[0].placing).toEqual([]);
      }
    }
    const pyramid = stackOf(
      expectOk(
        turnedMesh([
          { lengthMm: 0, radiusMm: 50 },
          { lengthMm: 20, radiusMm: 30 },
        ]),
      ),
      'larger',
    );
    const line = pyramid.layers[0].pieces[0].placing[0];
    expect(Math.abs(ringArea(line))).toBeCloseTo(Math.PI * 1600, 6);
  });

  it('tells a core that has no room, and takes the one that has', () => {
    const core = { diameterMm: 20, clearanceMm: 1, marginMm: 4 };
    const right = stackOf(boxMesh(40, 30, 20), 'larger', { core });
    expect(right.layers.map(({ pieces }) => pieces[0].holes[0].radiusMm)).toEqual([10.5, 10.5]);
    expect(right.foamMm3).toBeCloseTo(24_000 - 20 * Math.PI * 10.5 ** 2, 6);
    const wide = stackOf(boxMesh(40, 30, 20), 'larger', { core: { ...core, diameterMm: 24 } });
    expect(wide.findings.map(({ code }) => code)).toEqual(['stack/no-core-room']);
    expect(wide.layers[0].pieces[0].holes).toEqual([]);
  });

  it('refuses sheets that cannot make it', () => {
    const wish = { axis: UP, seat: 'bottom', sheetsMm: [10] } as const;
    expectProblem(makeStack(boxMesh(40, 30, 6), { ...wish, rule: 'smaller' }), 'stack/too-low');
    expectProblem(makeStack(boxMesh(40, 30, 6), { ...wish, rule: 'larger', sheetsMm: [0] }), 'stack/sheets');
    expectProblem(makeStack(boxMesh(40, 30, 20_000), { ...wish, rule: 'larger' }), 'stack/layers');
  });
});
