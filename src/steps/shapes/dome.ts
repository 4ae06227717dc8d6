import { ok } from '../../base/result.ts';
import { add3, length3, scale3, unit3, vec3, type Vec3 } from '../../geom/vec.ts';
import { facePieces } from './face-pieces.ts';
import { degrees, measures, mm, mm2, plain } from './measures.ts';
import { polyhedron, surfaceArea, volumeOf } from './polyhedron.ts';
import { warning } from './rolled-sheet.ts';
import type { ShapeKind } from './shape-kind.ts';
import { choice, count, length } from './size-fields.ts';

/** Lengths that differ by less than this share are one strut. */
const ALIKE_SHARE = 1e-9;

/** An icosahedron with a corner at the top, on the sphere of radius 1. */
function icosahedron(): { corners: Vec3[]; faces: (readonly [number, number, number])[] } {
  const [z, r] = [1 / Math.sqrt(5), 2 / Math.sqrt(5)];
  const ring = (height: number, shift: number): Vec3[] =>
    Array.from({ length: 5 }, (_, i) =>
      vec3(r * Math.cos(((i + shift) * 2 * Math.PI) / 5), r * Math.sin(((i + shift) * 2 * Math.PI) / 5), height),
    );
  const corners = [vec3(0, 0, 1), ...ring(z, 0), ...ring(-z, 0.5), vec3(0, 0, -1)];
  const faces = [0, 1, 2, 3, 4].flatMap((i): [number, number, number][] => {
    const j = (i + 1) % 5;
    return [
      [0, 1 + i, 1 + j],
      [1 + i, 6 + i, 1 + j],
      [1 + j, 6 + i, 6 + j],
      [11, 6 + j, 6 + i],
    ];
  });
  return { corners, faces };
}

/**
 * Dome of triangles: every face of an icosahedron is parted into frequency² triangles whose corners are pushed out to the sphere (class I).
 * A chord factor is the length of a strut over the radius (chord tables of geodesic domes).
 */
export const DOME: ShapeKind = {
  name: 'dome',
  also: ['geodesic_dome', 'dome_chords', 'icosahedral_dome'],
  says: 'Sphere or dome of flat triangles over an icosahedron: struts by their chord factors, panels with bevels.',
  sizes: [
    length('radius', 'radius of the sphere through the corners', { default: 100 }),
    count('frequency', 'parts of each edge of the icosahedron', { default: 2, most: 12 }),
    choice('part', 'sphere: the whole; dome: the upper half', ['sphere', 'dome']),
  ],
  develop: (sizes) => {
    const [radius, frequency, isDome] = [sizes.num('radius'), sizes.num('frequency'), sizes.word('part') === 'dome'];
    const base = icosahedron();
    const corners: Vec3[] = [];
    const numbers = new Map<string, number>();
    const cornerAt = (p: Vec3): number => {
      const key = [p.x, p.y, p.z].map((x) => Math.round(x * 1e7) + 0).join(' ');
      const known = numbers.get(key);
      if (known !== undefined) return known;
      numbers.set(key, corners.length);
      return corners.push(scale3(p, radius)) - 1;
    };
    const faces: number[][] = [];
    for (const [a, b, c] of base.faces) {
      const at = (i: number, j: number): number => {
        const k = frequency - i - j;
        return cornerAt(
          unit3(add3(add3(scale3(base.corners[a], k), scale3(base.corners[b], i)), scale3(base.corners[c], j))),
        );
      };
      for (let i = 0; i < frequency; i += 1)
        for (let j = 0; i + j < frequency; j += 1) {
          faces.push([at(i, j), at(i + 1, j), at(i, j + 1)]);
          if (i + j + 1 < frequency) faces.push([at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
        }
    }
    const upper = isDome ? faces.filter((face) => face.reduce((sum, v) => sum + corners[v].z, 0) > 0) : faces;
    const solid = polyhedron({ corners, faces: upper });
    const lengths: { length: number; count: number; dihedral: number }[] = [];
    for (const [length, dihedral] of sidesOf(solid)) {
      const known = lengths.find((one) => Math.abs(one.length - length) <= ALIKE_SHARE * radius);
      if (known === undefined) lengths.push({ length, count: 1, dihedral });
      else {
        known.count += 1;
        if (Number.isNaN(known.dihedral)) known.dihedral = dihedral;
      }
    }
    lengths.sort((a, b) => a.length - b.length);
    const letter = (i: number): string =>
      i < 26
        ? String.fromCharCode(65 + i)
        : `${String.fromCharCode(64 + Math.floor(i / 26))}${String.fromCharCode(65 + (i % 26))}`;
    const perStrut = (name: string, figure: (one: (typeof lengths)[number]) => ReturnType<typeof mm>) =>
      Object.fromEntries(lengths.map((one, i) => [`${name}_${letter(i)}`, figure(one)]));
    const letters = (face: readonly number[]): string =>
      face
        .map((v, i) => {
          const [p, q] = [corners[v], corners[face[(i + 1) % 3]]];
          const length = length3(vec3(p.x - q.x, p.y - q.y, p.z - q.z));
          return letter(lengths.findIndex((one) => Math.abs(one.length - length) <= ALIKE_SHARE * radius));
        })
        .sort()
        .join('');
    return ok({
      solid,
      pieces: facePieces(solid, (f) => `triangle ${letters(upper[f])}`),
      measures: measures({
        ...perStrut('strut', ({ length }) => mm(length)),
        ...perStrut('chord_factor', ({ length }) => plain(length / radius)),
        ...perStrut('strut_count', (one) => plain(one.count)),
        ...perStrut('axial_angle_deg', ({ length }) => degrees(Math.asin(length / 2 / radius))),
        ...perStrut('dihedral_deg', ({ dihedral }) => degrees(dihedral)),
        ...perStrut('bevel_from_square_deg', ({ dihedral }) => degrees((Math.PI - dihedral) / 2)),
        faces: plain(upper.length),
        struts: plain(lengths.reduce((sum, one) => sum + one.count, 0)),
        vertices: plain(new Set(upper.flat()).size),
        area: mm2(surfaceArea(solid)),
        volume: isDome ? undefined : { value: volumeOf(solid), unit: 'mm³' },
      }),
      warnings:
        isDome && frequency % 2 === 1
          ? [warning('shape/rim', 'The rim of this dome is not level: use an even frequency for a level one.')]
          : [],
    });
  },
};

/** Every edge once, with its angle where two faces meet on it. */
function sidesOf({ corners, faces, edges }: ReturnType<typeof polyhedron>): (readonly [number, number])[] {
  const inside = new Set(edges.flatMap(({ a, b }) => [`${a} ${b}`, `${b} ${a}`]));
  const rim = faces.flatMap((face) =>
    face.flatMap((a, i) => {
      const b = face[(i + 1) % face.length];
      const [p, q] = [corners[a], corners[b]];
      return inside.has(`${a} ${b}`) ? [] : [[Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z), NaN] as const];
    }),
  );
  return [...edges.map(({ length, dihedral }) => [length, dihedral] as const), ...rim];
}
