import { describe, expect, it } from 'vitest';
import { boxOfPoints3 } from '../../../src/mesh/measure.ts';
import { checkMesh } from '../../../src/mesh/check-mesh.ts';
import { canBeBuilt, familiarObject, meshFromModel, mmPerUnitOf, sizeFindings } from '../../../src/steps/read/size.ts';
import { expectOk, expectProblem } from '../../support/expect-ok.ts';
import { modelOf } from './text-model.ts';

/** 4 by 2 by 0 units; the numbers 0 and 4 are one vertex, 5 is used by no face. */
const FLAT = 'v 0 0 0\nv 4 0 0\nv 4 2 0\nv 0 2 0\nv 0 0 0\nv 7 7 7\nf 1 2 3\nf 5 3 4\n';

describe('mmPerUnitOf', () => {
  it('takes a unit, a size along an axis or two points', async () => {
    const model = await modelOf(FLAT);
    expect(expectOk(mmPerUnitOf(model, { by: 'unit', unit: 'in' }))).toBe(25.4);
    expect(expectOk(mmPerUnitOf(model, { by: 'unit', unit: 'm' }))).toBe(1000);
    expect(expectOk(mmPerUnitOf(model, { by: 'size', axis: 'longest', mm: 320 }))).toBe(80);
    expect(expectOk(mmPerUnitOf(model, { by: 'size', axis: 'x', mm: 320 }))).toBe(80);
    expect(expectOk(mmPerUnitOf(model, { by: 'size', axis: 'y', mm: 320 }))).toBe(160);
    expect(expectOk(mmPerUnitOf(model, { by: 'points', from: 4, to: 2, mm: Math.hypot(4, 2) * 3 }))).toBeCloseTo(3, 12);
  });

  it('refuses what gives no size', async () => {
    const model = await modelOf(FLAT);
    expectProblem(mmPerUnitOf(model, { by: 'size', axis: 'z', mm: 320 }), 'size/flat');
    for (const mm of [0, -1, NaN, Infinity])
      expectProblem(mmPerUnitOf(model, { by: 'size', axis: 'x', mm }), 'size/no-length');
    expectProblem(mmPerUnitOf(model, { by: 'points', from: 0, to: 4, mm: 10 }), 'size/same-point');
    for (const to of [5, 6, -1, 1.5])
      expectProblem(mmPerUnitOf(model, { by: 'points', from: 0, to, mm: 10 }), 'size/no-vertex');
    expectProblem(mmPerUnitOf(model, { by: 'size', axis: 'x', mm: 1e300 }), 'size/out-of-range');
  });
});

describe('meshFromModel', () => {
  it('scales about the origin and keeps all numbers', async () => {
    const model = await modelOf(`${FLAT}f 1 2 2\no rim\nf 1 3 2 4\n`);
    const mesh = meshFromModel(model, 25.4);
    checkMesh(mesh);
    expect(boxOfPoints3(mesh.positions).max.x).toBeCloseTo(101.6, 12);
    expect(Array.from(mesh.faceOfTriangle)).toEqual([0, 1, 3, 3]);
    expect(mesh.faceCount).toBe(4);
    expect(Array.from(mesh.groupOfFace)).toEqual([-1, -1, -1, 0]);
    expect(() => meshFromModel(model, 0)).toThrow(RangeError);
  });
});

describe('sizeFindings', () => {
  it('doubts sizes under 20 mm and over 3 m', () => {
    expect(sizeFindings([20, 5, 5])).toEqual([]);
    expect(sizeFindings([100, 3000, 5])).toEqual([]);
    expect(sizeFindings([19, 5, 5])[0]).toMatchObject({ code: 'size/small', value: 19, limit: 20, unit: 'mm' });
    const [large] = sizeFindings([5, 5, 25_400]);
    expect(large).toMatchObject({ code: 'size/large', severity: 'warning' });
    expect(large.text).toBe(
      'The sculpt is 25.4 m long, about as tall as a church: this looks like the wrong unit, so check its size.',
    );
  });
});

describe('canBeBuilt', () => {
  it('refuses what is longer than any foam work, and says how long it would be', () => {
    expectOk(canBeBuilt([100_000, 5, 5]));
    const { text } = expectProblem(canBeBuilt([5, 2e9, 5]), 'size/too-large');
    expect(text).toBe(
      'The sculpt would be 2000000 m long, and 100 m is the most: check its unit, or give one real measure.',
    );
  });
});

describe('familiarObject', () => {
  it('names something of about that length, at every length', () => {
    expect(familiarObject(190)).toBe('about as long as a hand');
    expect(familiarObject(2000)).toBe('about as tall as a door');
    expect(familiarObject(240)).toBe('about as tall as a head');
    expect(familiarObject(0.01)).toBe('too small to see');
    expect(familiarObject(1e6)).toBe('longer than any building nearby');
    let last = '';
    const seen: string[] = [];
    for (let mm = 0.01; mm < 1e6; mm *= 1.05) {
      const name = familiarObject(mm);
      if (name !== last) seen.push(name);
      last = name;
    }
    expect(new Set(seen).size).toBe(seen.length);
  });
});
