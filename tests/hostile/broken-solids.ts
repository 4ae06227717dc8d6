import { bumpyMesh } from '../support/bumpy-mesh.ts';
import type { Solid } from '../reference/handbook/polygon-solids.ts';
import { fins, halfTurnedBand, strip, torus } from './shapes.ts';
import { together } from '../support/run-solid.ts';

type Point = readonly [number, number, number];
type Rand = () => number;

const whole = (least: number, most: number, rand: Rand): number => least + Math.floor((most - least + 1) * rand());
const place = (size: number, rand: Rand): Point => [
  size * (rand() - 0.5),
  size * (rand() - 0.5),
  size * (rand() - 0.5),
];
const moved = ({ corners, faces, seams }: Solid, move: (p: Point, v: number) => Point): Solid => ({
  corners: corners.map(move),
  faces,
  seams,
});
const withFaces = ({ corners, seams }: Solid, faces: Solid['faces']): Solid => ({ corners, faces, seams });

/** A closed lump of about 40 triangles, 200 mm across. */
export function lump(rand: Rand): Solid {
  const { positions, triangles } = bumpyMesh(rand, 20, whole(3, 5, rand), whole(4, 7, rand));
  const triple = (list: ArrayLike<number>, i: number): Point => [list[3 * i], list[3 * i + 1], list[3 * i + 2]];
  return {
    corners: Array.from({ length: positions.length / 3 }, (_, v) => triple(positions, v)),
    faces: Array.from({ length: triangles.length / 3 }, (_, t) => triple(triangles, t)),
    seams: [],
  };
}

/** The next number a computer can hold, so many times. */
function nudged(value: number, steps: number): number {
  const bits = new BigInt64Array(new Float64Array([value]).buffer);
  bits[0] += BigInt(steps);
  return new Float64Array(bits.buffer)[0];
}

function soup(rand: Rand): Solid {
  const count = whole(1, 30, rand);
  return {
    corners: Array.from({ length: 3 * count }, () => place(150, rand)),
    faces: Array.from({ length: count }, (_, t) => [3 * t, 3 * t + 1, 3 * t + 2]),
    seams: [],
  };
}

/** Any three of a few corners, many times: edges of many faces, faces twice and turned. */
function tangle(rand: Rand): Solid {
  const corners = Array.from({ length: whole(4, 10, rand) }, () => place(150, rand));
  const any = (): number => whole(0, corners.length - 1, rand);
  return { corners, faces: Array.from({ length: whole(2, 30, rand) }, () => [any(), any(), any()]), seams: [] };
}

/** Cones that share nothing but their tips. */
function tipToTip(rand: Rand): Solid {
  const sides = whole(3, 7, rand);
  const ring = (z: number): Point[] =>
    Array.from({ length: sides }, (_, i) => {
      const angle = (2 * Math.PI * i) / sides;
      return [60 * Math.cos(angle), 60 * Math.sin(angle), z];
    });
  const at = (i: number): number => 1 + (i % sides);
  return {
    corners: [[0, 0, 0], ...ring(80), ...ring(-70)],
    faces: Array.from({ length: sides }, (_, i) => [
      [0, at(i), at(i + 1)],
      [0, sides + at(i + 1), sides + at(i)],
    ]).flat(),
    seams: [[0, 1]],
  };
}

function needles(rand: Rand): Solid {
  const profile = Array.from({ length: whole(3, 8, rand) }, (_, i): readonly [number, number] => [
    30 * i + (rand() < 0.5 ? 10 ** -whole(1, 12, rand) : 20 * rand()),
    rand() < 0.5 ? 10 ** -whole(1, 12, rand) : 40 * rand(),
  ]);
  return strip(profile, rand() < 0.5 ? 10 ** -whole(0, 12, rand) : 60);
}

/** Triangles of a lump parted by corners a hair off their edges. */
function slivers(rand: Rand): Solid {
  const { corners, faces } = lump(rand);
  const more: Point[] = [...corners];
  const parted = faces.flatMap(([a, b, c]): number[][] => {
    if (rand() < 0.6) return [[a, b, c]];
    const hair = 10 ** -whole(2, 14, rand);
    const [s, t] = [rand() * (1 - hair), hair];
    const at = [0, 1, 2].map((k) => corners[a][k] * (1 - s - t) + corners[b][k] * s + corners[c][k] * t);
    more.push([at[0], at[1], at[2]]);
    const m = more.length - 1;
    return [
      [a, b, m],
      [b, c, m],
      [c, a, m],
    ];
  });
  return { corners: more, faces: parted, seams: [] };
}

function twice(rand: Rand): Solid {
  const own = lump(rand);
  const steps = [0, 1, -1, 1000][whole(0, 3, rand)];
  const other = moved(own, (p) => [nudged(p[0], steps), nudged(p[1], steps), nudged(p[2], steps)]);
  return together(
    own,
    rand() < 0.5
      ? other
      : withFaces(
          other,
          other.faces.map((face) => face.toReversed()),
        ),
  );
}

function withoutArea(rand: Rand): Solid {
  const { corners, faces } = lump(rand);
  const extra = faces.slice(0, whole(1, 5, rand)).flatMap(([a, b, c]) => {
    const kinds = [
      [a, a, b],
      [a, b, a, b],
      [a, b, corners.length],
      [c, b, a, b, c],
    ];
    return [kinds[whole(0, 3, rand)]];
  });
  return { corners: [...corners, corners[faces[0][0]]], faces: [...faces, ...extra], seams: [] };
}

function manyShells(rand: Rand): Solid {
  const count = whole(20, 60, rand);
  return together(
    ...Array.from({ length: count }, () => {
      const [x, y, z] = place(200, rand);
      const size = 10 ** (2 * rand() - 1);
      return {
        corners: Array.from({ length: 4 }, (): Point => {
          const [a, b, c] = place(size, rand);
          return [x + a, y + b, z + c];
        }),
        faces:
          rand() < 0.5
            ? [[0, 1, 2]]
            : [
                [0, 1, 2],
                [0, 3, 1],
                [1, 3, 2],
                [0, 2, 3],
              ],
        seams: [],
      };
    }),
  );
}

/** A grid whose cells are parted on one side of a line and not on the other, so that corners lie on edges. */
function halfCorners(rand: Rand): Solid {
  const count = whole(2, 5, rand);
  const lift = (): number => (rand() < 0.5 ? 0 : 3 * rand());
  const corners: Point[] = [];
  const faces: number[][] = [];
  const add = (x: number, y: number): number => corners.push([x, y, lift()]) - 1;
  for (let i = 0; i < count; i += 1) {
    const [a, b, c, d] = [add(40 * i, 0), add(40 * i + 40, 0), add(40 * i + 40, 40), add(40 * i, 40)];
    faces.push([a, b, c, d]);
    const [m, e, f, g] = [add(40 * i + 20, 40), add(40 * i + 40, 80), add(40 * i + 20, 80), add(40 * i, 80)];
    faces.push([d, m, f, g], [m, c, e, f]);
  }
  return { corners, faces, seams: [] };
}

/** A tube that is closed with its end turned round: one side alone, and no edge. */
function oneSided(rand: Rand): Solid {
  const [around, across] = [whole(4, 9, rand), whole(3, 5, rand)];
  const { corners } = torus(around, across, 90, 35);
  const at = (i: number, j: number): number =>
    i < around ? i * across + (j % across) : (across - (j % across)) % across;
  const faces = Array.from({ length: around * across }, (_, k) => {
    const [i, j] = [Math.floor(k / across), k % across];
    return [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)];
  });
  return { corners, faces, seams: [] };
}

function polygons(rand: Rand): Solid {
  const count = whole(4, 60, rand);
  const isCrossing = rand() < 0.5;
  const corners = Array.from({ length: count }, (_, i): Point => {
    const angle = isCrossing ? 2 * Math.PI * rand() : (2 * Math.PI * i) / count;
    const out = 20 + 80 * rand();
    return [out * Math.cos(angle), out * Math.sin(angle), rand() < 0.5 ? 0 : 60 * rand()];
  });
  return { corners, faces: [corners.map((_, i) => i)], seams: [] };
}

const oddNumber = (rand: Rand): number =>
  [1e300, -1e308, 1.7e308, 1e-310, 5e-324, -0, 1e150, 1e16, 123456789.123456789][whole(0, 8, rand)];

/** Ways to break a sculpt, by their names. */
export const BROKEN: Readonly<Record<string, (rand: Rand) => Solid>> = {
  soup,
  tangle,
  fins: (rand) => fins(whole(3, 9, rand), 60, 80),
  'tip to tip': tipToTip,
  'runs through itself': (rand) => moved(lump(rand), (p) => [p[0] * (1.5 - 3 * rand()), p[1] * (1 - rand()), p[2]]),
  needles,
  slivers,
  'far away': (rand) => moved(lump(rand), ([x, y, z]) => [x + 1e9, y - 1e9, z + 1e9]),
  'far larger': (rand) => moved(lump(rand), ([x, y, z]) => [1e7 * x, 1e7 * y, 1e7 * z]),
  'far smaller': (rand) => moved(lump(rand), ([x, y, z]) => [1e-11 * x, 1e-11 * y, 1e-11 * z]),
  'so flat it has no inside': (rand) => moved(lump(rand), ([x, y, z]) => [x, y, z * 10 ** -whole(3, 14, rand)]),
  twice,
  'inside out': (rand) => {
    const own = lump(rand);
    return withFaces(
      own,
      own.faces.map((face) => face.toReversed()),
    );
  },
  'turned here and there': (rand) => {
    const own = lump(rand);
    return withFaces(
      own,
      own.faces.map((face) => (rand() < 0.4 ? face.toReversed() : face)),
    );
  },
  'faces without area': withoutArea,
  'one triangle': (rand) => ({
    corners: Array.from({ length: 3 }, () => place(100 * 10 ** whole(-9, 3, rand), rand)),
    faces: [[0, 1, 2]],
    seams: [],
  }),
  'many shells': manyShells,
  holes: (rand) => {
    const own = lump(rand);
    return withFaces(
      own,
      own.faces.filter(() => rand() < 0.8),
    );
  },
  'half a turn': (rand) => halfTurnedBand(whole(3, 20, rand), 80, 40),
  'corners on edges': halfCorners,
  'one side alone': oneSided,
  polygons,
  'odd numbers': (rand) => moved(lump(rand), (p) => (rand() < 0.1 ? [oddNumber(rand), p[1], oddNumber(rand)] : p)),
};
