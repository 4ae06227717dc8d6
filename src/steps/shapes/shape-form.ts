import { runAtOnce } from '../../base/stepwise.ts';
import { chainRing } from '../../geom/outline.ts';
import { vec3, type Vec3 } from '../../geom/vec.ts';
import { terraced } from '../../mesh/extruded.ts';
import { triangleNormal } from '../../mesh/measure.ts';
import type { Mesh } from '../../mesh/mesh.ts';
import { plainMesh } from '../../mesh/plain-mesh.ts';
import { vertexOffsetSteps } from '../../mesh/vertex-offset.ts';
import type { Shape, ShapePatch } from '../../model/shape.ts';
import { cuboid } from './box.ts';
import type { ShapeFoam } from './foam-of-shape.ts';
import { meshOfShape } from './shape-mesh.ts';

/** Chords of the finished surface lie no farther inside it, mm, up to a radius of some metres. */
export const FORM_CHORD_MM = 0.2;
/** The same of profiles and outlines, which cost no more facets than one row, mm. */
const ROUND_CHORD_MM = 0.02;
/** Fewest facets to a turn, and most facets of one form. */
const FEWEST_FACETS = 24;
const MOST_FACETS = 20_000;

/**
 * The finished foam of a shape: both skins, and the cuts between them where it is open, or one skin where the foam has no thickness yet.
 * @returns null where it has no form of its own.
 */
export function formOfShape(shape: Shape, { thicknessMm, neutralFraction }: ShapeFoam): Mesh | null {
  const { solid, patches, name } = shape;
  if (solid !== null) return shell(surfaceOf(shape), 0, -thicknessMm);
  if (patches.length > 0)
    return shell(surfaceOf(shape), (1 - neutralFraction) * thicknessMm, -neutralFraction * thicknessMm);
  return (FORMS[name] ?? flatForm)(shape, thicknessMm);
}

interface Surface {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
}

function surfaceOf(shape: Pick<Shape, 'patches' | 'solid'>): Surface {
  const made = meshOfShape(shape, facetsFor(shape.patches));
  if (made === null) throw new Error('a shape without a surface');
  return {
    positions: Float64Array.from(made.corners.flatMap(({ x, y, z }) => [x, y, z])),
    triangles: Uint32Array.from(
      made.faces.flatMap((face) => face.slice(2).flatMap((c, i) => [face[0], face[i + 1], c])),
    ),
  };
}

/** Facets to a whole turn that keep the chord, fewer where there would be too many of them. */
function facetsFor(patches: readonly ShapePatch[]): number {
  const places = [0, 0.25, 0.5, 0.75, 1];
  let reach = 0;
  for (const { solid } of patches)
    for (const u of places)
      for (const v of places) {
        const { x, y, z } = solid(u, v);
        reach = Math.max(reach, Math.abs(x), Math.abs(y), Math.abs(z));
      }
  const sagitta = Math.min(1, FORM_CHORD_MM / Math.max(reach, 1e-9));
  let facets = Math.max(FEWEST_FACETS, 4 * Math.ceil(Math.PI / Math.acos(1 - sagitta) / 4));
  const countOf = (): number =>
    patches.reduce((sum, { facets: [a, b] = [1, 0] }) => sum + Math.max(1, facets * a) * Math.max(1, facets * b), 0);
  while (facets > FEWEST_FACETS && countOf() > MOST_FACETS)
    facets = Math.max(FEWEST_FACETS, 4 * Math.floor(facets / 5));
  return facets;
}

/** Both skins of a wall, `out` and `back` from the surface, mm, outward > 0, with the cuts between them along open edges. */
function shell({ positions, triangles }: Surface, out: number, back: number): Mesh {
  if (out === back) return plainMesh(positions, triangles);
  const { directions } = runAtOnce(vertexOffsetSteps(positions, triangles));
  const moved = (by: number): Float64Array => positions.map((x, i) => x + by * directions[i]);
  const [outer, inner] = [moved(out), moved(back)];
  // Where nothing is left inside the inner skin would be inside out: then the foam is solid.
  const rims = openEdges(triangles);
  if (rims.length === 0 && isInsideOut(inner, positions, triangles)) return plainMesh(outer, triangles);
  const count = positions.length / 3;
  const all = new Float64Array(6 * count);
  all.set(outer);
  all.set(inner, 3 * count);
  const list: number[] = [...triangles];
  for (let t = 0; t < triangles.length; t += 3)
    list.push(triangles[t] + count, triangles[t + 2] + count, triangles[t + 1] + count);
  for (const [a, b] of rims) list.push(b, a, a + count, b, a + count, b + count);
  return plainMesh(all, Uint32Array.from(list));
}

/** Edges that one triangle has alone, as it runs along them. */
function openEdges(triangles: Uint32Array): readonly (readonly [number, number])[] {
  const open = new Map<number, readonly [number, number]>();
  const count = triangles.reduce((most, v) => Math.max(most, v), 0) + 1;
  for (let i = 0; i < triangles.length; i += 1) {
    const [a, b] = [triangles[i], triangles[i % 3 === 2 ? i - 2 : i + 1]];
    if (!open.delete(b * count + a)) open.set(a * count + b, [a, b]);
  }
  return [...open.values()];
}

function isInsideOut(moved: Float64Array, positions: Float64Array, triangles: Uint32Array): boolean {
  for (let t = 0; t < triangles.length / 3; t += 1) {
    const [n, m] = [triangleNormal(moved, triangles, t), triangleNormal(positions, triangles, t)];
    if (n.x * m.x + n.y * m.y + n.z * m.z < 0) return true;
  }
  return false;
}

const number = ({ sizes }: Shape, name: string): number => {
  const value = sizes[name];
  if (typeof value !== 'number') throw new Error(`size ${name} is no number`);
  return value;
};

/** A single flat piece as thick as its sheet; several have no form that is known. */
function flatForm({ pieces }: Shape, thicknessMm: number): Mesh | null {
  const [piece] = pieces;
  if (pieces.length !== 1 || piece.quantity !== 1 || piece.bend.kind !== 'flat' || !(thicknessMm > 0)) return null;
  const [outer, ...holes] = [piece.outline, ...piece.holes].map((ring) =>
    chainRing(
      ring.flatMap((edge) => edge.segments),
      ROUND_CHORD_MM,
    ),
  );
  return terraced([{ regions: [{ outer, holes }], bottom: 0, top: thicknessMm }]);
}

interface ProfileCorner {
  readonly r: number;
  readonly z: number;
}

/** Turned round the z axis. @param profile  closed, counter-clockwise with r to the right and z up. */
function turned(profile: readonly ProfileCorner[]): Mesh {
  const patches = profile.flatMap((p, i): ShapePatch[] => {
    const q = profile[(i + 1) % profile.length];
    if (p.r === 0 && q.r === 0) return [];
    return [
      {
        piece: '',
        solid: (u, v): Vec3 => {
          const [r, angle] = [p.r + (q.r - p.r) * v, 2 * Math.PI * (u % 1)];
          return vec3(r * Math.cos(angle), r * Math.sin(angle), p.z + (q.z - p.z) * v);
        },
      },
    ];
  });
  const { positions, triangles } = surfaceOf({ patches, solid: null });
  return plainMesh(positions, triangles);
}

/** An arc of a profile about (r, z), angles from +r, its ends among the corners. */
function profileArc(r: number, z: number, radius: number, from: number, to: number): readonly ProfileCorner[] {
  const sagitta = Math.min(1, ROUND_CHORD_MM / Math.max(radius, 1e-9));
  const count = Math.min(720, Math.max(8, Math.ceil(Math.abs(to - from) / (2 * Math.acos(1 - sagitta)))));
  return Array.from({ length: count + 1 }, (_, i) => {
    const angle = from + ((to - from) * i) / count;
    const out = r + radius * Math.cos(angle);
    return { r: Math.abs(out) < 1e-9 * radius ? 0 : out, z: z + radius * Math.sin(angle) };
  });
}

/** A body with a core hole of radius c through it: its profile as far as it lies outside the hole. @param arc  from its lower to its upper end. */
const withCore = (arc: readonly ProfileCorner[], core: number): readonly ProfileCorner[] => {
  const [first, last] = [arc[0], arc[arc.length - 1]];
  return [
    ...arc,
    ...(last.r > core ? [{ r: core, z: last.z }] : []),
    ...(first.r > core ? [{ r: core, z: first.z }] : []),
  ];
};

const extruded = (ring: readonly number[], heightMm: number): Mesh | null =>
  terraced([{ regions: [{ outer: Float64Array.from(ring), holes: [] }], bottom: 0, top: heightMm }]);

const plate = (shape: Shape, thicknessMm: number): Mesh | null => {
  const [outer, inner, whole] = ['outer_radius', 'inner_radius', 'angle_deg'].map((name) => number(shape, name));
  if (!(thicknessMm > 0)) return null;
  if (whole === 360)
    return turned([
      { r: inner, z: 0 },
      { r: outer, z: 0 },
      { r: outer, z: thicknessMm },
      { r: inner, z: thicknessMm },
    ]);
  const at = (r: number, from: number, to: number): number[] =>
    profileArc(0, 0, r, from, to).flatMap(({ r: x, z }) => [x, z]);
  const turn = (whole * Math.PI) / 180;
  return extruded([...at(outer, 0, turn), ...(inner > 0 ? at(inner, turn, 0) : [0, 0])], thicknessMm);
};

const corner = (shape: Shape): Mesh | null => {
  const [long, first, reach] = ['length', 'thickness', 'slab_length'].map((name) => number(shape, name));
  const second = shape.sizes.other_thickness === undefined ? first : number(shape, 'other_thickness');
  return extruded([0, 0, reach, 0, reach, first, second, first, second, reach, 0, reach], long);
};

/** Edging round a circle; along straight sides it has no place of its own. */
const edging =
  (share: number) =>
  (shape: Shape): Mesh | null => {
    if (shape.sizes.ring_radius === undefined) return null;
    const radius = number(shape, 'radius');
    const width = share === 1 ? 2 * radius : radius;
    const middle = shape.sizes.line === 'outside' ? 0 : shape.sizes.line === 'middle' ? 0.5 : 1;
    const outside = number(shape, 'ring_radius') + middle * width;
    const round =
      share === 1
        ? profileArc(outside - radius, 0, radius, 0, Math.PI)
        : profileArc(outside - width, 0, radius, 0, Math.PI / 2);
    const profile = share === 1 ? round : [...round, { r: outside - width, z: 0 }];
    return turned(profile.map(({ r, z }) => ({ r: Math.max(0, r), z })));
  };

/** Finished forms of shapes that have no surface of patches: of stacks the round body that is sanded from them. */
const FORMS: Readonly<Record<string, (shape: Shape, thicknessMm: number) => Mesh | null>> = {
  sphere_layers: (shape) => {
    const [radius, core] = [number(shape, 'radius'), number(shape, 'core_diameter') / 2];
    if (core >= radius) return null;
    const rise = Math.acos(core / radius);
    const isHalf = shape.sizes.part === 'half';
    return turned(withCore(profileArc(0, 0, radius, isHalf ? 0 : -rise, rise), core));
  },
  cone_layers: (shape) => {
    const [base, top, height] = ['base_radius', 'top_radius', 'height'].map((name) => number(shape, name));
    const core = number(shape, 'core_diameter') / 2;
    if (core >= Math.min(base, top) && core > 0) return null;
    return turned(
      withCore(
        [
          { r: base, z: 0 },
          { r: top, z: height },
        ],
        core,
      ),
    );
  },
  torus_layers: (shape) => {
    const [major, tube] = [number(shape, 'major_radius'), number(shape, 'minor_radius')];
    return turned(profileArc(major, 0, tube, 0, 2 * Math.PI).slice(0, -1));
  },
  tapered_layers: (shape) => {
    const [half, rise, long] = ['half_width', 'rise', 'length'].map((name) => number(shape, name));
    return extruded([-half, 0, half, 0, 0, rise], long);
  },
  box: (shape, thicknessMm) => {
    const [l, w, h] = ['length', 'width', 'height'].map((name) => number(shape, name));
    return shell(surfaceOf({ patches: [], solid: cuboid(l, w, h, shape.sizes.lid === 'no') }), 0, -thicknessMm);
  },
  ring: plate,
  box_joint: corner,
  comb_joint: corner,
  half_round_edging: edging(1),
  quarter_round_edging: edging(0.5),
};
