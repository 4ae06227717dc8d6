import { describe, expect, it } from 'vitest';
import { writeFlatObj, writeObj } from '../../../src/steps/write/obj.ts';
import type { Solid } from '../../../src/steps/write/solid.ts';
import { writeStl } from '../../../src/steps/write/stl.ts';

const triangle: Solid = {
  name: '3 Visor # left\nv 1 2 3',
  points: Float64Array.of(0, 0, 0, 10.5, 0, 0, 0, 1e-9, -2e-7),
  triangles: Uint32Array.of(0, 1, 2),
};

describe('OBJ', () => {
  it('counts corners on from body to body; names and numbers are plain', () => {
    expect(writeObj([triangle, { ...triangle, name: '' }], 'a\nb')).toBe(
      [
        '# a b',
        'o 3-Visor--left-v-1-2-3',
        ...['v 0 0 0', 'v 10.5 0 0', 'v 0 0 0', 'f 1 2 3'],
        'o piece',
        ...['v 0 0 0', 'v 10.5 0 0', 'v 0 0 0', 'f 4 5 6', ''],
      ].join('\n'),
    );
    expect(() => writeObj([{ ...triangle, points: Float64Array.of(NaN, 0, 0) }], '')).toThrow(RangeError);
  });

  it('counts places in space and in the flat apart, where corners have places of their own', () => {
    const square = { triangles: Uint32Array.of(0, 1, 2, 0, 2, 3), flat: Float64Array.of(0, 0, 1, 0, 1, 1, 0, 1) };
    const byCorner = { name: 'a', points: new Float64Array(18), isByCorner: true, ...square };
    const byVertex = { name: 'b', points: new Float64Array(12), isByCorner: false, ...square };
    const faces = writeFlatObj([byCorner, byVertex, byVertex], '')
      .split('\n')
      .filter((line) => line.startsWith('f '));
    expect(faces).toEqual([
      ...['f 1/1 2/2 3/3', 'f 4/1 5/3 6/4'],
      ...['f 7/5 8/6 9/7', 'f 7/5 9/7 10/8'],
      ...['f 11/9 12/10 13/11', 'f 11/9 13/11 14/12'],
    ]);
  });
});

describe('STL', () => {
  it('begins with no word that means the other kind, and has normals that point outward', () => {
    const bytes = writeStl([{ ...triangle, points: Float64Array.of(0, 0, 0, 2, 0, 0, 0, 2, 0) }]);
    expect(new TextDecoder().decode(bytes.slice(0, 5))).not.toBe('solid');
    expect(bytes).toHaveLength(84 + 50);
    const view = new DataView(bytes.buffer);
    expect([view.getUint32(80, true), view.getFloat32(84, true), view.getFloat32(92, true)]).toEqual([1, 0, 1]);
    const flat = new DataView(writeStl([{ ...triangle, points: new Float64Array(9) }]).buffer);
    expect([84, 88, 92].map((at) => flat.getFloat32(at, true))).toEqual([0, 0, 0]);
  });
});
