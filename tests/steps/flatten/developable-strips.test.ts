import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../../src/base/random.ts';
import { meshOf } from '../../support/meshes.ts';
import { lay, plain } from './flat-outline.ts';
import { worstAfterFit } from './rigid-fit.ts';

type Point = readonly [number, number, number];

const cos = (turns: number): number => Math.cos(2 * Math.PI * turns);
const sin = (turns: number): number => Math.sin(2 * Math.PI * turns);
const distance = (p: Point, q: Point): number => Math.hypot(q[0] - p[0], q[1] - p[1], q[2] - p[2]);
const onCone = (turns: number, left: number): Point => [
  80 * left * cos(turns),
  80 * left * sin(turns),
  150 * (1 - left),
];

/** Relative difference allowed in every length, and in the place of every corner beside the size of the piece. */
const RELATIVE = 1e-9;

/** A strip is given by its corners in order: each three in a row are a triangle, so no corner lies inside. */
const STRIPS: readonly (readonly [string, readonly Point[]])[] = [
  ['a cylinder of 90 sides', betweenRails(90, (turns, end) => [50 * cos(turns), 50 * sin(turns), 120 * end])],
  ['a cone down to a hundredth of its base', betweenRails(90, (turns, end) => onCone(turns, 1 - 0.99 * end))],
  [
    'an oblique cone',
    betweenRails(120, (turns, end) => {
      const left = 1 - 0.9 * end;
      return [60 * left * cos(turns) + 45 * (1 - left), 60 * left * sin(turns), 140 * (1 - left)];
    }),
  ],
  [
    'a tangent developable of a helix',
    betweenRails(200, (turns, end) => {
      const length = 25 + 60 * end;
      return [
        40 * cos(turns) - 0.8 * length * sin(turns),
        40 * sin(turns) + 0.8 * length * cos(turns),
        60 * Math.PI * turns + 0.6 * length,
      ];
    }),
  ],
  ['panels with random folds', panels(60, 11)],
  ['1,000 triangles with every corner at random', crumpled(1000, 12)],
  [
    '200 panels 300 times as long as wide',
    betweenRails(200, (turns, end) => [6 * cos(turns), 6 * sin(turns), 57 * end]),
  ],
];

describe('a strip without an inner corner', () => {
  it.each(STRIPS)('is rolled out as by hand, corner by corner: %s', async (_, corners) => {
    const { uv, method, size } = await layStrip(corners);
    expect(method).toBe('unfolded');
    expect(worstAfterFit(rollOut(corners), uv) / size).toBeLessThan(RELATIVE);
    for (let i = 0; i + 1 < corners.length; i += 1) {
      for (const j of [i + 1, i + 2].filter((k) => k < corners.length)) {
        const flat = Math.hypot(uv[2 * j] - uv[2 * i], uv[2 * j + 1] - uv[2 * i + 1]);
        expect(Math.abs(flat / distance(corners[i], corners[j]) - 1), `edge ${i} ${j}`).toBeLessThan(RELATIVE);
      }
    }
  });
});

/** Laid flat: x y in the order of the strip. */
async function layStrip(corners: readonly Point[]) {
  const faces = corners.slice(2).map((_, i) => (i % 2 === 0 ? [i, i + 1, i + 2] : [i + 1, i, i + 2]));
  const { patch, piece, size } = await lay(meshOf(corners, faces), plain);
  const uv = new Float64Array(2 * corners.length);
  for (const [local, v] of patch.meshVertices.entries()) uv.set(piece.uv.subarray(2 * local, 2 * local + 2), 2 * v);
  return { uv, method: piece.solve.method, size };
}

/**
 * The strip rolled out with ruler and compasses: each corner where the circles about the last two meet, on the other side of their line
 * from the corner before. (Heron: height = 2 area / base, area from the three sides in Kahan's order.)
 */
function rollOut(corners: readonly Point[]): Float64Array {
  const flat: [number, number][] = [
    [0, 0],
    [distance(corners[0], corners[1]), 0],
  ];
  for (let k = 2; k < corners.length; k += 1) {
    const [base, near, far] = [
      distance(corners[k - 2], corners[k - 1]),
      distance(corners[k - 2], corners[k]),
      distance(corners[k - 1], corners[k]),
    ];
    const along = (base * base + (near - far) * (near + far)) / (2 * base);
    const [a, b, c] = [base, near, far].sort((p, q) => q - p);
    const height = Math.sqrt((a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c))) / 2 / base;
    const [p, q] = [flat[k - 2], flat[k - 1]];
    const [ux, uy] = [(q[0] - p[0]) / base, (q[1] - p[1]) / base];
    // Corners lie to the left and to the right in turn.
    const left = k % 2 === 0 ? height : -height;
    flat.push([p[0] + along * ux - left * uy, p[1] + along * uy + left * ux]);
  }
  return Float64Array.from(flat.flat());
}

/** Corners on two rails in turn, `sides` steps of one turn in all; end 0 is the rail on the right of the way. */
function betweenRails(sides: number, at: (turns: number, end: 0 | 1) => Point): Point[] {
  return Array.from({ length: sides + 1 }, (_, i) => [at(i / sides, 1), at(i / sides, 0)]).flat();
}

/** `count` flat panels, each folded from the last by up to 80 degrees about an edge that leans as it likes. */
function panels(count: number, seed: number): Point[] {
  const rand = seededRandom(seed);
  let [x, z, angle] = [0, 0, 0];
  const rails: Point[] = [];
  for (let i = 0; i <= count; i += 1) {
    // Edges all cross the way at right angles in space, so that panels stay flat; their ends are cut at random.
    rails.push([x, 30 + 20 * rand(), z], [x, -10 * rand(), z]);
    angle += 1.4 * (2 * rand() - 1);
    const length = 2 + 20 * rand();
    [x, z] = [x + length * Math.cos(angle), z + length * Math.sin(angle)];
  }
  return rails;
}

function crumpled(triangles: number, seed: number): Point[] {
  const rand = seededRandom(seed);
  return Array.from({ length: triangles + 2 }, (_, i): Point => [
    3 * i + rand(),
    12 * (1 - (i % 2)) + 4 * rand(),
    8 * rand(),
  ]);
}
