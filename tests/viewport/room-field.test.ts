import { describe, expect, it } from 'vitest';
import type { BodyFit } from '../../src/model/body-fit.ts';
import type { CoreFit } from '../../src/model/clearance.ts';
import { roomField, roomOfTriangle } from '../../src/viewport/room-field.ts';

const core = (room: readonly number[], roomMm?: number): CoreFit => ({
  core: {
    id: `core-${room.length}-${roomMm ?? 0}`,
    name: 'Core',
    pointInFile: [0, 0, 0],
    direction: [0, 0, 1],
    diameterMm: 20,
    ...(roomMm === undefined ? {} : { roomMm }),
  },
  tightest: null,
  atVertices: Float32Array.from(room),
  outline: [],
  pierced: 0,
  sizeFactor: null,
  moveMm: null,
});
const fit = (...cores: readonly CoreFit[]): BodyFit => ({
  tapes: [],
  cores,
  joints: [],
  puttingOn: null,
  findings: [],
});

describe('room round cores as colours show it', () => {
  it('is that of the nearest core at each place, and of none where no core is beside it', () => {
    const field = roomField(fit(core([1, NaN, 3, NaN]), core([2, 5, -1, NaN])));
    expect([...field!.atVertices]).toEqual([1, 5, -1, NaN]);
  });

  it('has ends at twice the room wanted, and no nearer than 10 mm', () => {
    expect(roomField(fit(core([1])))).toMatchObject({ limitMm: 10, wantedMm: 0 });
    expect(roomField(fit(core([1], 3), core([1], 8)))).toMatchObject({ limitMm: 16, wantedMm: 8 });
    expect(roomField(fit())).toBeNull();
    expect(roomField(null)).toBeNull();
  });

  it('is on a triangle the least of its corners', () => {
    const room = Float32Array.from([4, NaN, -2, NaN, NaN]);
    const triangles = Uint32Array.from([0, 1, 2, 1, 3, 4, 1, 0, 3]);
    expect(roomOfTriangle(room, triangles, 0)).toBe(-2);
    expect(roomOfTriangle(room, triangles, 1)).toBeNaN();
    expect(roomOfTriangle(room, triangles, 2)).toBe(4);
  });
});
