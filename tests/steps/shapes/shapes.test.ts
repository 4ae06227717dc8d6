import { describe, expect, it } from 'vitest';
import type { PatchSide, Shape } from '../../../src/model/shape.ts';
import { doesRingCross } from '../../../src/geom/ring-cross.ts';
import { ringArea } from '../../../src/geom/ring.ts';
import { segmentPoints } from '../../../src/geom/outline.ts';
import { SHAPE_KINDS } from '../../../src/steps/shapes/catalogue.ts';
import { makeShape } from '../../../src/steps/shapes/make-shape.ts';
import { readSizes } from '../../../src/steps/shapes/read-sizes.ts';
import type { ShapeKind } from '../../../src/steps/shapes/shape-kind.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { IS_LONG } from '../../support/long.ts';
import { nearSizes, wildSizes } from './any-sizes.ts';
import { nearLengths, solidArea } from './on-the-solid.ts';

/** A shape of sizes near its defaults; null where they do not go together, which must be told in a sentence. */
function shapeOf(kind: ShapeKind, typed: readonly (readonly [string, string])[]): Shape | null {
  const sizes = readSizes(kind, typed);
  const made = sizes.ok ? makeShape(kind, sizes.value) : sizes;
  if (made.ok) return made.value;
  expect(made.problem.code).toMatch(/^shape\//);
  expect(made.problem.text).toMatch(/^\S.*\.$/);
  return null;
}

const developed = SHAPE_KINDS.filter((kind) => {
  const made = shapeOf(kind, []);
  return made !== null && made.patches.some(({ flat }) => flat !== undefined);
});
const cut = SHAPE_KINDS.filter((kind) => (shapeOf(kind, [])?.pieces.length ?? 0) > 0);
const named = (kinds: readonly ShapeKind[]) => kinds.map((kind) => [kind.name, kind] as const);

describe('every shape', () => {
  it('is developed from its defaults', () => {
    for (const kind of SHAPE_KINDS) expectOk(makeShape(kind, expectOk(readSizes(kind, []))));
  });

  it('answers any sizes with numbers or with a sentence', () =>
    forAll(
      (rand) => SHAPE_KINDS.map((kind) => wildSizes(kind, rand)),
      (all) => {
        SHAPE_KINDS.forEach((kind, i) => {
          for (const { name, value } of shapeOf(kind, all[i])?.measures ?? [])
            for (const one of [value].flat()) expect(Number.isFinite(one), `${kind.name} ${name}`).toBe(true);
        });
      },
      { runs: IS_LONG ? 6 : 2 },
    ));

  it('has names and sizes that are told apart', () => {
    const names = SHAPE_KINDS.flatMap(({ name, also = [] }) => [name, ...also]);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, says, sizes } of SHAPE_KINDS) {
      expect(name).toMatch(/^[a-z_]+$/);
      expect(says).toMatch(/^[A-Z].*\.$/);
      const own = sizes.map((field) => field.name);
      expect(new Set(own).size, name).toBe(own.length);
      // Another name never hides a size that has it as its own.
      for (const { also = [] } of sizes) for (const one of also) expect(own, name).not.toContain(one.name);
      for (const { kind, name: size } of sizes) if (kind === 'angle') expect(size).toMatch(/_deg$/);
    }
  });
});

describe('folded back', () => {
  it.each(named(developed))('%s: what lies near together in the flat piece does so on the shape', (_, kind) =>
    forAll(
      (rand) => ({
        typed: nearSizes(kind, rand),
        places: Array.from({ length: 30 }, () => [rand(), rand(), rand(), rand()] as const),
      }),
      ({ typed, places }) => {
        for (const patch of shapeOf(kind, typed)?.patches ?? []) {
          if (patch.flat === undefined) continue;
          for (const [u, v, turn] of places) {
            const [du, dv] = [Math.cos(7 * turn), Math.sin(7 * turn)];
            const [onSolid, inFlat] = nearLengths(patch, 0.02 + 0.96 * u, 0.02 + 0.96 * v, du, dv);
            expect(Math.abs(onSolid - inFlat)).toBeLessThan(2e-6 * Math.max(onSolid, inFlat) + 1e-10);
          }
        }
      },
      { runs: IS_LONG ? 6 : 2 },
    ),
  );

  it.each(named(developed.filter(({ name }) => name !== 'spherical_cap')))(
    '%s: flat area and finished area are one',
    (_, kind) =>
      forAll(
        (rand) => nearSizes(kind, rand),
        (typed) => {
          const made = shapeOf(kind, typed);
          if (made === null) return;
          // Patches are all of a shape's pieces but for holes that are cut into others.
          const names = new Set(made.patches.map(({ piece }) => piece));
          const flat = made.pieces.reduce(
            (sum, { name, areaMm2, quantity }) => (names.has(name) ? sum + areaMm2 * quantity : sum),
            0,
          );
          const finished = made.patches.reduce((sum, patch) => sum + solidArea(patch), 0);
          if (made.patches.length > 0) expect(Math.abs(flat / finished - 1)).toBeLessThan(2e-6);
        },
        { runs: IS_LONG ? 3 : 1 },
      ),
  );
});

/** Distance of a point from a closed line of straight parts, mm. */
function fromRing(x: number, y: number, ring: Float64Array): number {
  let least = Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    const [dx, dy] = [ring[j] - ring[i], ring[j + 1] - ring[i + 1]];
    const share = ((x - ring[i]) * dx + (y - ring[i + 1]) * dy) / (dx * dx + dy * dy || 1);
    const held = Math.min(1, Math.max(0, share));
    least = Math.min(least, Math.hypot(x - ring[i] - held * dx, y - ring[i + 1] - held * dy));
  }
  return least;
}

const ringOf = (edges: Shape['pieces'][number]['outline']): Float64Array =>
  Float64Array.from(
    edges
      .flatMap(({ segments }) => segments)
      .flatMap((one) => segmentPoints(one))
      .flatMap(({ x, y }) => [x, y]),
  );

describe('outlines', () => {
  it.each(named(developed))('%s: the border of the finished surface lies on the outline of its piece', (_, kind) =>
    forAll(
      (rand) => nearSizes(kind, rand),
      (typed) => {
        const made = shapeOf(kind, typed);
        for (const { piece, flat, cut: given } of made?.patches ?? []) {
          const sides: readonly PatchSide[] = given ?? ['u0', 'u1', 'v0', 'v1'];
          const own = made?.pieces.find(({ name }) => name === piece);
          if (flat === undefined || own === undefined) continue;
          const rings = [own.outline, ...own.holes].map(ringOf);
          const placesOn = (t: number): Record<PatchSide, [number, number]> => ({
            u0: [0, t],
            u1: [1, t],
            v0: [t, 0],
            v1: [t, 1],
          });
          const bordered = [0, 0.13, 0.37, 0.5, 0.71, 1].flatMap((t) => sides.map((side) => placesOn(t)[side]));
          for (const [u, v] of bordered) {
            const { x, y } = flat(u, v);
            expect(Math.min(...rings.map((ring) => fromRing(x, y, ring))), `${piece} at ${u}, ${v}`).toBeLessThan(
              0.011,
            );
          }
        }
      },
      { runs: IS_LONG ? 3 : 1 },
    ),
  );
});

describe('pieces', () => {
  it.each(named(cut))('%s: both sides of every seam are alike, outlines are simple', (_, kind) =>
    forAll(
      (rand) => nearSizes(kind, rand),
      (typed) => {
        const made = shapeOf(kind, typed);
        if (made === null) return;
        for (const { lengthMm } of made.seams)
          expect(Math.abs(lengthMm[0] - lengthMm[1])).toBeLessThan(1e-8 * lengthMm[0] + 1e-9);
        for (const { name, outline, holes, areaMm2 } of made.pieces) {
          let area = 0;
          for (const edges of [outline, ...holes]) {
            const ring = ringOf(edges);
            expect(doesRingCross(ring), name).toBe(false);
            area += ringArea(ring);
          }
          // Chords of curves lie within a hundredth of a mm.
          const around = [outline, ...holes].flat().reduce((sum, { lengthMm }) => sum + lengthMm, 0);
          expect(Math.abs(area - areaMm2)).toBeLessThan(0.01 * around);
        }
      },
      { runs: IS_LONG ? 4 : 2 },
    ),
  );
});
