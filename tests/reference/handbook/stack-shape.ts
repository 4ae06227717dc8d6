import { vec3 } from '../../../src/geom/vec.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { plainMesh } from '../../../src/mesh/plain-mesh.ts';
import type { Shape, ShapeFaces, ShapePatch } from '../../../src/model/shape.ts';
import { meshOfShape } from '../../../src/steps/shapes/shape-mesh.ts';
import { makeStack } from '../../../src/steps/stack/make-stack.ts';
import { expectOk } from '../../support/expect-ok.ts';
import type { LaidShape } from './lay-shape.ts';

/** The finished body of shapes that are stacked of sheets, made of its sizes alone. */
const BODIES: Readonly<
  Record<string, (shape: Shape) => { readonly patches: readonly ShapePatch[]; readonly solid: ShapeFaces | null }>
> = {
  sphere_layers: (shape) => {
    const radius = sizeOf(shape, 'radius');
    return round([0.5, (v) => [radius * Math.cos(Math.PI * (v - 0.5)), radius * Math.sin(Math.PI * (v - 0.5))]]);
  },
  cone_layers: (shape) => {
    const [base, high] = [sizeOf(shape, 'base_radius'), sizeOf(shape, 'height')];
    return round([0, (v) => [base * v, 0]], [0, (v) => [base * (1 - v), high * v]]);
  },
  torus_layers: (shape) => {
    const [major, minor] = [sizeOf(shape, 'major_radius'), sizeOf(shape, 'minor_radius')];
    return round([1, (v) => [major + minor * Math.cos(2 * Math.PI * v), minor * Math.sin(2 * Math.PI * v)]]);
  },
  tapered_layers: (shape) => {
    const [half, rise, long] = [sizeOf(shape, 'half_width'), sizeOf(shape, 'rise'), sizeOf(shape, 'length')];
    return {
      patches: [],
      solid: {
        corners: [0, long].flatMap((y) => [vec3(-half, y, 0), vec3(half, y, 0), vec3(0, y, rise)]),
        faces: [
          [0, 1, 2],
          [3, 5, 4],
          [0, 3, 4, 1],
          [1, 4, 5, 2],
          [2, 5, 3, 0],
        ],
      },
    };
  },
};

/** Whether a shape is a stack of sheets, which the sculpt route stacks and does not lay flat. */
export const isStacked = ({ name }: Shape): boolean => name in BODIES;

const sizeOf = ({ sizes }: Shape, name: string): number => Number(sizes[name]);

type Profile = readonly [across: number, at: (v: number) => readonly [r: number, z: number]];

const round = (...profiles: readonly Profile[]): { patches: ShapePatch[]; solid: null } => ({
  solid: null,
  patches: profiles.map(([across, at]) => ({
    piece: '',
    facets: [1, across],
    solid: (u, v) => {
      const [[r, z], angle] = [at(v), 2 * Math.PI * (u % 1)];
      return vec3(r * Math.cos(angle), r * Math.sin(angle), z);
    },
  })),
});

function bodyOf(shape: Shape, facets: number): Mesh {
  const made = meshOfShape(BODIES[shape.name](shape), facets);
  if (made === null) throw new Error(`${shape.name} has no body`);
  return plainMesh(
    Float64Array.from(made.corners.flatMap(({ x, y, z }) => [x, y, z])),
    Uint32Array.from(made.faces.flatMap((face) => face.slice(2).flatMap((c, i) => [face[0], face[i + 1], c]))),
  );
}

/** The body as a mesh, stacked as a sculpt is by the larger face: area of all layers against the closed form; stacks have no seams. */
export function stackShape(shape: Shape, facets: number): LaidShape {
  const mesh = bodyOf(shape, facets);
  const sheetsMm = [sizeOf(shape, 'layer')];
  const { layers } = expectOk(makeStack(mesh, { axis: vec3(0, 0, 1), rule: 'larger', sheetsMm, seat: 'bottom' }));
  const area = shape.pieces.reduce((sum, { areaMm2, quantity }) => sum + areaMm2 * quantity, 0);
  return {
    pieces: layers.length,
    triangles: mesh.triangles.length / 3,
    areaError: layers.reduce((sum, { outlineAreaMm2 }) => sum + outlineAreaMm2, 0) / area - 1,
    seamError: 0,
    worstStretchPct: 0,
  };
}
