import { describe, expect, it } from 'vitest';
import { chainGap, chainSweep } from '../../../src/geom/outline.ts';
import { checkMesh } from '../../../src/mesh/check-mesh.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { checkPlainDraft, type PlainDraft, type PlainWork } from '../../../src/model/plain-piece.ts';
import { ALL_SHAPES, shapeFrom } from '../../../src/pipeline/shapes.ts';
import { sizesOfFoam } from '../../../src/steps/shapes/foam-of-shape.ts';
import type { TypedSize } from '../../../src/steps/shapes/read-sizes.ts';
import type { ShapeKind } from '../../../src/steps/shapes/shape-kind.ts';
import { matchShares } from '../../../src/steps/shapes/shape-lines.ts';
import { shapeWork } from '../../../src/steps/shapes/shape-work.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { nearSizes } from './any-sizes.ts';

const FOAM = { thicknessMm: 6, neutralFraction: 0.5 };

const kindOf = (name: string): ShapeKind => {
  const kind = ALL_SHAPES.find((one) => one.name === name);
  if (kind === undefined) throw new Error(name);
  return kind;
};

/** In the foam, or null where the sizes do not go together. */
function tryWork(kind: ShapeKind, typed: readonly TypedSize[], foam = FOAM): PlainWork | null {
  const made = shapeFrom(kind.name, [...typed, ...sizesOfFoam(kind.sizes, typed, foam)]);
  return made.ok ? shapeWork(made.value, foam) : null;
}

function work(name: string, sizes: Readonly<Record<string, number | string>> = {}, foam = FOAM): PlainWork {
  const made = tryWork(
    kindOf(name),
    Object.entries(sizes).map(([size, value]) => [size, String(value)]),
    foam,
  );
  if (made === null) throw new Error(`${name} was refused`);
  return made;
}

function volumeOf({ positions, triangles }: Mesh): number {
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [0, 1, 2].map((k) => positions.subarray(3 * triangles[i + k], 3 * triangles[i + k] + 3));
    sum +=
      (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) /
      6;
  }
  return sum;
}

const form = (made: PlainWork): Mesh => {
  if (made.form === null) throw new Error('no form');
  return made.form;
};

/** Every edge has a triangle on either side that runs along it the other way. */
function expectClosed(mesh: Mesh): void {
  const { triangles } = mesh;
  const open = new Set<number>();
  const count = mesh.positions.length / 3;
  for (let i = 0; i < triangles.length; i += 1) {
    const [a, b] = [triangles[i], triangles[i % 3 === 2 ? i - 2 : i + 1]];
    if (!open.delete(b * count + a)) open.add(a * count + b);
  }
  expect(open.size).toBe(0);
}

function expectSound({ pieces, steps, form: body }: PlainWork, name: string): void {
  const keys = pieces.map(({ key }) => key);
  expect(new Set(keys).size, name).toBe(keys.length);
  for (const draft of pieces) expectSoundDraft(draft);
  for (const { glueMm2, text, pieces: taken } of steps) {
    expect(Number.isFinite(glueMm2) && glueMm2 >= 0, text).toBe(true);
    expect(text).toMatch(/^[A-Z].*\.$/);
    for (const key of taken) expect(keys).toContain(key);
  }
  if (body === null) return;
  checkMesh(body);
  expectClosed(body);
  expect(volumeOf(body), name).toBeGreaterThan(0);
}

function expectSoundDraft(draft: PlainDraft): void {
  checkPlainDraft(draft);
  const rings = [draft.outline, ...draft.holes].map((ring) => ring.flatMap(({ segments }) => segments));
  const [outside, ...holes] = rings.map(chainSweep);
  expect(outside).toBeGreaterThan(0);
  for (const hole of holes) expect(hole).toBeLessThan(0);
  expect(outside + holes.reduce((sum, one) => sum + one, 0)).toBeCloseTo(draft.areaMm2, 6);
  for (const ring of rings) expect(chainGap(ring)).toBeLessThan(1e-6);
  for (const { points } of draft.lines) {
    expect(points.length).toBeGreaterThan(2);
    expect(points.every(Number.isFinite)).toBe(true);
  }
  for (const note of draft.notes) expect(note).toMatch(/^[A-Z].*\.$/);
}

describe('every shape in foam', () => {
  it('is sound at its usual sizes', () => {
    let count = 0;
    for (const kind of ALL_SHAPES) {
      const made = tryWork(kind, []);
      if (made === null || made.pieces.length === 0) continue;
      count += 1;
      expectSound(made, kind.name);
    }
    // All but tables of figures, which have no pieces.
    expect(count).toBe(56);
  });

  it('is sound at sizes near them', () =>
    forAll(
      (rand) => ALL_SHAPES.map((kind) => nearSizes(kind, rand).filter(([name]) => name !== 'K')),
      (all) => {
        ALL_SHAPES.forEach((kind, i) => {
          const typed = all[i].filter(([name]) => !['thickness', 'strip_thickness', 'layer'].includes(name));
          const made = tryWork(kind, typed, { thicknessMm: 2, neutralFraction: 0.45 });
          if (made !== null) expectSound(made, kind.name);
        });
      },
      { runs: 1 },
    ));
});

describe('the finished foam', () => {
  // Of a wall that is only bent, about its middle, the volume is the area of its pieces times its thickness; chords leave out a little.
  it.each([
    'wrap',
    'tapered_wrap',
    'cone',
    'frustum',
    'oblique_cone',
    'truncated_cylinder',
    'elbow',
    'dome_gores',
    'torus_gores',
    'torus_zones',
    'sphere_zones',
    'square_to_round',
    'helical_strip',
  ])('of %s has as much in it as its pieces', (name) => {
    const made = work(name);
    const cut = made.pieces.reduce(
      (sum, { areaMm2, quantity, thicknessMm }) => sum + areaMm2 * quantity * thicknessMm,
      0,
    );
    expect(Math.abs(volumeOf(form(made)) / cut - 1)).toBeLessThan(0.003);
  });

  it.each([
    ['cube', { edge: 40 }, 40 ** 3 - 28 ** 3],
    ['box', {}, 200 * 120 * 80 - 188 * 108 * 68],
    ['box', { lid: 'no' }, 200 * 120 * 80 - 188 * 108 * 74],
    ['sphere_layers', { part: 'half', core_diameter: 0 }, (2 / 3) * Math.PI * 100 ** 3],
    // A sphere with a hole through it is as much as a sphere as high as what is left of it (Archimedes).
    ['sphere_layers', { core_diameter: 60 }, (Math.PI / 6) * (2 * Math.sqrt(100 ** 2 - 30 ** 2)) ** 3],
    ['torus_layers', {}, 2 * Math.PI ** 2 * 100 * 30 ** 2],
    ['cone_layers', { base_radius: 60, top_radius: 20, height: 100 }, (Math.PI / 3) * 100 * (3600 + 1200 + 400)],
    ['tapered_layers', {}, 30 * 12 * 300],
    ['ring', { angle_deg: 90, segments: 2 }, (Math.PI / 4) * (100 ** 2 - 60 ** 2) * 6],
    ['half_round_edging', { ring_radius: 80, line: 'inside' }, 50 * Math.PI * 2 * Math.PI * 90],
    ['spherical_cap', { cap_half_angle_deg: 90, radius: 100 }, (2 / 3) * Math.PI * (100 ** 3 - 94 ** 3)],
  ] as const)('of %s %o is as large as by its closed form', (name, sizes, volume) => {
    expect(Math.abs(volumeOf(form(work(name, sizes))) / volume - 1)).toBeLessThan(0.006);
  });
});

describe('pieces', () => {
  it('are drawn on the neutral surface where they are bent, on the face where they are panels', () => {
    const foam = { thicknessMm: 10, neutralFraction: 0.4 };
    for (const [name, drawnAt] of [
      ['wrap', 0.4],
      ['square_to_round', 0.4],
      ['torus_zones', 0.4],
      ['cube', 1],
      ['hopper', 1],
      ['ring', 1],
      ['tapered_layers', 0],
    ] as const)
      expect(
        work(name, {}, foam).pieces.map((one) => one.drawnAt),
        name,
      ).toContain(drawnAt);
    expect(work('prism', { as: 'net' }, foam).pieces[0].drawnAt).toBe(1);
  });

  it('take the thickness from their own sizes where it was typed', () => {
    expect(work('wrap', { thickness: 10 }).pieces[0].thicknessMm).toBe(10);
    expect(work('box_joint', { other_thickness: 15 }).pieces.map((one) => one.thicknessMm)).toEqual([6, 15]);
  });

  it('say how far they are rolled and what they are glued to', () => {
    const [wrap] = work('wrap', { diameter: 62 }).pieces;
    expect(wrap.notes.join(' ')).toMatch(/Roll to 31.mm inside radius\. Seam A closes on itself/);
    const [gore] = work('sphere_gores').pieces;
    expect(gore.notes.join(' ')).toContain('Seam A joins the next one like it.');
  });

  it('have folds as lines, out or in', () => {
    const [net] = work('prism', { as: 'net' }).pieces;
    expect(net.lines.filter(({ role }) => role === 'fold-out')).toHaveLength(7);
  });

  it('have match marks at most 80 mm apart, at one place on both sides of a seam', () => {
    for (const long of [1, 79, 80, 300, 1234.5]) {
      const shares = [0, ...matchShares(long, true), 1];
      expect(Math.max(...shares.slice(1).map((share, i) => (share - shares[i]) * long))).toBeLessThanOrEqual(80);
      if (shares.length > 3) expect(shares[1]).not.toBeCloseTo(1 - shares[shares.length - 2], 6);
    }
    const [wrap] = work('wrap', { length: 300 }).pieces;
    const marks = wrap.lines.filter(({ text }) => text?.startsWith('A') === true);
    // start and end stand upright at both sides of the sheet: marks of one name are level.
    const heights = (text: string) => marks.filter((one) => one.text === text).map(({ points }) => points[1]);
    for (const text of new Set(marks.map((one) => one.text ?? ''))) {
      const [a, b] = heights(text);
      expect(a).toBeCloseTo(b, 9);
    }
    expect(marks.length).toBe(8);
  });
});

describe('steps', () => {
  const kinds = (made: PlainWork) => made.steps.map((one) => one.work);
  it('roll, close and join in this order', () => {
    const made = work('elbow', { pieces: 5, diameter: 100 });
    expect(kinds(made)).toEqual(['roll', 'roll', 'close', 'close', 'join']);
    const joint = made.steps[4];
    // Four joints of one ellipse's length, cut 11.25 degrees from square at most, either way: t times a little more than that, on both sides.
    const [end] = made.pieces;
    const cut = end.outline.find(({ name }) => name === 'cut');
    expect(joint.glueMm2 / (2 * 4 * (cut?.lengthMm ?? 0) * 6)).toBeGreaterThan(1);
    expect(joint.glueMm2 / (2 * 4 * (cut?.lengthMm ?? 0) * 6)).toBeLessThan(1 / Math.cos((11.25 * Math.PI) / 180));
  });
  it('count every seam of a solid once, with the width of its leaning cuts', () => {
    const cube = work('cube', { edge: 40 });
    expect(cube.steps).toHaveLength(1);
    // 12 edges of 40 mm, 6 mm / cos 45 wide, both sides.
    expect(cube.steps[0].glueMm2).toBeCloseTo(12 * 40 * 6 * Math.SQRT2 * 2, 6);
    expect(work('ring', { angle_deg: 90, segments: 3 }).steps[0].text).toContain('2 times');
    expect(work('ring', { angle_deg: 90, segments: 1 }).steps).toHaveLength(0);
  });
  it('stack sheets with what they share and tell what is sanded', () => {
    const made = work('torus_layers', { layer: 20 });
    expect(kinds(made)).toEqual(['stack', 'stack', 'sand']);
    // Both neighbours share the narrower ring, pi (outer² - inner²).
    const [low] = made.pieces;
    expect(made.steps[0].glueMm2).toBeCloseTo(2 * low.areaMm2, 6);
    expect(kinds(work('sphere_layers', { rule: 'smaller' })).at(-1)).toBe('fill');
  });
  it('wrap layer on layer with glue between them', () => {
    const made = work('wrap', { diameter: 50, layers: 3, length: 100 });
    expect(kinds(made)).toEqual(['roll', 'roll', 'roll', 'close', 'close', 'close', 'wrap', 'wrap']);
    expect(made.steps[6].glueMm2).toBeCloseTo(2 * Math.PI * (50 + 12) * 100, 6);
    expect(expectOk(shapeFrom('wrap', [])).name).toBe('wrap');
  });
  it('wind a strip', () => expect(kinds(work('tapered_helical_strip'))).toEqual(['wind']));
});
