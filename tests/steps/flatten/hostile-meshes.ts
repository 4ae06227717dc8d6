import { seededRandom } from '../../../src/base/random.ts';
import type { Mesh } from '../../../src/mesh/mesh.ts';
import { meshOf } from '../../support/meshes.ts';
import { gridMesh } from './grid-mesh.ts';

type Point = [number, number, number];

/** A cap of a ball 200 mm across, `angle` from its pole to its rim, radians: pi would close it. */
export function capMesh(angle: number, rings: number, sides: number): Mesh {
  const points: Point[] = [[0, 0, 100]];
  for (let k = 1; k <= rings; k += 1) {
    const polar = (angle * k) / rings;
    for (let i = 0; i < sides; i += 1) points.push(onCircle(100 * Math.sin(polar), i / sides, 100 * Math.cos(polar)));
  }
  return fromPole(points, rings, sides);
}

/** A finger 20 mm thick and `length` long, closed at its end and open at its foot, without a slit. */
export function fingerMesh(length: number, rings: number, sides: number): Mesh {
  const points: Point[] = [[0, 0, length]];
  for (let k = 1; k <= rings; k += 1)
    for (let i = 0; i < sides; i += 1) points.push(onCircle(10, i / sides, length - (length * k) / rings));
  return fromPole(points, rings, sides);
}

/** A fan of `sides` triangles round one vertex; its rim waves up and down `waves` times by `wave`, its middle stands at `height`. */
export function fanMesh(sides: number, height: number, wave: number, waves: number): Mesh {
  const points: Point[] = [[0, 0, height]];
  for (let i = 0; i < sides; i += 1)
    points.push(onCircle(100, i / sides, wave * Math.sin((2 * Math.PI * waves * i) / sides)));
  return fromPole(points, 1, sides);
}

/** A strip `long` times as long as its width of 10 mm, wavy in both directions. */
export function wavyStrip(long: number): Mesh {
  const columns = 3 * long;
  return gridMesh(columns, 3, (i, j) => [(10 * i) / 3, (10 * j) / 3, 1.5 * Math.sin((10 * i) / 21 + j)]);
}

/** A dome of 30 by 30 quads with every `step`-th one cut out in both directions. */
export const windowedDome = (step: number): Mesh =>
  gridMesh(
    30,
    30,
    (i, j) => [7 * i, 7 * j, Math.sqrt(60_000 - (7 * i - 105) ** 2 - (7 * j - 105) ** 2)],
    (i, j) => i % step === 1 && j % step === 1 && i < 29 && j < 29,
  );

/** A comb: a spine of two rows of quads, and teeth a quad wide and 58 long. */
export const combMesh = (): Mesh =>
  gridMesh(
    20,
    60,
    (i, j) => [2 * i, 5 * j, 4 * Math.sin(i / 3) * Math.cos(j / 5)],
    (i, j) => j > 1 && i % 3 === 2,
  );

/** A bumpy sheet of 10 by 10 quads, 100 mm; every third row is squeezed to the share `squeeze` of its height. */
export function squeezedSheet(squeeze: number): Mesh {
  const bump = (i: number, j: number): number => 4 * Math.sin(i) * Math.cos(j);
  return gridMesh(10, 10, (i, j) =>
    j % 3 === 1 ? [10 * i, 10 * (j - 1) + 10 * squeeze, bump(i, j - 1)] : [10 * i, 10 * j, bump(i, j)],
  );
}

/** The same sheet with some corners pushed onto others: `pairs` of those that move and those they move to. */
export function joinedSheet(pairs: readonly (readonly [number, number])[]): Mesh {
  const sheet = squeezedSheet(1);
  const positions = sheet.positions.slice();
  for (const [v, onto] of pairs) positions.copyWithin(3 * v, 3 * onto, 3 * onto + 3);
  return { ...sheet, positions };
}

/** The same sheet with an ear without area on each side of its first row; `deep` ears one on another. */
export function emptyEars(deep: number): Mesh {
  const sheet = squeezedSheet(1);
  const points = Array.from({ length: 121 }, (_, v): Point => [...sheet.positions.subarray(3 * v, 3 * v + 3)] as Point);
  const faces = Array.from({ length: 200 }, (_, t) => [...sheet.triangles.subarray(3 * t, 3 * t + 3)]);
  for (let i = 0; i < 10; i += 1) {
    let end = i + 1;
    for (let k = 0; k < deep; k += 1) {
      points.push(points[i].map((x, axis) => (x + points[end][axis]) / 2) as Point);
      faces.push([end, i, points.length - 1]);
      end = points.length - 1;
    }
  }
  return meshOf(points, faces);
}

/** A sheet of 20 by 20 quads with every corner anywhere in a box of 100 mm. */
export function crumpledBall(seed: number): Mesh {
  const rand = seededRandom(seed);
  return gridMesh(20, 20, () => [100 * rand(), 100 * rand(), 100 * rand()]);
}

/** A sheet whose rim is gathered into ruffles: far more edge than can lie round it. */
export const ruffle = (): Mesh => gridMesh(60, 20, (i, j) => [5 * i, 5 * j, 60 * (j / 20) ** 3 * Math.sin(1.3 * i)]);

/** Point 0 is the pole, rings of `sides` corners follow; outside is away from the axis below the pole. */
function fromPole(points: readonly Point[], rings: number, sides: number): Mesh {
  const at = (k: number, i: number): number => 1 + (k - 1) * sides + (i % sides);
  const faces: number[][] = [];
  for (let k = 1; k <= rings; k += 1) {
    for (let i = 0; i < sides; i += 1)
      faces.push(k === 1 ? [0, at(1, i), at(1, i + 1)] : [at(k - 1, i), at(k, i), at(k, i + 1), at(k - 1, i + 1)]);
  }
  return meshOf(points, faces);
}

function onCircle(radius: number, turns: number, z: number): Point {
  return [radius * Math.cos(2 * Math.PI * turns), radius * Math.sin(2 * Math.PI * turns), z];
}
