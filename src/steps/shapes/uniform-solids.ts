import { dot3, length3, scale3, sub3, unit3, cross3, vec3, type Vec3 } from '../../geom/vec.ts';
import { polyhedron, type Polyhedron } from './polyhedron.ts';

const PHI = (1 + Math.sqrt(5)) / 2;
const R2 = Math.SQRT2;

type Triple = readonly [number, number, number];

/** All signs of a triple; `parity` keeps those with an even (1) or odd (-1) number of minus signs. */
function signed([x, y, z]: Triple, parity?: 1 | -1): Triple[] {
  const list: Triple[] = [];
  for (const a of [1, -1])
    for (const b of [1, -1])
      for (const c of [1, -1]) if (parity === undefined || a * b * c === parity) list.push([a * x, b * y, c * z]);
  return list;
}

const cyclic = ([x, y, z]: Triple): Triple[] => [
  [x, y, z],
  [y, z, x],
  [z, x, y],
];
const swapped = ([x, y, z]: Triple): Triple => [y, x, z];

const evenTurns = (...triples: readonly Triple[]): Triple[] => triples.flatMap((one) => signed(one)).flatMap(cyclic);
const allTurns = (triple: Triple): Triple[] =>
  signed(triple).flatMap((one) => [...cyclic(one), ...cyclic(swapped(one))]);

/** Root of x³ + x² + x = 1, from which the snub cube's corners come. */
const snubCubeRoot = (): number => {
  let x = 0.5;
  for (let i = 0; i < 60; i += 1) x -= (x ** 3 + x ** 2 + x - 1) / (3 * x ** 2 + 2 * x + 1);
  return x;
};

function snubCube(): Triple[] {
  const t = 1 / snubCubeRoot();
  const base: Triple = [1, 1 / t, t];
  // Even turns with an even number of plus signs, odd turns with an odd number.
  return [...cyclic(base).flatMap((one) => signed(one, -1)), ...cyclic(swapped(base)).flatMap((one) => signed(one, 1))];
}

/** Snub dodecahedron: the turns of an icosahedron's group on one point chosen so that all its three kinds of neighbours are equally near. */
function snubDodecahedron(): Triple[] {
  const turns = icosahedralTurns();
  const [a, b, c] = [unit3(vec3(0, 1, PHI)), unit3(vec3(1, PHI, 0)), unit3(vec3(PHI, 0, 1))].map((one) => one);
  // A five-fold axis, a three-fold one and a two-fold one about one triangle of mirrors.
  const five = a;
  const three = unit3(vec3(a.x + b.x + c.x, a.y + b.y + c.y, a.z + b.z + c.z));
  const two = unit3(vec3(a.x + c.x, a.y + c.y, a.z + c.z));
  const gap = (p: Vec3, axis: Vec3, angle: number): number => length3(sub3(turned(p, axis, angle), p));
  const errors = (u: number, v: number): readonly [number, number] => {
    const p = unit3(
      vec3(five.x + u * three.x + v * two.x, five.y + u * three.y + v * two.y, five.z + u * three.z + v * two.z),
    );
    const [g5, g3, g2] = [gap(p, five, (2 * Math.PI) / 5), gap(p, three, (2 * Math.PI) / 3), gap(p, two, Math.PI)];
    return [g5 - g3, g3 - g2];
  };
  let [u, v] = [1, 1];
  for (let i = 0; i < 80; i += 1) {
    const [e, h] = [errors(u, v), 1e-7];
    const [eu, ev] = [errors(u + h, v), errors(u, v + h)];
    const [a11, a12, a21, a22] = [(eu[0] - e[0]) / h, (ev[0] - e[0]) / h, (eu[1] - e[1]) / h, (ev[1] - e[1]) / h];
    const det = a11 * a22 - a12 * a21;
    u -= (e[0] * a22 - e[1] * a12) / det;
    v -= (e[1] * a11 - e[0] * a21) / det;
  }
  const p = unit3(
    vec3(five.x + u * three.x + v * two.x, five.y + u * three.y + v * two.y, five.z + u * three.z + v * two.z),
  );
  return turns.map((turn): Triple => {
    const q = turn(p);
    return [q.x, q.y, q.z];
  });
}

function turned(p: Vec3, axis: Vec3, angle: number): Vec3 {
  const [c, s, along] = [Math.cos(angle), Math.sin(angle), dot3(axis, p)];
  const q = cross3(axis, p);
  return vec3(
    p.x * c + q.x * s + axis.x * along * (1 - c),
    p.y * c + q.y * s + axis.y * along * (1 - c),
    p.z * c + q.z * s + axis.z * along * (1 - c),
  );
}

/** The sixty turns that bring an icosahedron onto itself. */
function icosahedralTurns(): ((p: Vec3) => Vec3)[] {
  const corners = evenTurns([0, 1, PHI])
    .filter(unique)
    .map(([x, y, z]) => unit3(vec3(x, y, z)));
  const near = 2 / length3(vec3(0, 1, PHI)) + 1e-6;
  const frames = corners.flatMap((a) =>
    corners.filter((b) => b !== a && length3(sub3(a, b)) < near).map((b) => [a, b] as const),
  );
  const frameOf = (a: Vec3, b: Vec3): readonly [Vec3, Vec3, Vec3] => {
    const y = unit3(sub3(b, scale3(a, dot3(a, b))));
    return [a, y, cross3(a, y)];
  };
  const first = frameOf(...frames[0]);
  return frames.map(([a, b]) => {
    const [x, y, z] = frameOf(a, b);
    return (p: Vec3): Vec3 => {
      const [i, j, k] = first.map((axis) => dot3(axis, p));
      return vec3(x.x * i + y.x * j + z.x * k, x.y * i + y.y * j + z.y * k, x.z * i + y.z * j + z.z * k);
    };
  });
}

const unique = (one: Triple, i: number, all: readonly Triple[]): boolean =>
  all.findIndex((other) => one.every((x, k) => Math.abs(x - other[k]) < 1e-9)) === i;

/** Corners of the five regular and thirteen half-regular solids (coordinates of any text on polyhedra; P. Cromwell, Polyhedra, 1997), in some size. */
const CORNERS = {
  tetrahedron: () => signed([1, 1, 1], 1),
  cube: () => signed([1, 1, 1]),
  octahedron: () => evenTurns([1, 0, 0]),
  dodecahedron: () => [...signed([1, 1, 1]), ...evenTurns([0, 1 / PHI, PHI])],
  icosahedron: () => evenTurns([0, 1, PHI]),
  truncated_tetrahedron: () => cyclic([3, 1, 1]).flatMap((one) => signed(one, 1)),
  cuboctahedron: () => evenTurns([0, 1, 1]),
  truncated_cube: () => evenTurns([R2 - 1, 1, 1]),
  truncated_octahedron: () => allTurns([0, 1, 2]),
  rhombicuboctahedron: () => evenTurns([1, 1, 1 + R2]),
  truncated_cuboctahedron: () => allTurns([1, 1 + R2, 1 + 2 * R2]),
  snub_cube: snubCube,
  icosidodecahedron: () => [...evenTurns([0, 0, PHI]), ...evenTurns([1 / 2, PHI / 2, PHI ** 2 / 2])],
  truncated_dodecahedron: () => evenTurns([0, 1 / PHI, 2 + PHI], [1 / PHI, PHI, 2 * PHI], [PHI, 2, PHI + 1]),
  truncated_icosahedron: () => evenTurns([0, 1, 3 * PHI], [1, 2 + PHI, 2 * PHI], [PHI, 2, 2 * PHI + 1]),
  rhombicosidodecahedron: () => evenTurns([1, 1, PHI ** 3], [PHI ** 2, PHI, 2 * PHI], [2 + PHI, 0, PHI ** 2]),
  truncated_icosidodecahedron: () =>
    evenTurns(
      [1 / PHI, 1 / PHI, 3 + PHI],
      [2 / PHI, PHI, 1 + 2 * PHI],
      [1 / PHI, PHI ** 2, 3 * PHI - 1],
      [2 * PHI - 1, 2, 2 + PHI],
      [PHI, 3, 2 * PHI],
    ),
  snub_dodecahedron: snubDodecahedron,
} as const;

export type UniformSolid = keyof typeof CORNERS;

export const PLATONIC = [
  'tetrahedron',
  'cube',
  'octahedron',
  'dodecahedron',
  'icosahedron',
] as const satisfies readonly UniformSolid[];
export const ARCHIMEDEAN = (Object.keys(CORNERS) as UniformSolid[]).filter(
  (name) => !(PLATONIC as readonly string[]).includes(name),
);

const known = new Map<UniformSolid, Polyhedron>();

/** A regular or half-regular solid with edges of 1 mm about the origin. */
export function uniformSolid(name: UniformSolid): Polyhedron {
  const before = known.get(name);
  if (before !== undefined) return before;
  const raw = CORNERS[name]()
    .filter(unique)
    .map(([x, y, z]) => vec3(x, y, z));
  const nearest = Math.min(...raw.slice(1).map((p) => length3(sub3(p, raw[0]))));
  const corners = raw.map((p) => scale3(p, 1 / nearest));
  const made = polyhedron({ corners, faces: facesOf(corners) });
  known.set(name, made);
  return made;
}

/** Faces of a solid all of whose edges are 1 long and join nearest corners: at each corner the next edge clockwise about the way outward. */
function facesOf(corners: readonly Vec3[]): number[][] {
  const around = corners.map((p, i) => {
    const out = unit3(p);
    const near = corners.flatMap((q, j) => (j !== i && Math.abs(length3(sub3(q, p)) - 1) < 1e-6 ? [j] : []));
    const x = unit3(sub3(sub3(corners[near[0]], p), scale3(out, dot3(sub3(corners[near[0]], p), out))));
    const y = cross3(out, x);
    const angle = (j: number): number => Math.atan2(dot3(sub3(corners[j], p), y), dot3(sub3(corners[j], p), x));
    return near.sort((a, b) => angle(a) - angle(b));
  });
  const done = new Set<string>();
  const faces: number[][] = [];
  corners.forEach((_, start) => {
    for (const second of around[start]) {
      if (done.has(`${start} ${second}`)) continue;
      const face: number[] = [];
      let [a, b] = [start, second];
      while (!done.has(`${a} ${b}`)) {
        done.add(`${a} ${b}`);
        face.push(a);
        const list = around[b];
        // The face lies on the left: coming into b, turn to the next edge clockwise from the way back.
        const next = list[(list.indexOf(a) + list.length - 1) % list.length];
        [a, b] = [b, next];
      }
      faces.push(face);
    }
  });
  return faces;
}
