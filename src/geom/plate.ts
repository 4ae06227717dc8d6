/**
 * A piece of sheet foam as a solid: one surface of triangles twice, as its face and as its back, closed by walls along its borders. Corners are
 * packed xyz, mm; face and back have one for each vertex.
 */
export interface Plate {
  /** Three vertices per triangle, counter-clockwise seen from outside the face. */
  readonly triangles: Uint32Array;
  readonly face: ArrayLike<number>;
  readonly back: ArrayLike<number>;
  /** Half-edges along the border: `3 t + k` runs from corner `k` of triangle `t` to the next. */
  readonly borders: Uint32Array;
}

/** What a triangle of a plate's skin belongs to: face, back, or a face that a blade made. */
export const PLATE_SKIN = { face: 0, back: 1, cut: 2 } as const;
export type PlateSkin = (typeof PLATE_SKIN)[keyof typeof PLATE_SKIN];

/**
 * Calls for every triangle of the closed skin, outside counter-clockwise. Corners below the number of vertices are those of the face, the
 * others those of the back: vertex + number of vertices.
 */
export function eachPlateTriangle(
  { triangles, face, borders }: Pick<Plate, 'triangles' | 'face' | 'borders'>,
  take: (a: number, b: number, c: number, skin: PlateSkin) => void,
): void {
  const n = face.length / 3;
  for (let i = 0; i < triangles.length; i += 3) {
    const [a, b, c] = [triangles[i], triangles[i + 1], triangles[i + 2]];
    take(a, b, c, PLATE_SKIN.face);
    take(n + a, n + c, n + b, PLATE_SKIN.back);
  }
  for (const h of borders) {
    const [v, w] = [triangles[h], triangles[h % 3 === 2 ? h - 2 : h + 1]];
    take(n + v, n + w, w, PLATE_SKIN.cut);
    take(n + v, w, v, PLATE_SKIN.cut);
  }
}

/** Volume of the foam in a plate, mm³: the sum of the tetrahedra under its triangles (divergence theorem), about its first corner. */
export function plateVolume(plate: Plate): number {
  const { face, back } = plate;
  const n = face.length / 3;
  const at = (v: number, k: number): number => (v < n ? face[3 * v + k] : back[3 * (v - n) + k]) - face[k];
  let six = 0;
  eachPlateTriangle(plate, (a, b, c) => {
    const [bx, by, bz, cx, cy, cz] = [at(b, 0), at(b, 1), at(b, 2), at(c, 0), at(c, 1), at(c, 2)];
    six += at(a, 0) * (by * cz - bz * cy) + at(a, 1) * (bz * cx - bx * cz) + at(a, 2) * (bx * cy - by * cx);
  });
  return six / 6;
}

/** Half-edges that no triangle runs against: the border of a surface whose triangles all turn one way. */
export function borderHalfedges(triangles: Uint32Array): Uint32Array {
  const count = triangles.reduce((most, v) => Math.max(most, v + 1), 0);
  const target = (h: number): number => triangles[h % 3 === 2 ? h - 2 : h + 1];
  const known = new Set<number>();
  for (let h = 0; h < triangles.length; h += 1) known.add(triangles[h] * count + target(h));
  return Uint32Array.from(triangles.keys()).filter((h) => !known.has(target(h) * count + triangles[h]));
}
