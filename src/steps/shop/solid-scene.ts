import { buildTree, type SurfaceTree } from '../../geom/bvh.ts';
import { cross3, length3, pointAt3, sub3, type Vec3 } from '../../geom/vec.ts';

/** A piece as a plate: two skins over the same triangles, counter-clockwise from the face. */
export interface ScenePlate {
  readonly triangles: ArrayLike<number>;
  /** x y z per vertex, mm. */
  readonly face: ArrayLike<number>;
  readonly back: ArrayLike<number>;
}

/** Plates as closed bodies of triangles, ready to be drawn by their edges. */
export interface SolidScene {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** Outward, of length 1; 0 where a triangle has no area. */
  readonly normals: readonly Vec3[];
  /** Two vertices for each edge, and the triangles on both sides of it; the second is -1 where there is none. */
  readonly edgeVertices: Uint32Array;
  readonly edgeTriangles: Int32Array;
  /** Which plate each edge is of. */
  readonly edgePlate: Uint32Array;
  /** For each plate its first triangle of the face and how many there are. */
  readonly faceTriangles: readonly { readonly first: number; readonly count: number }[];
  readonly tree: SurfaceTree;
}

export function solidScene(plates: readonly ScenePlate[]): SolidScene {
  const positions: number[] = [];
  const triangles: number[] = [];
  const faceTriangles: { first: number; count: number }[] = [];
  const firstOfPlate: number[] = [];
  for (const { triangles: own, face, back } of plates) {
    const base = positions.length / 3;
    const count = face.length / 3;
    for (let i = 0; i < face.length; i += 1) positions.push(face[i]);
    for (let i = 0; i < back.length; i += 1) positions.push(back[i]);
    firstOfPlate.push(triangles.length / 3);
    faceTriangles.push({ first: triangles.length / 3, count: own.length / 3 });
    const onFace = (v: number): number => base + v;
    const onBack = (v: number): number => base + count + v;
    for (let h = 0; h < own.length; h += 1) triangles.push(onFace(own[h]));
    for (let t = 0; t < own.length; t += 3) triangles.push(onBack(own[t]), onBack(own[t + 2]), onBack(own[t + 1]));
    for (const [a, b] of borderOf(own))
      triangles.push(onFace(a), onBack(a), onBack(b), onFace(a), onBack(b), onFace(b));
  }
  const bodies = { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
  return { ...sceneOf(bodies, firstOfPlate), faceTriangles };
}

/** One body that is no plate, counter-clockwise from outside. */
export const bodyScene = (body: Pick<SolidScene, 'positions' | 'triangles'>): SolidScene => ({
  ...sceneOf(body, [0]),
  faceTriangles: [],
});

const sceneOf = (
  { positions, triangles }: Pick<SolidScene, 'positions' | 'triangles'>,
  firstOfPlate: readonly number[],
): Omit<SolidScene, 'faceTriangles'> => ({
  positions,
  triangles,
  normals: normalsOf(positions, triangles),
  ...edgesOf(triangles, firstOfPlate),
  tree: buildTree(positions, triangles),
});

/** Sides that only one triangle has, in its own direction. */
function borderOf(triangles: ArrayLike<number>): readonly (readonly [number, number])[] {
  const sides = new Map<string, [number, number]>();
  const after = (h: number): number => (h % 3 === 2 ? h - 2 : h + 1);
  for (let h = 0; h < triangles.length; h += 1) {
    const [a, b] = [triangles[h], triangles[after(h)]];
    if (!sides.delete(`${b} ${a}`)) sides.set(`${a} ${b}`, [a, b]);
  }
  return [...sides.values()];
}

function normalsOf(positions: Float64Array, triangles: Uint32Array): readonly Vec3[] {
  return Array.from({ length: triangles.length / 3 }, (_, t) => {
    const [a, b, c] = [0, 1, 2].map((k) => pointAt3(positions, triangles[3 * t + k]));
    const normal = cross3(sub3(b, a), sub3(c, a));
    const length = length3(normal);
    return length > 0 ? { x: normal.x / length, y: normal.y / length, z: normal.z / length } : normal;
  });
}

function edgesOf(
  triangles: Uint32Array,
  firstOfPlate: readonly number[],
): Pick<SolidScene, 'edgeVertices' | 'edgeTriangles' | 'edgePlate'> {
  const vertices: number[] = [];
  const sides: number[] = [];
  const plateOf: number[] = [];
  const known = new Map<number, number>();
  const span = triangles.reduce((most, v) => Math.max(most, v), 0) + 1;
  let plate = 0;
  for (let h = 0; h < triangles.length; h += 1) {
    const t = Math.floor(h / 3);
    while (plate + 1 < firstOfPlate.length && t >= firstOfPlate[plate + 1]) plate += 1;
    const [a, b] = [triangles[h], triangles[h % 3 === 2 ? h - 2 : h + 1]];
    const key = Math.min(a, b) * span + Math.max(a, b);
    const edge = known.get(key);
    if (edge === undefined) {
      known.set(key, vertices.length / 2);
      vertices.push(a, b);
      sides.push(t, -1);
      plateOf.push(plate);
    } else if (sides[2 * edge + 1] < 0) sides[2 * edge + 1] = t;
  }
  return {
    edgeVertices: Uint32Array.from(vertices),
    edgeTriangles: Int32Array.from(sides),
    edgePlate: Uint32Array.from(plateOf),
  };
}
