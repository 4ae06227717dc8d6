import { describe, expect, it } from 'vitest';
import { composed4, IN_PLACE, mirror4, placed4, turnUpTo4, turned4, undone4 } from '../../../src/geom/matrix4.ts';
import { length3, sub3, vec3 } from '../../../src/geom/vec.ts';
import { surfaceArea, triangleNormal } from '../../../src/mesh/measure.ts';
import type { Placing } from '../../../src/model/placing.ts';
import { checkMatrix, cutWords, placedMesh, standingsOf } from '../../../src/steps/assembly/placing.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { forAll } from '../../support/for-all.ts';
import { boxMesh } from '../../support/meshes.ts';

describe('checkMatrix', () => {
  it('tells a turn from a mirror, and refuses what changes size or shape', () => {
    expect(expectOk(checkMatrix(IN_PLACE))).toEqual({ isMirrored: false });
    expect(expectOk(checkMatrix(mirror4(vec3(1, 2, 3), vec3(1, 1, 0))))).toEqual({ isMirrored: true });
    expectProblem(checkMatrix(IN_PLACE.map((value) => 1.01 * value).with(15, 1)), 'assembly/scaled');
    expectProblem(checkMatrix(IN_PLACE.with(4, 0.004)), 'assembly/sheared');
    for (const bad of [[], IN_PLACE.with(0, NaN), IN_PLACE.with(3, 1), IN_PLACE.with(15, 2)])
      expectProblem(checkMatrix(bad), 'assembly/matrix');
    expectProblem(checkMatrix(IN_PLACE.with(12, 1e9)), 'assembly/far');
  });
});

describe('turnUpTo4', () => {
  it('is a turn that brings z there, however near to straight down, and its way back undoes it', () =>
    forAll(
      (rand) => ({
        x: (rand() - 0.5) * 10 ** (-8 * rand()),
        y: (rand() - 0.5) * 10 ** (-8 * rand()),
        z: rand() < 0.5 ? -1 : 1,
      }),
      (to) => {
        const turn = turnUpTo4(to);
        expect(expectOk(checkMatrix(turn)).isMirrored).toBe(false);
        const z = turned4(turn, vec3(0, 0, 1));
        expect(length3(sub3(z, vec3(to.x / length3(to), to.y / length3(to), to.z / length3(to))))).toBeLessThan(1e-12);
        composed4(undone4(turn), turn).forEach((value, i) => expect(value).toBeCloseTo(IN_PLACE[i], 9));
      },
    ));
});

describe('standingsOf', () => {
  const at: Placing['at'] = [100, 0, 0];
  it('puts the zero of the part at the point, its z where it faces, and turns it about that', () => {
    const [one] = expectOk(standingsOf({ at, facing: [2, 0, 0], turnDeg: 90 }));
    expect(placed4(one.matrix, vec3(0, 0, 5))).toEqual(vec3(105, 0, 0));
    // The shortest turn from z to x keeps y; a quarter round x brings y to z.
    expect(placed4(one.matrix, vec3(0, 1, 0))).toEqual(vec3(100, 0, 1));
    expect(one).toMatchObject({ number: 1, isMirrored: false });
    expect(one.hand).toBeUndefined();
  });
  it('repeats round an axis: cut 8, each an eighth of a turn on', () => {
    const all = expectOk(standingsOf({ at, copies: [{ kind: 'round', count: 8, point: [0, 0, 0], axis: [0, 0, 3] }] }));
    expect(cutWords(all)).toBe('cut 8');
    all.forEach(({ matrix }, i) => {
      const p = placed4(matrix, vec3(0, 0, 0));
      expect(p.x).toBeCloseTo(100 * Math.cos((i * Math.PI) / 4), 12);
      expect(p.y).toBeCloseTo(100 * Math.sin((i * Math.PI) / 4), 12);
    });
  });
  it('mirrors what it repeats: 4 left, 4 right, images of each other', () => {
    const all = expectOk(
      standingsOf({
        at,
        copies: [
          { kind: 'line', count: 4, stepMm: [0, 0, 30] },
          { kind: 'mirror', point: [0, 0, 0], normal: [1, 0, 0] },
        ],
        ownHand: 'right',
      }),
    );
    expect(cutWords(all)).toBe('cut 4 left, 4 right');
    for (const p of [vec3(1, 2, 3), vec3(-4, 0, 9)]) {
      for (let i = 0; i < 4; i += 1) {
        const [own, image] = [placed4(all[i].matrix, p), placed4(all[i + 4].matrix, p)];
        expect(own.z).toBe(p.z + 30 * i);
        expect(image).toEqual(vec3(-own.x, own.y, own.z));
      }
    }
    // Mirrored twice across planes at an angle: two of each.
    const twice = expectOk(
      standingsOf({
        at,
        copies: [
          { kind: 'mirror', point: [0, 0, 0], normal: [1, 0, 0] },
          { kind: 'mirror', point: [0, 0, 0], normal: [0, 1, 0] },
        ],
      }),
    );
    expect(cutWords(twice)).toBe('cut 2 left, 2 right');
  });
  it('refuses numbers that say no place', () => {
    expectProblem(standingsOf({ at: [NaN, 0, 0] }), 'assembly/place');
    expectProblem(standingsOf({ at, facing: [0, 0, 0] }), 'assembly/place');
    expectProblem(standingsOf({ at, turnDeg: Infinity }), 'assembly/place');
    for (const count of [0, -1, 2.5, 1e9, NaN])
      expectProblem(standingsOf({ at, copies: [{ kind: 'line', count, stepMm: [1, 0, 0] }] }), 'assembly/copies');
    expectProblem(standingsOf({ at, copies: [{ kind: 'line', count: 3, stepMm: [0, 0, 0] }] }), 'assembly/place');
    expectProblem(standingsOf({ at, copies: [{ kind: 'line', count: 3, stepMm: [1e8, 0, 0] }] }), 'assembly/far');
    expectProblem(
      standingsOf({ at, copies: [{ kind: 'round', count: 3, point: [0, 0, 0], axis: [0, 0, 0] }] }),
      'assembly/place',
    );
    expectProblem(
      standingsOf({ at, copies: [{ kind: 'mirror', point: [0, 0, 0], normal: [0, 0, 0] }] }),
      'assembly/place',
    );
    const forty = { kind: 'line', count: 40, stepMm: [1, 0, 0] } as const;
    expectProblem(standingsOf({ at, copies: [forty, forty] }), 'assembly/copies');
  });
});

describe('placedMesh', () => {
  it('keeps faces outward and sizes as they are, mirrored too', () => {
    const box = boxMesh(10, 20, 30);
    for (const one of expectOk(
      standingsOf({
        at: [5, 5, 5],
        facing: [1, 2, 3],
        copies: [{ kind: 'mirror', point: [0, 0, 0], normal: [0, 1, 1] }],
      }),
    )) {
      const mesh = placedMesh(box, one);
      expect(surfaceArea(mesh.positions, mesh.triangles)).toBeCloseTo(2200, 9);
      const middle = placed4(one.matrix, vec3(5, 10, 15));
      for (let t = 0; t < 12; t += 1) {
        const v = mesh.triangles[3 * t];
        const n = triangleNormal(mesh.positions, mesh.triangles, t);
        const out =
          n.x * (mesh.positions[3 * v] - middle.x) +
          n.y * (mesh.positions[3 * v + 1] - middle.y) +
          n.z * (mesh.positions[3 * v + 2] - middle.z);
        expect(out).toBeGreaterThan(4.9);
      }
    }
  });
});
