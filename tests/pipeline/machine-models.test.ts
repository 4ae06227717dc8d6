import { OBJLoader } from 'three/examples/jsm/loaders/OBJLoader.js';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import type { Mesh } from 'three';
import { beforeAll, describe, expect, it } from 'vitest';
import { modelFiles } from '../../src/pipeline/machine-models.ts';
import type { Outcome } from '../../src/pipeline/outcome.ts';
import { reportOf } from '../../src/pipeline/write-files.ts';
import { runSample } from '../support/run-sample.ts';
import { block, inSheets, outcomeOf } from '../support/run-solid.ts';

const SIDE = 80;

/** Corners of all triangles as another program reads them, x y z. */
const stlCorners = (bytes: Uint8Array | string | undefined): Float32Array => {
  const { buffer } = (bytes as Uint8Array).slice();
  return new STLLoader().parse(buffer).getAttribute('position').array as Float32Array;
};

function volumeOf(corners: ArrayLike<number>): number {
  let six = 0;
  for (let i = 0; i < corners.length; i += 9) {
    const [ax, ay, az, bx, by, bz, cx, cy, cz] = Array.from({ length: 9 }, (_, k) => corners[i + k]);
    six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return six / 6;
}

/** Sides of triangles that no other triangle runs along the other way. */
function openSides(corners: ArrayLike<number>): number {
  const key = (i: number): string => [0, 1, 2].map((k) => corners[i + k].toFixed(4)).join(' ');
  const sides = new Map<string, number>();
  for (let i = 0; i < corners.length; i += 9) {
    for (const [p, q] of [
      [0, 3],
      [3, 6],
      [6, 0],
    ]) {
      const [from, to] = [key(i + p), key(i + q)];
      sides.set(`${from}|${to}`, (sides.get(`${from}|${to}`) ?? 0) + 1);
    }
  }
  let open = 0;
  for (const [side, count] of sides) {
    const [from, to] = side.split('|');
    if ((sides.get(`${to}|${from}`) ?? 0) !== count) open += 1;
  }
  return open;
}

const objMeshes = (text: string | Uint8Array | undefined): readonly Mesh[] =>
  new OBJLoader().parse(text as string).children as Mesh[];
const cornersOf = ({ geometry }: Mesh): ArrayLike<number> => geometry.getAttribute('position').array;

describe('models of a box of 80 mm in two sheets', () => {
  let files: ReadonlyMap<string, Uint8Array | string>;
  beforeAll(async () => {
    const outcome = await outcomeOf(block([10, 20, 30], [10 + SIDE, 20 + SIDE, 30 + SIDE]), (part) =>
      inSheets(part, 4, 6),
    );
    files = modelFiles(outcome, { stl: true, obj: true, timesSmaller: 10 });
  });

  it('come whole, sheet by sheet, and small', () => {
    const names = ['prop', 'prop-sheet-1', 'prop-sheet-2'].flatMap((name) => [name, `${name}-1-to-10`]);
    expect([...files.keys()].sort()).toEqual(
      [...names.flatMap((name) => [`${name}.stl`, `${name}.obj`]), 'flat-pieces.obj'].sort(),
    );
  });

  it('hold the foam of the wall, closed, in true size, where the sculpt is', () => {
    const corners = stlCorners(files.get('prop.stl'));
    expect(volumeOf(corners)).toBeCloseTo(80 ** 3 - 60 ** 3, -1);
    expect(openSides(corners)).toBe(0);
    expect(volumeOf(stlCorners(files.get('prop-sheet-1.stl')))).toBeCloseTo(80 ** 3 - 68 ** 3, -1);
    expect(volumeOf(stlCorners(files.get('prop-sheet-2.stl')))).toBeCloseTo(68 ** 3 - 60 ** 3, -1);
    const xs = [...corners].filter((_, i) => i % 3 === 0);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([expect.closeTo(10, 3), expect.closeTo(90, 3)]);
    expect(volumeOf(stlCorners(files.get('prop-1-to-10.stl')))).toBeCloseTo((80 ** 3 - 60 ** 3) / 1000, 1);
  });

  it('are the same in OBJ, a body by name for each piece', () => {
    const meshes = objMeshes(files.get('prop.obj'));
    expect(meshes).toHaveLength(12);
    expect(new Set(meshes.map(({ name }) => name)).size).toBe(12);
    for (const mesh of meshes) expect(openSides(cornersOf(mesh))).toBe(0);
    expect(meshes.reduce((sum, mesh) => sum + volumeOf(cornersOf(mesh)), 0)).toBeCloseTo(80 ** 3 - 60 ** 3, -1);
    expect(files.get('prop.obj')).toMatch(/^# solid: the finished prop, lengths in mm\n/);
  });
});

describe.each(['helm', 'maul-head'])('flat pieces of the %s as OBJ', (name) => {
  let outcome: Outcome;
  beforeAll(async () => {
    outcome = await runSample(name);
  });

  it('give any reader the stretch of the report', () => {
    const report = JSON.parse(reportOf(outcome)) as {
      pieces: {
        number: number;
        name: string;
        triangles: number;
        stretchPct: { max: number };
        squashPct: { max: number };
      }[];
    };
    const meshes = objMeshes(modelFiles(outcome, { obj: true }).get('flat-pieces.obj'));
    expect(meshes).toHaveLength(report.pieces.length);
    meshes.forEach(({ geometry, name: found }, i) => {
      const piece = report.pieces[i];
      expect(found).toBe(`${piece.number} ${piece.name}`.replace(/ /g, '-'));
      const position = geometry.getAttribute('position').array;
      const flat = geometry.getAttribute('uv').array;
      expect(position.length / 9).toBe(piece.triangles);
      let [stretch, squash] = [0, 0];
      for (let t = 0; t < piece.triangles; t += 1) {
        const [major, minor] = singularValues(position, flat, t);
        stretch = Math.max(stretch, major - 1);
        squash = Math.max(squash, 1 - minor);
      }
      // The reader holds single precision: 300 mm to 3e-5, on triangles of some mm.
      expect(Math.abs(100 * stretch - piece.stretchPct.max)).toBeLessThan(0.005);
      expect(Math.abs(100 * squash - piece.squashPct.max)).toBeLessThan(0.005);
    });
  });
});

/** Of the map from a flat triangle to the one in space. */
function singularValues(position: ArrayLike<number>, flat: ArrayLike<number>, t: number): readonly [number, number] {
  const at = (k: number): number[] => [0, 1, 2].map((c) => position[9 * t + 3 * k + c]);
  const uv = (k: number): number[] => [0, 1].map((c) => flat[6 * t + 2 * k + c]);
  const [p, q] = [1, 2].map((k) => at(k).map((v, c) => v - at(0)[c]));
  const [[a, b], [c, d]] = [1, 2].map((k) => uv(k).map((v, i) => v - uv(0)[i]));
  const det = a * d - b * c;
  const columns = [0, 1].map((i) => p.map((v, k) => (i === 0 ? d * v - b * q[k] : a * q[k] - c * v) / det));
  const dot = (u: number[], v: number[]): number => u.reduce((sum, value, k) => sum + value * v[k], 0);
  const [e, f, g] = [dot(columns[0], columns[0]), dot(columns[0], columns[1]), dot(columns[1], columns[1])];
  const [mean, spread] = [(e + g) / 2, Math.hypot((e - g) / 2, f)];
  return [Math.sqrt(mean + spread), Math.sqrt(Math.max(0, mean - spread))];
}
