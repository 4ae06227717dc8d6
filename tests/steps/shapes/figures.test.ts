import { describe, expect, it } from 'vitest';
import { SHAPE_KINDS } from '../../../src/steps/shapes/catalogue.ts';
import { makeShape } from '../../../src/steps/shapes/make-shape.ts';
import { meshOfShape } from '../../../src/steps/shapes/shape-mesh.ts';
import { readSizes } from '../../../src/steps/shapes/read-sizes.ts';
import { expectOk } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { nearSizes } from './any-sizes.ts';

type Typed = Readonly<Record<string, number | string>>;

function make(name: string, sizes: Typed) {
  const kind = SHAPE_KINDS.find((one) => one.name === name);
  if (kind === undefined) throw new Error(`no shape ${name}`);
  const made = expectOk(
    makeShape(
      kind,
      expectOk(
        readSizes(
          kind,
          Object.entries(sizes).map(([size, value]) => [size, String(value)] as const),
        ),
      ),
    ),
  );
  const one = Object.fromEntries(made.measures.map(({ name: measure, value }) => [measure, value as number]));
  const row = Object.fromEntries(
    made.measures.map(({ name: measure, value }) => [measure, value as readonly number[]]),
  );
  return { ...made, one, row };
}

/** Closed forms of areas against what the pieces, made of corners in space, add up to. */
it.each([
  'prism',
  'pyramid',
  'hopper',
  'star',
  'ring',
  'wrap',
  'frustum',
  'cone',
  'elbow',
  'dome_gores',
  'dome',
  'arc',
])('%s: its area is that of its pieces', (name) => {
  const kind = SHAPE_KINDS.find((one) => one.name === name);
  if (kind === undefined) throw new Error(`no shape ${name}`);
  return forAll(
    (rand) => nearSizes(kind, rand),
    (typed) => {
      const sizes = readSizes(kind, typed);
      const made = sizes.ok ? makeShape(kind, sizes.value) : sizes;
      if (!made.ok || made.value.sizes.overlap === undefined ? false : made.value.sizes.overlap !== 0) return;
      if (!made.ok) return;
      const { measures, pieces } = made.value;
      const area = measures.find(
        ({ name: one }) => one === (name === 'arc' ? 'segment_area' : name === 'wrap' ? 'total_area' : 'area'),
      );
      const sum = pieces.reduce((total, { areaMm2, quantity }) => total + areaMm2 * quantity, 0);
      expect(sum / Number(area?.value)).toBeCloseTo(1, 9);
    },
    { runs: 10 },
  );
});

describe('bevels', () => {
  it('close two panels on one cut, of one thickness or of two', () =>
    forAll(
      (rand) => ({ dihedral_deg: 70 + 100 * rand(), thickness: 4 + 8 * rand(), other_thickness: 4 + 8 * rand() }),
      (sizes) => {
        const { one } = make('bevel', sizes);
        expect(one.bevel_a_deg + one.bevel_b_deg).toBeCloseTo(one.fold_deg, 9);
        // The cut is one line from the faces' corner to the backs' corner.
        expect(one.bevel_face_width).toBeCloseTo(one.other_bevel_face_width ?? one.bevel_face_width, 9);
      },
    ));

  it('lean the other way in an inward corner', () => {
    const [out, inward] = [make('bevel', { dihedral_deg: 150 }).one, make('bevel', { dihedral_deg: 210 }).one];
    expect(inward.bevel_from_square_deg).toBeCloseTo(-out.bevel_from_square_deg, 12);
    expect(inward.inner_face_extension).toBeCloseTo(out.inner_face_setback, 12);
  });
});

describe('joints', () => {
  it.each(['box_joint', 'comb_joint'])('%s: one slab fills what the other leaves', (name) =>
    forAll(
      (rand) => ({ length: 60 + 200 * rand(), thickness: 4 + 10 * rand(), finger_width: 8 + 20 * rand() }),
      (sizes) => {
        const { pieces, one } = make(name, sizes);
        const [a, b] = pieces.map(({ areaMm2 }) => areaMm2);
        expect(a + b).toBeCloseTo(2 * 150 * sizes.length - sizes.thickness * sizes.length, 6);
        expect(one.fingers % 2).toBe(name === 'box_joint' ? 1 : 0);
        expect(one.fingers * one.finger_width).toBeCloseTo(sizes.length, 9);
      },
    ),
  );
  it('a clearance widens every gap between fingers by itself', () => {
    const [close, loose] = [0, 0.4].map(
      (clearance) => make('box_joint', { length: 100, thickness: 10, fingers: 5, clearance }).pieces,
    );
    // Two inner gaps of the first slab; one gap between and half of one at either flank of the second.
    for (const i of [0, 1]) expect(close[i].areaMm2 - loose[i].areaMm2).toBeCloseTo(10 * 2 * 0.4, 9);
  });
});

describe('edging', () => {
  it('round a square frame has mitres of 45 degrees and long points on the outside', () => {
    const { one, row, seams } = make('half_round_edging', { radius: 10, sides: '300,200,300,200' });
    expect(row.cut_lengths).toEqual([300, 200, 300, 200].map((x) => expect.closeTo(x, 9) as number));
    expect(row.inside_lengths).toEqual([260, 160, 260, 160].map((x) => expect.closeTo(x, 9) as number));
    expect(one.mitre_angle_deg).toBeCloseTo(45, 12);
    expect(seams).toHaveLength(4);
    for (const { lengthMm } of seams) for (const x of lengthMm) expect(x).toBeCloseTo(20 * Math.SQRT2, 9);
  });
  it('may be measured inside, and left open', () => {
    const { row } = make('quarter_round_edging', {
      radius: 10,
      sides: '100,100',
      line: 'inside',
      closed: 'no',
      corner_angles_deg: 90,
    });
    expect(row.inside_lengths).toEqual([100, 100]);
    expect(row.outside_lengths).toEqual([expect.closeTo(110, 9), expect.closeTo(110, 9)]);
  });
});

describe('arcs', () => {
  it('come out the same whichever two sizes are given', () =>
    forAll(
      (rand) => ({ radius: 20 + 500 * rand(), angle_deg: 5 + 340 * rand() }),
      (sizes) => {
        const { one } = make('arc', sizes);
        const names = ['chord', 'sagitta', 'radius', 'angle_deg', 'arc_length'] as const;
        names.forEach((a, i) => {
          for (const b of names.slice(i + 1)) {
            // A chord and a radius, or a rise and a chord, speak of the smaller part alone.
            if (sizes.angle_deg > 175 && a === 'chord' && b === 'radius') continue;
            if (sizes.angle_deg > 260 && a === 'sagitta' && b === 'arc_length') continue;
            const { one: again } = make('arc', { [a]: one[a], [b]: one[b] });
            for (const name of names) expect(again[name] / one[name], `${name} from ${a} and ${b}`).toBeCloseTo(1, 6);
          }
        });
      },
      { runs: 40 },
    ));
});

describe('stacks', () => {
  it('of a sphere hold it where layers have their larger size, and lie within it where they have the smaller', () => {
    for (const [rule, sign] of [
      ['larger', 1],
      ['smaller', -1],
    ] as const) {
      const errors = [10, 5, 2.5].map((layer) => make('sphere_layers', { radius: 100, layer, rule }).one.sanded_volume);
      for (const one of errors) expect(sign * one).toBeGreaterThan(0);
      // Half the thickness, half of what is sanded away.
      expect(errors[0] / errors[1]).toBeCloseTo(2, 1);
    }
    const [coarse, fine] = [10, 5].map(
      (layer) => make('sphere_layers', { radius: 100, layer, rule: 'middle' }).one.sanded_volume,
    );
    // Discs of the middle hold pi layer² h / 12 more than the ball: order 2.
    expect(coarse / fine).toBeCloseTo(4, 6);
  });
});

it('a wall of two wraps is one sheet longer outside', () => {
  const { row } = make('wrap', { pipe_diameter: 30, thickness: 6, layers: 2 });
  expect(row.layer_lengths).toEqual([Math.PI * 36, Math.PI * 48].map((x) => expect.closeTo(x, 9) as number));
});

it('a cone of sheet has its sector from the surface that keeps its length', () => {
  const { one } = make('cone', { base_radius: 100, height: 240, thickness: 10, surface: 'outside' });
  // The neutral surface lies 5 mm under the face, square to it: 5 x 240 / 260 nearer to the axis at the rim.
  const neutral = 100 - (5 * 240) / 260;
  expect(one.slant).toBeCloseTo((neutral * 260) / 100, 9);
  expect(one.sector_angle_deg).toBeCloseTo((360 * 100) / 260, 9);
});

describe('panels measured inside', () => {
  it('of a cube are two sheets wider outside', () => {
    const { one } = make('cube', { edge: 40, thickness: 5, surface: 'inside' });
    expect(one.edge).toBeCloseTo(50, 9);
  });
  it('of a prism have the hollow that was asked for', () => {
    const { one } = make('prism', { sides: 6, side: 60, height: 120, thickness: 8, surface: 'inside' });
    expect(one.inner_side).toBeCloseTo(60, 9);
    expect(one.height).toBeCloseTo(136, 9);
  });
  it.each([0, 30])('of a pyramid with a top of %d stand the thickness apart', (top) => {
    const sizes = { sides: 5, side: 80, height: 90, top_side: top };
    const [inner, outer] = [make('pyramid', sizes), make('pyramid', { ...sizes, thickness: 6, surface: 'inside' })];
    const distances = (shape: typeof inner): number[] => {
      const { corners = [], faces = [] } = shape.solid ?? {};
      // Both stand on the axis; the outer base has sunk by the thickness.
      return faces.map((face) => {
        const [a, b, c] = face.map((v) => corners[v]);
        const [ux, uy, uz, vx, vy, vz] = [b.x - a.x, b.y - a.y, b.z - a.z, c.x - a.x, c.y - a.y, c.z - a.z];
        const n = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
        const z = shape === outer ? a.z - 6 : a.z;
        return (n[0] * a.x + n[1] * a.y + n[2] * z) / Math.hypot(...n);
      });
    };
    const [near, far] = [distances(inner), distances(outer)];
    near.forEach((one, f) => expect(far[f] - one).toBeCloseTo(6, 9));
    expect(outer.one.side_dihedral_deg).toBeCloseTo(inner.one.side_dihedral_deg, 9);
  });
});

describe('in space', () => {
  it('a branch ends on the body, square or leaning, in the middle or beside it', () =>
    forAll(
      (rand) => ({
        branch_angle_deg: 40 + 100 * rand(),
        offset: 30 * rand() - 15,
        branch_radius: 10 + 20 * rand(),
        branch_length: 300,
      }),
      (sizes) => {
        const [{ solid }] = make('branch', sizes).patches;
        for (let i = 0; i < 20; i += 1) {
          const { y, z } = solid(i / 20, 1);
          expect(Math.hypot(y, z)).toBeCloseTo(50, 9);
        }
      },
      { runs: 20 },
    ));

  /** Sides of faces that no other face shares: the rims of the shape. */
  const rims = (name: string, sizes: Typed, facets: number): number => {
    const mesh = meshOfShape(make(name, sizes), facets);
    const sides = new Map<string, number>();
    for (const face of mesh?.faces ?? [])
      face.forEach((a, i) => {
        const b = face[(i + 1) % face.length];
        const key = a < b ? `${a} ${b}` : `${b} ${a}`;
        sides.set(key, (sides.get(key) ?? 0) + 1);
      });
    return [...sides.values()].filter((count) => count === 1).length;
  };

  it.each<[string, Typed, number]>([
    ['elbow', { pieces: 5, leg: 20, thickness: 4 }, 2 * 24],
    ['frustum', { pieces: 3 }, 2 * 24],
    ['square_to_round', {}, 24 + 5],
    ['sphere_gores', {}, 0],
    ['dome_gores', {}, 0],
    ['sphere_zones', { zones: 4 }, 24],
    ['torus_gores', {}, 0],
    ['torus_zones', {}, 0],
    ['truncated_icosahedron', {}, 0],
    ['pyramid', {}, 0],
  ])('pieces of %s meet all along their seams', (name, sizes, count) => expect(rims(name, sizes, 24)).toBe(count));
});
