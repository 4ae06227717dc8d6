import { describe, expect, it } from 'vitest';
import { standOff } from '../../../src/steps/dryfit/let-go.ts';
import { forAll } from '../../support/for-all.ts';
import { stripSheet } from './strip-sheet.ts';

const [LENGTH, WIDTH] = [100, 20];

/** A strip bent to an arc of so much angle, turned and moved somewhere in space. */
function bent(angle: number, columns: number, turn = 0, lift = 0) {
  const { sheet, uv } = stripSheet(LENGTH, WIDTH, columns, 2);
  const radius = LENGTH / angle;
  const positions = new Float64Array(3 * sheet.vertexCount);
  for (let v = 0; v < sheet.vertexCount; v += 1) {
    const at = uv[2 * v] / radius;
    const [x, y, z] = [radius * Math.sin(at), uv[2 * v + 1], radius * Math.cos(at)];
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    positions.set([c * x - s * z + lift, y - lift, s * x + c * z], 3 * v);
  }
  return { off: standOff(sheet.triangles, uv, positions), columns };
}

/** The closed form for the ends of an arc, mm. */
function endsOff(angle: number): number {
  const [radius, half] = [LENGTH / angle, angle / 2];
  return Math.hypot(radius * (Math.sin(half) - half), radius * (Math.cos(half) - Math.sin(half) / half));
}

describe('a piece let go', () => {
  it.each([0.5, 1, 2, 3])('stands off its ends by the closed form of an arc of %f radians', (angle) => {
    const misses = [16, 32].map((columns) => {
      const { off } = bent(angle, columns);
      for (const end of [off[0], off[columns]]) expect(Math.abs(end / endsOff(angle) - 1)).toBeLessThan(0.02);
      return Math.abs(off[0] / endsOff(angle) - 1);
    });
    // Weights of a third of the triangles round a vertex are exact to the square of their size.
    expect(misses[1]).toBeLessThan(misses[0] / 3);
  });

  it('does so wherever it is', () =>
    forAll(
      (rand) => ({ turn: 6 * rand(), lift: 200 * rand() }),
      ({ turn, lift }) => {
        const [there, here] = [bent(2, 8, turn, lift), bent(2, 8)];
        there.off.forEach((off, v) => expect(Math.abs(off - here.off[v])).toBeLessThan(1e-9));
      },
    ));

  it('stays where it is when it is flat, and says something of a full tube', () => {
    const { sheet, uv } = stripSheet(LENGTH, WIDTH, 4, 2);
    const flat = new Float64Array(3 * sheet.vertexCount);
    for (let v = 0; v < sheet.vertexCount; v += 1) flat.set([uv[2 * v], 0, uv[2 * v + 1]], 3 * v);
    for (const off of standOff(sheet.triangles, uv, flat)) expect(off).toBeLessThan(1e-9);
    for (const off of bent(2 * Math.PI, 24).off) expect(off).toBeLessThan(LENGTH);
  });
});
